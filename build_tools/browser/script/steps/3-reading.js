// A reading against its limits, as the compiled functions of the book read it: fractions, feet and inches, millimetres.

const NOISE = 1e-6;
/** Half a millimetre, in inches: by so little no length misses a limit of 3/8 in or more. Codes round to the millimetre. */
const TAPE = 0.02;
const isMetric = () => remembered("crew-units") === "metric";

/** A reading that goes as far one way as the other: its size alone is judged. */
const isEven = ({ low, high }) => low < 0 && low === -high;

/** The limits that a value is held against, and its size there: those of its way, where it has ways. */
function heldTo(data, value) {
  const size = data.ways || isEven(data) ? Math.abs(value) : value;
  const limits = data.ways?.filter((_, place) => value === 0 || place === (value > 0 ? 0 : 1)) ?? [isEven(data) ? { high: data.high } : data];
  const near = (limit) => (data.quantity === "length" && limit >= 0.375 ? TAPE : NOISE);
  return limits.map(({ low, high, way }) => {
    const less = (low ?? -Infinity) - size;
    const more = size - (high ?? Infinity);
    const never = low === undefined && high === undefined;
    return { size, way, less, more, never, isWithin: !never && less <= near(low) && more <= near(high) };
  });
}

/** `pass`, `outside`, or `unread` for what is no figure. Limits and value are in the unit of the inside. */
function verdictOf(data, value) {
  if (typeof value !== "number") return "unread";
  return heldTo(data, value).some((one) => one.isWithin) ? "pass" : "outside";
}

const unitOf = ({ quantity, unit }) => (window.crew ? crew.unit(quantity, unit, isMetric()) : isMetric() ? "" : unit);
const unitWords = (unit) => ({ "ft-in": "ft in", "1:n": "" })[unit] ?? unit;

/** The value of a typed text, or why it is none. */
function readText(data, text) {
  if (!window.crew) return { why: say.no_script };
  const unit = unitOf(data);
  const { size, way } = parted(waysOf(data), text);
  const value = crew.read(size, data.quantity, unit);
  if (value === null) return { why: crew.why(size, data.quantity, unit) };
  if (data.ways && value !== 0 && (!way || value < 0)) return { why: fill(say.which_way, { ways: waysOf(data).join(" / ") }) };
  if (value < 0 && data.low === undefined && !data.ways && data.quantity !== "temperature") return { why: say.no_minus };
  return { value: way && way === waysOf(data)[1] ? -value : value };
}

const waysOf = ({ ways }) => ways?.map(({ way }) => way) ?? [];

/** That a reading is outside, by how much in its unit, and to which side. */
function outsideWords(data, value) {
  const limits = heldTo(data, value);
  const { less, more } = limits.find(({ never }) => !never) ?? {};
  if (less === undefined) return fill(say.never, limits[0]);
  if (!window.crew) return say.outside;
  const words = less > NOISE ? say.too_little : isEven(data) ? say.outside_by : say.too_much;
  return fill(words, { by: difference(data, Math.max(less, more)) });
}

/** A difference in the unit of a reading, to the tape's mark; a smaller one in figures. */
function difference({ quantity, unit }, size) {
  const mine = unitOf({ quantity, unit });
  if (quantity === "temperature") return crew.write(mine === "C" ? (size * 5) / 9 : size, "number", mine);
  if (mine === "1:n") return crew.write(size, quantity, "%");
  const written = crew.write(size, quantity, mine);
  if (quantity !== "length" || crew.read(written, quantity, mine) > 0) return written;
  const plain = mine === "ft-in" ? "in" : mine;
  return crew.write(size / crew.read("1", quantity, plain), "number", plain);
}

/** A kept text without its way, and without the unit that stands in its box. */
function withoutUnit(data, text) {
  const { size } = parted(waysOf(data), text);
  const end = ` ${unitOf(data)}`;
  return end.length > 1 && size.endsWith(end) ? size.slice(0, -end.length) : size;
}

/** The line for a reading beside its measurement, with its ways where it has them. */
function readingOf(step, measure) {
  const { data } = measure;
  const id = `reading-${step.id}-${data.name}`;
  const typing = make("input", { id, type: "text", inputmode: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", enterkeyhint: "done", "aria-describedby": `${id}-said` });
  const unit = make("span", { class: "unit" });
  const said = make("div", { class: "verdict", id: `${id}-said`, role: "status" });
  const label = make("label", { for: id }, say.reading, make("span", { class: "unseen" }, `: ${measure.what}`));
  let way = "";
  const changed = () => {
    ready().then(() => showVerdict(said, measure, now()));
    soon();
  };
  const ways = data.ways ? waysToPick(waysOf(data), `${id}-way`, measure.what, (picked) => {
    way = picked;
    changed();
    ready().then(keepIt);
  }) : null;
  const puts = make("div", { class: "puts-in" }, typing, unit);
  measure.box.append(make("div", { class: "reading" }, label, ways ? make("div", { class: "two-ways" }, ways.element, puts) : puts, said));
  const now = () => {
    const typed = parted(waysOf(data), typing.value.trim());
    const text = typed.size;
    if (!text) return { text: "", value: null, verdict: "unread" };
    const bare = /^[\d\s./⁄½¼¾⅛⅜⅝⅞,+−-]+$/.test(text) && unitOf(data) !== "1:n" && data.quantity !== "count";
    const full = whole(text, typed.way || way);
    const { value = null, why } = readText(data, full);
    const united = bare && value !== null ? whole(`${text} ${unitOf(data) === "ft-in" ? "in" : unitOf(data)}`.trim(), typed.way || way) : full;
    return { text: united, value, verdict: verdictOf(data, value), why };
  };
  const keepIt = () => {
    const { why, ...given } = now();
    const before = get("reading", step.id, data.name);
    if ((before?.text ?? "") === given.text && (before?.value ?? null) === given.value) return;
    measure.isNew = true;
    did("reading", step, { ...given, what: measure.what, limits: measure.limits }, data.name);
    measure.isNew = false;
  };
  const soon = later(500, keepIt);
  typing.addEventListener("focus", ready);
  typing.addEventListener("input", changed);
  typing.addEventListener("change", () => ready().then(keepIt));
  typing.addEventListener("keydown", (event) => event.key === "Enter" && typing.blur());
  measure.show = () => {
    unit.textContent = unitWords(unitOf(data));
    const kept = get("reading", step.id, data.name);
    const value = kept?.value ?? null;
    if (document.activeElement !== typing) {
      typing.value = withoutUnit(data, kept?.text ?? "");
      way = parted(waysOf(data), kept?.text ?? "").way;
      ways?.show(way);
    }
    const verdict = verdictOf(data, value);
    const { why } = kept?.text && value === null && window.crew ? readText(data, kept.text) : {};
    showVerdict(said, measure, { value, text: kept?.text ?? "", verdict, why });
    // By how much it is outside takes the functions that write figures.
    if (verdict === "outside" && !window.crew) ready().then(() => window.crew && measure.show());
    tellForms(measure, value === null ? "" : kept.text);
  };
}

/** The forms of the page start from the readings: each is there for them to find, and what changes is told. */
function tellForms({ box, data, isNew }, text) {
  if ((box.dataset.reads ?? "") === text) return;
  box.dataset.reads = text;
  document.dispatchEvent(new CustomEvent("crew-reading", { detail: { name: data.name, isNew } }));
}

/** The functions that read figures, once a figure is to be read; without them a text is kept as it stands. */
const ready = () => need("crew", "crew").then(() => measures().forEach((one) => one.unitNow()), () => {});

/** In words and by a sign: pass, or outside with what to do. */
function showVerdict(said, measure, /** @type {{ text: string, value: any, verdict: string, why?: string }} */ { text, value, verdict, why }) {
  const state = text ? verdict : "none";
  measure.box.dataset.verdict = state;
  const words = state === "outside" ? outsideWords(measure.data, value) : why ?? say.unread;
  const key = `${state} ${words}`;
  if (said.dataset.key === key) return;
  said.dataset.key = key;
  const lines = {
    none: [],
    pass: [make("p", { class: "passed" }, `✓ ${say.pass}`)],
    outside: [make("p", { class: "failed" }, `✗ ${words}`), make("p", {}, measure.mend)],
    unread: [make("p", { class: "failed" }, words)],
  };
  said.replaceChildren(...lines[state]);
}
