// What a record says, a line for each step, reading, hold point and note.

/** Who looked, what he is not where the look was not his, and when. */
const lookOf = ({ looked, role, when }) => `${looked}, ${role ? `${role}, ` : ""}${when.replace("T", " ")}`;

function linesOf(record) {
  const entries = new Map(record.items.map((one) => [entryKey(one), one]));
  const take = (kind, step, name = "") => {
    const key = entryKey({ kind, step, name });
    const found = entries.get(key);
    entries.delete(key);
    return found;
  };
  const lines = [];
  const add = (number, title, kind, given, entry) => lines.push({
    job: record.job.title || record.job.id, space: record.space.title || record.space.id, procedure: record.procedure.title,
    revision: String(entry?.revision ?? record.procedure.revision), step: number, title, kind, what: "", limits: "", entry: "", state: "",
    by: entry?.by ?? "", at: entry?.at ?? "", ...given,
  });
  record.steps.forEach((step, index) => {
    const number = step.id === "acceptance" ? "" : String(index + 1);
    const tick = take("tick", step.id);
    const state = !tick?.done ? "open" : tick.print === step.print ? "done" : "changed since";
    add(number, step.title, "step", { state }, tick?.done ? tick : undefined);
    for (const { name, what, limits } of step.measures) {
      const reading = take("reading", step.id, name);
      const isThere = Boolean(reading?.text);
      add(number, step.title, "reading", { what, limits, entry: reading?.text ?? "", state: isThere ? reading.verdict : "missing" }, isThere ? reading : undefined);
    }
    if (step.hold !== null) {
      const hold = take("hold", step.id);
      add(number, step.title, "hold", { what: step.hold, entry: hold?.passed ? lookOf(hold) : "", state: !hold?.passed ? "open" : hold.role ? "passed by another" : "passed" }, hold?.passed ? hold : undefined);
    }
    const note = take("note", step.id);
    if (note?.text) add(number, step.title, "note", { entry: note.text }, note);
  });
  // What hangs on a step or a measurement that the procedure no longer has.
  for (const one of entries.values()) {
    const said = { tick: one.done && "done", reading: one.text, hold: one.passed && lookOf(one), note: one.text }[one.kind];
    const step = record.steps.find(({ id }) => id === one.step);
    if (said) add("", step?.title ?? one.step, { tick: "step" }[one.kind] ?? one.kind, { what: one.what ?? "", limits: one.limits ?? "", entry: said, state: one.verdict === "outside" ? "outside, no longer in the procedure" : "no longer in the procedure" }, one);
  }
  return lines;
}

/** A record in a few figures: steps as the page counts them, and whether the checks at the end are all that is left. */
function summaryOf(record) {
  const lines = linesOf(record);
  const ticks = lines.filter(({ kind, state }) => kind === "step" && !state.startsWith("no longer"));
  // The checks at the end have no number.
  const steps = ticks.filter(({ step }) => step);
  const done = steps.filter(({ state }) => state !== "open").length;
  const people = [...new Set(record.items.map(({ by }) => by).filter(Boolean))].sort();
  return {
    lines,
    done,
    of: steps.length,
    checksOpen: done === steps.length && ticks.some(({ step, state }) => !step && state === "open"),
    people,
    last: record.items.map(({ at }) => at).sort().at(-1) ?? "",
    outside: lines.filter(({ state }) => state.startsWith("outside")),
    holds: lines.filter(({ kind, state }) => kind === "hold" && state === "open"),
    others: lines.filter(({ state }) => state === "passed by another"),
    changed: ticks.filter(({ state }) => state === "changed since"),
  };
}
