// The line for a reading beside its measurement. What reads and judges it comes with the first tap: the compiled functions
// of the book (fractions, feet and inches, millimetres), and crewEnter.

const isMetric = () => remembered("crew-units") === "metric";

const unitOf = ({ quantity, unit }) => (window.crew ? crew.unit(quantity, unit, isMetric()) : isMetric() ? "" : unit);

/** What reads a typed text, once it is there. */
const reads = () => window.crew && window.crewEnter;

/** A kept text without its way, and without the unit that stands in its box. */
const inBox = (data, text) => withoutUnit(parted(waysOf(data), text).size, unitOf(data));

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
    const full = typed.way || way;
    const given = reads()?.taken(data, text, full, unitOf(data)) ?? { text: whole(text, full), value: null, why: say.no_script };
    return { ...given, verdict: verdictOf(data, given.value) };
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
      typing.value = inBox(data, kept?.text ?? "");
      way = parted(waysOf(data), kept?.text ?? "").way;
      ways?.show(way);
    }
    const verdict = verdictOf(data, value);
    const { why } = (kept?.text && value === null && reads()?.readText(data, kept.text, unitOf(data))) || {};
    showVerdict(said, measure, { value, text: kept?.text ?? "", verdict, why });
    // By how much it is outside takes the functions that write figures.
    if (verdict === "outside" && !reads()) ready().then(() => reads() && measure.show());
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
const ready = () => Promise.all([need("crew", "crew"), need("enter", "crewEnter")]).then(() => measures().forEach((one) => one.unitNow()), () => {});

/** In words and by a sign: pass, or outside with what to do. */
function showVerdict(said, measure, /** @type {{ text: string, value: any, verdict: string, why?: string }} */ { text, value, verdict, why }) {
  const state = text ? verdict : "none";
  measure.box.dataset.verdict = state;
  const words = state === "outside" ? reads()?.outsideWords(measure.data, value, unitOf(measure.data)) ?? say.outside : why ?? say.unread;
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
