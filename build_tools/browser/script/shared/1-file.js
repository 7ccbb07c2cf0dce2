// A record as a file (record.schema.json), as the page of a procedure writes and takes it and the owner's page reads it.
// build_tools/records has the same in Python; a test holds the two together.

const FORMAT = "crew-methods-record";
const isText = (value) => typeof value === "string";
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
const PARTS = {
  tick: (one) => typeof one.done === "boolean",
  reading: (one) => [one.name, one.what, one.limits, one.text].every(isText) && (one.value === null || Number.isFinite(one.value)) && ["pass", "outside", "unread"].includes(one.verdict),
  hold: (one) => typeof one.passed === "boolean" && isText(one.looked) && (one.role === undefined || isText(one.role)) && isLocalTime(one.when),
  note: (one) => isText(one.text),
};
const FIELDS = {
  tick: ["done"], reading: ["what", "limits", "text", "value", "verdict"], hold: ["passed", "looked", "role", "when"], note: ["text"],
};

/** Of what somebody else wrote, only the fields that the schema names. */
const only = (given, ...names) => Object.fromEntries(names.map((name) => [name, given[name]]));

/** One entry with what the schema has and no more; null where it is none. */
function entryOf(one) {
  const sound = isObject(one) && Object.hasOwn(PARTS, one.kind) && isText(one.step) && isText(one.by) && isTime(one.at) && isText(one.print) && Number.isInteger(one.revision) && PARTS[one.kind](one);
  if (!sound) return null;
  const names = one.kind === "reading" ? ["kind", "step", "name"] : ["kind", "step"];
  return only(one, ...names, "at", "by", "revision", "print", ...FIELDS[one.kind]);
}

/** Bytes of a file of records: all of a large job has a few million. */
const LARGEST = 30_000_000;

/** The records in a file; null where they are none of ours, broken, too many, or no UTF-8. */
async function recordsOf(file) {
  if (file.size > LARGEST) return null;
  try {
    return recordsIn(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(await file.arrayBuffer()));
  } catch {
    return null;
  }
}

const COUNT_OR_TEXT = /"((?:[^"\\]|\\.)*)"(?:[ \t\r\n]*:[ \t\r\n]*(-?[0-9][0-9.eE+-]*))?/g;
const COUNTS = ["revision", "version"];

/** Whether each revision in a sound text of JSON is a whole number, plainly written, that every reader takes alike. */
const areCountsPlain = (text) => [...text.matchAll(COUNT_OR_TEXT)].every(([, name, count]) => count === undefined || !COUNTS.includes(JSON.parse(`"${name}"`)) || (/^-?[0-9]+$/.test(count) && Number.isSafeInteger(Number(count))));

/** The records in a text, one or a list of them, or null where something in it is none of ours or broken. */
function recordsIn(written) {
  const text = written.replace(/^\ufeff/, "");
  let given;
  try {
    given = JSON.parse(text);
  } catch {
    return null;
  }
  if (!areCountsPlain(text)) return null;
  const records = (Array.isArray(given) ? given : [given]).map(recordOf);
  return records.length && records.every(Boolean) ? records : null;
}

function recordOf(given) {
  const isNamed = (one) => isObject(one) && isText(one.id) && isText(one.title);
  if (!isObject(given) || given.format !== FORMAT || given.version !== 1 || !isTime(given.taken)) return null;
  const { job, space, procedure, steps, items } = given;
  if (![job, space, procedure].every(isNamed) || !Number.isInteger(procedure.revision) || !Array.isArray(steps) || !Array.isArray(items)) return null;
  const isStep = (one) => isNamed(one) && isText(one.print) && (one.hold === null || isText(one.hold)) && Array.isArray(one.measures) && one.measures.every((each) => isObject(each) && [each.name, each.what, each.limits].every(isText));
  const entries = items.map(entryOf);
  if (!steps.every(isStep) || !entries.every(Boolean)) return null;
  return {
    ...only(given, "format", "version", "taken"),
    job: only(job, "id", "title"), space: only(space, "id", "title"), procedure: only(procedure, "id", "title", "revision"),
    steps: steps.map((step) => ({ ...only(step, "id", "title", "print", "hold"), measures: step.measures.map((each) => only(each, "name", "what", "limits")) })),
    items: entries,
  };
}

/** Clocks that people set by hand differ by minutes; one that is ahead by more would overrule what others enter. */
const CLOCKS_DIFFER = 15 * 60_000;
/** The time of a place is at most so far ahead of UTC. */
const ZONES_DIFFER = 14 * 3_600_000;
const isAhead = (time, by = CLOCKS_DIFFER) => Date.parse(time) > Date.now() + by;

/** The time of an entry that is still to come, when it was made or when somebody looked; empty where there is none. */
function aheadOf({ at, when }) {
  const looked = when ? `${when}:00.000Z` : "";
  return isAhead(at) ? at : isAhead(looked, ZONES_DIFFER + CLOCKS_DIFFER) ? looked : "";
}

const dayWords = (time) => new Date(time).toLocaleDateString(document.documentElement.lang, { month: "short", day: "numeric", year: "numeric" });

/** Records in two lots: with the entries that were made by now, and with those whose time is still to come. */
function partedByNow(records) {
  const withItems = (record, items) => ({ ...record, taken: isAhead(record.taken) ? new Date().toISOString() : record.taken, items });
  const made = records.map((record) => withItems(record, record.items.filter((one) => !aheadOf(one))));
  const ahead = records.map((record) => withItems(record, record.items.filter(aheadOf))).filter(({ items }) => items.length);
  return { made, ahead };
}

/** What is said of entries whose time is still to come, with a button that takes them all the same. */
function askAhead(own, name, ahead, takes) {
  const { make: write, button: press, fill: filled } = own;
  const times = ahead.flatMap(({ items }) => items.map(aheadOf)).sort();
  const box = write("div", { class: "wrong ahead" }, write("p", {}, filled(times.length === 1 ? say.one_ahead : say.many_ahead, { name: printable(name), n: times.length, day: dayWords(times.at(-1)) })));
  box.append(press(say.take_ahead, async () => {
    await takes(ahead);
    box.remove();
  }, { class: "act" }));
  return box;
}

const entryKey = ({ kind, step, name = "" }) => JSON.stringify([kind, step, name]);
