// A reading against its limits, as the compiled functions of the book read it: fractions, feet and inches, millimetres.

const NOISE = 1e-6;
const isMetric = () => remembered("crew-units") === "metric";

/** `pass`, `outside`, or `unread` for what is no figure. Limits and value are in the unit of the inside. */
function verdictOf({ low, high }, value) {
  if (typeof value !== "number") return "unread";
  return value < (low ?? -Infinity) - NOISE || value > (high ?? Infinity) + NOISE ? "outside" : "pass";
}

const unitOf = ({ quantity, unit }) => (window.crew ? crew.unit(quantity, unit, isMetric()) : isMetric() ? "" : unit);
const unitWords = (unit) => ({ "ft-in": "ft in", "1:n": "" })[unit] ?? unit;

/** The value of a typed text, or why it is none. */
function readText(data, text) {
  if (!window.crew) return { why: say.no_script };
  const unit = unitOf(data);
  const value = crew.read(text, data.quantity, unit);
  return value === null ? { why: crew.why(text, data.quantity, unit) } : { value };
}

/** By how much a reading is outside, in its unit. */
function missBy(data, value) {
  const miss = value < (data.low ?? -Infinity) ? data.low - value : value - data.high;
  const words = value < (data.low ?? -Infinity) ? say.too_little : say.too_much;
  if (!window.crew || ["number", "temperature"].includes(data.quantity)) return fill(words, { by: "" }).trim();
  return fill(words, { by: crew.write(miss, data.quantity, unitOf(data), 0, "nearest") });
}

/** A kept text without the unit that stands in its box. */
function withoutUnit(data, text) {
  const end = ` ${unitOf(data)}`;
  return end.length > 1 && text.endsWith(end) ? text.slice(0, -end.length) : text;
}

/** The line for a reading beside its measurement. */
function readingOf(step, measure) {
  const { data } = measure;
  const id = `reading-${step.id}-${data.name}`;
  const typing = make("input", { id, type: "text", inputmode: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", enterkeyhint: "done", "aria-describedby": `${id}-said` });
  const unit = make("span", { class: "unit" });
  const said = make("div", { class: "verdict", id: `${id}-said`, role: "status" });
  const label = make("label", { for: id }, say.reading, make("span", { class: "unseen" }, `: ${measure.what}`));
  measure.box.append(make("div", { class: "reading" }, label, make("div", { class: "puts-in" }, typing, unit), said));
  const now = () => {
    const text = typing.value.trim();
    if (!text) return { text: "", value: null, verdict: "unread" };
    const bare = /^[\d\s./⁄½¼¾⅛⅜⅝⅞,+−-]+$/.test(text) && unitOf(data) !== "1:n" && data.quantity !== "count";
    const { value = null, why } = readText(data, text);
    const full = bare && value !== null ? `${text} ${unitOf(data) === "ft-in" ? "in" : unitOf(data)}`.trim() : text;
    return { text: full, value, verdict: verdictOf(data, value), why };
  };
  const keepIt = () => {
    const { why, ...given } = now();
    const before = get("reading", step.id, data.name);
    if ((before?.text ?? "") === given.text && (before?.value ?? null) === given.value) return;
    did("reading", step, { ...given, what: measure.what, limits: measure.limits }, data.name);
  };
  const soon = later(500, keepIt);
  typing.addEventListener("focus", ready);
  typing.addEventListener("input", () => {
    ready().then(() => showVerdict(said, measure, now()));
    soon();
  });
  typing.addEventListener("change", () => ready().then(keepIt));
  typing.addEventListener("keydown", (event) => event.key === "Enter" && typing.blur());
  measure.show = () => {
    unit.textContent = unitWords(unitOf(data));
    const kept = get("reading", step.id, data.name);
    if (document.activeElement !== typing) typing.value = withoutUnit(data, kept?.text ?? "");
    const verdict = typeof kept?.value === "number" ? verdictOf(data, kept.value) : "unread";
    const { why } = kept?.text && kept.value === null && window.crew ? readText(data, kept.text) : {};
    showVerdict(said, measure, { ...kept, text: kept?.text ?? "", verdict, why });
  };
}

/** The functions that read figures, once a figure is to be read; without them a text is kept as it stands. */
const ready = () => need("crew", "crew").then(() => measures().forEach((one) => one.unitNow()), () => {});

/** In words and by a sign: pass, or outside with what to do. */
function showVerdict(said, measure, { text, value, verdict, why }) {
  const state = text ? verdict : "none";
  measure.box.dataset.verdict = state;
  const key = `${state} ${value} ${why}`;
  if (said.dataset.key === key) return;
  said.dataset.key = key;
  const lines = {
    none: [],
    pass: [make("p", { class: "passed" }, `✓ ${say.pass}`)],
    outside: [make("p", { class: "failed" }, `✗ ${say.outside} ${missBy(measure.data, value)}`), make("p", {}, measure.mend)],
    unread: [make("p", { class: "failed" }, why ?? say.unread)],
  };
  said.replaceChildren(...lines[state]);
}
