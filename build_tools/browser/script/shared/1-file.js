// A record as a file (record.schema.json), as the page of a procedure writes and takes it and the owner's page reads it.
// build_tools/records has the same in Python; a test holds the two together.

const FORMAT = "crew-methods-record";
const TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;
const isText = (value) => typeof value === "string";
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
const PARTS = {
  tick: (one) => typeof one.done === "boolean",
  reading: (one) => [one.name, one.what, one.limits, one.text].every(isText) && (one.value === null || Number.isFinite(one.value)) && ["pass", "outside", "unread"].includes(one.verdict),
  hold: (one) => typeof one.passed === "boolean" && isText(one.looked) && isText(one.when),
  note: (one) => isText(one.text),
};
const FIELDS = {
  tick: ["done"], reading: ["what", "limits", "text", "value", "verdict"], hold: ["passed", "looked", "when"], note: ["text"],
};

/** One entry with what the schema has and no more; null where it is none. */
function entryOf(one) {
  const sound = isObject(one) && Object.hasOwn(PARTS, one.kind) && isText(one.step) && isText(one.by) && TIME.test(one.at) && isText(one.print) && Number.isInteger(one.revision) && PARTS[one.kind](one);
  if (!sound) return null;
  const { kind, step, name = "", at, by, revision, print } = one;
  return { kind, step, ...(kind === "reading" ? { name } : {}), at, by, revision, print, ...Object.fromEntries(FIELDS[kind].map((field) => [field, one[field]])) };
}

/** The records in a text, one or a list of them, or null where something in it is none of ours or broken. */
function recordsIn(text) {
  let given;
  try {
    given = JSON.parse(text);
  } catch {
    return null;
  }
  const records = (Array.isArray(given) ? given : [given]).map(recordOf);
  return records.length && records.every(Boolean) ? records : null;
}

function recordOf(given) {
  const isNamed = (one) => isObject(one) && isText(one.id) && isText(one.title);
  if (!isObject(given) || given.format !== FORMAT || given.version !== 1 || !TIME.test(given.taken)) return null;
  const { job, space, procedure, steps, items } = given;
  if (![job, space, procedure].every(isNamed) || !Number.isInteger(procedure.revision) || !Array.isArray(steps) || !Array.isArray(items)) return null;
  const isStep = (one) => isNamed(one) && isText(one.print) && (one.hold === null || isText(one.hold)) && Array.isArray(one.measures) && one.measures.every((each) => isObject(each) && [each.name, each.what, each.limits].every(isText));
  const entries = items.map(entryOf);
  return steps.every(isStep) && entries.every(Boolean) ? { ...given, items: entries } : null;
}

const entryKey = ({ kind, step, name = "" }) => JSON.stringify([kind, step, name]);

/** Records of the same work as one: of each entry the latest, the steps of the latest edition. */
function merged(records) {
  const works = new Map();
  for (const record of records) {
    const key = JSON.stringify([record.job.id, record.space.id, record.procedure.id]);
    const before = works.get(key);
    if (!before) {
      works.set(key, { ...record, items: [...record.items] });
      continue;
    }
    const isLater = record.procedure.revision > before.procedure.revision || (record.procedure.revision === before.procedure.revision && record.taken > before.taken);
    const entries = new Map(before.items.map((one) => [entryKey(one), one]));
    for (const one of record.items) if (!(entries.get(entryKey(one))?.at >= one.at)) entries.set(entryKey(one), one);
    works.set(key, { ...(isLater ? record : before), items: [...entries.values()] });
  }
  const order = ({ job, space, procedure }) => [job.title, space.title, procedure.title, procedure.id].join("\u0000");
  return [...works.values()].sort((a, b) => (order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0));
}
