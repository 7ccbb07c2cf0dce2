// What was ticked, read, looked at and noted, kept in the database, an item each. Items hang on the ids of steps, so they
// stay when steps change places. The later item of a kind wins, whichever tab wrote it; what the database refuses stays
// in memory, is said, and can still be taken out.

const items = new Map();
const unsaved = new Map();
const channel = window.BroadcastChannel ? new BroadcastChannel(databaseName()) : null;
const at = { job: "", space: "", who: "" };

const keyOf = (item) => [item.job, item.space, item.procedure, item.kind, item.step, item.name ?? ""];
const nameOf = (item) => JSON.stringify(keyOf(item));
const isHere = (item) => item.job === at.job && item.space === at.space && item.procedure === about.procedure;
const get = (kind, step, name = "") => items.get(nameOf({ ...at, procedure: about.procedure, kind, step, name }));

/** All items of a place and this procedure: those that are kept, and what could not be. */
async function itemsOf({ job, space }) {
  const start = [job, space, about.procedure];
  let kept = [];
  try {
    kept = await readAll(IDBKeyRange.bound(start, [...start, []]));
  } catch (problem) {
    trouble(problem);
  }
  const isThere = (item) => item.job === job && item.space === space && item.procedure === about.procedure && isTime(item.at);
  return [...kept, ...unsaved.values()].filter(isThere);
}

/** Read all items of this place; what is in memory and later stays. */
const readItems = async () => (await itemsOf(at)).forEach(take);

/** What an entry is once it is taken back. */
const EMPTY = { tick: { done: false }, reading: { text: "", value: null, verdict: "unread" }, hold: { passed: false, looked: "", role: "", when: "" }, note: { text: "" } };
const isFilled = (item) => Boolean(item.done || item.passed || item.text);
const emptied = (item) => ({ ...item, ...EMPTY[item.kind], at: laterThan(item), by: at.who });

/** What was entered before a job, or a space of it, was chosen. */
async function entriesBefore() {
  const places = [...(at.job ? [{ job: "", space: "" }] : []), ...(at.space ? [{ job: at.job, space: "" }] : [])];
  const found = new Map();
  for (const item of (await Promise.all(places.map(itemsOf))).flat()) {
    if (!(found.get(nameOf(item))?.at > item.at)) found.set(nameOf(item), item);
  }
  return [...found.values()].filter(isFilled);
}

/** What this procedure asks for, as a record says it. */
const asked = () => ({
  ...about,
  steps: steps.map(({ id, title, print, measures, hold }) => ({ id, title, print, measures: measures.map(({ data, what, limits }) => ({ name: data.name, what, limits })), hold: hold ? hold.title : null })),
});

/** The procedures whose steps are written: once a page is enough. */
const told = new Set();

/** Write items where none that is later stands, and with the first of them what their procedure asks for. */
async function write(list, procedure) {
  const base = await database();
  await new Promise((done, failed) => {
    const work = base.transaction("items", "readwrite", { durability: "strict" });
    const store = work.objectStore("items");
    work.oncomplete = done;
    work.onabort = () => failed(work.error ?? new Error("stopped"));
    const put = (thing, key, isLater) => {
      const kept = store.get(key);
      kept.onsuccess = () => {
        if (!kept.result || isLater(kept.result)) store.put(thing, key);
      };
    };
    for (const item of list) put(item, keyOf(item), (there) => !isTime(there.at) || there.at <= item.at);
    if (!told.has(procedure.procedure)) put(procedure, [0, procedure.procedure], (there) => there.revision <= procedure.revision);
  });
  told.add(procedure.procedure);
}

/** Into memory, where it is of this place and later than what stands there; gives whether it was taken. */
function take(item) {
  const there = items.get(nameOf(item));
  if (!isHere(item) || (there && there.at >= item.at)) return false;
  items.set(nameOf(item), item);
  return true;
}

/** Keep a list of items: shown at once, then written, then told to the other tabs. They may be another procedure's. */
async function keep(list, procedure = asked()) {
  list.forEach((item) => take(item) && shown(item));
  for (const item of list) if (!(unsaved.get(nameOf(item))?.at > item.at)) unsaved.set(nameOf(item), item);
  channel?.postMessage(list);
  const waiting = [...unsaved.values()];
  try {
    await write(waiting, procedure);
    for (const item of waiting) if (unsaved.get(nameOf(item)) === item) unsaved.delete(nameOf(item));
    if (!unsaved.size) trouble(null);
    navigator.storage?.persist?.().catch(() => {});
  } catch (problem) {
    trouble(problem);
  }
}

/** The time of now, later than that of what is replaced, whatever the clock says. */
const laterThan = (before) => new Date(Math.max(Date.now(), Date.parse(before?.at ?? 0) + 1)).toISOString();

/** What somebody did just now, at a step. */
function did(kind, step, given, name = "") {
  const time = laterThan(get(kind, step.id, name));
  const { job, space, who: by } = at;
  return keep([{ job, space, procedure: about.procedure, kind, step: step.id, name, at: time, by, revision: about.revision, print: step.print, ...given }]);
}

if (channel) channel.onmessage = ({ data }) => data.forEach((item) => take(item) && shown(item));
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && followPlace().then(refresh));
addEventListener("pageshow", ({ persisted }) => persisted && followPlace().then(refresh));
addEventListener("storage", ({ key }) => ["crew-place", "crew-who"].includes(key ?? "") && followPlace());
addEventListener("beforeunload", (event) => unsaved.size && event.preventDefault());
