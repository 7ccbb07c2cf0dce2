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

/** Read all items of this place and procedure; what is in memory and later stays. */
async function readItems() {
  const { job, space } = at;
  const start = [job, space, about.procedure];
  try {
    const found = await readAll(IDBKeyRange.bound(start, [...start, []]));
    found.forEach(take);
  } catch (problem) {
    trouble(problem);
  }
}

/** What this procedure asks for, as a record says it. */
const asked = () => ({
  ...about,
  page: location.pathname.slice(new URL(top || "./", location.href).pathname.length),
  steps: steps.map(({ id, title, print, measures, hold }) => ({ id, title, print, measures: measures.map(({ data, what, limits }) => ({ name: data.name, what, limits })), hold: hold ? hold.title : null })),
});

/** Write things, each with its key, where none stands that is not to be replaced. */
async function write(list, keyed, isLater) {
  const base = await database();
  await new Promise((done, failed) => {
    const work = base.transaction("items", "readwrite", { durability: "strict" });
    const store = work.objectStore("items");
    work.oncomplete = done;
    work.onabort = () => failed(work.error ?? new Error("stopped"));
    for (const thing of list) {
      const key = keyed(thing);
      store.get(key).onsuccess = ({ target }) => {
        if (!target.result || isLater(thing, target.result)) store.put({ ...target.result, ...thing }, key);
      };
    }
  });
}
const writeItems = (list) => write(list, keyOf, (item, there) => item.at >= there.at);

/** Once for each procedure, behind its items. A file from elsewhere does not name its page: what stood there stays. */
const told = new Set();
async function writeAsked(procedure) {
  if (told.has(procedure.procedure)) return;
  await write([procedure], (one) => [0, one.procedure], (one, there) => one.revision >= there.revision);
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
  for (const item of list) unsaved.set(nameOf(item), item);
  channel?.postMessage(list);
  const waiting = [...unsaved.values()];
  try {
    await writeItems(waiting);
    for (const item of waiting) if (unsaved.get(nameOf(item)) === item) unsaved.delete(nameOf(item));
    if (!unsaved.size) trouble(null);
    await writeAsked(procedure);
    navigator.storage?.persist?.().catch(() => {});
  } catch (problem) {
    trouble(problem);
  }
}

/** What somebody did just now, at a step. Its time is later than that of what it replaces, whatever the clock says. */
function did(kind, step, given, name = "") {
  const before = Date.parse(get(kind, step.id, name)?.at ?? 0);
  const time = new Date(Math.max(Date.now(), before + 1)).toISOString();
  const { job, space, who: by } = at;
  return keep([{ job, space, procedure: about.procedure, kind, step: step.id, name, at: time, by, revision: about.revision, print: step.print, ...given }]);
}

if (channel) channel.onmessage = ({ data }) => data.forEach((item) => take(item) && shown(item));
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && refresh());
addEventListener("pageshow", ({ persisted }) => persisted && refresh());
addEventListener("beforeunload", (event) => unsaved.size && event.preventDefault());
