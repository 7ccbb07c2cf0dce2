// What was ticked, read, looked at and noted, kept in the browser's own database (IndexedDB), an item each. Items hang on
// the ids of steps, so they stay when steps change places. The later item of a kind wins, whichever tab wrote it; what
// the database refuses stays in memory, is said, and can still be taken out.

const scope = new URL(top || "./", location.href).pathname;
const DATABASE = `crew-record ${scope}`;
const items = new Map();
const unsaved = new Map();
const channel = window.BroadcastChannel ? new BroadcastChannel(DATABASE) : null;
const at = { job: "", space: "", who: "" };

const keyOf = (item) => [item.job, item.space, item.procedure, item.kind, item.step, item.name ?? ""];
const nameOf = (item) => JSON.stringify(keyOf(item));
const isHere = (item) => item.job === at.job && item.space === at.space && item.procedure === about.procedure;
const get = (kind, step, name = "") => items.get(nameOf({ ...at, procedure: about.procedure, kind, step, name }));

let opened = null;

function database() {
  opened ??= new Promise((done, failed) => {
    if (!window.indexedDB) throw Object.assign(new Error("no database"), { name: "Absent" });
    const asked = indexedDB.open(DATABASE, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("items");
    asked.onerror = () => failed(asked.error);
    asked.onsuccess = () => {
      const base = asked.result;
      base.onclose = base.onversionchange = () => {
        base.close();
        opened = null;
      };
      done(base);
    };
  });
  opened.catch(() => (opened = null));
  return opened;
}

/** Read all items of this place and procedure; what is in memory and later stays. */
async function readItems() {
  const { job, space } = at;
  const start = [job, space, about.procedure];
  try {
    const base = await database();
    const found = await new Promise((done, failed) => {
      const asked = base.transaction("items").objectStore("items").getAll(IDBKeyRange.bound(start, [...start, []]));
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => failed(asked.error);
    });
    found.forEach(take);
  } catch (problem) {
    trouble(problem);
  }
}

/** Write items where none that is later stands. */
async function write(list) {
  const base = await database();
  await new Promise((done, failed) => {
    const work = base.transaction("items", "readwrite", { durability: "strict" });
    const store = work.objectStore("items");
    work.oncomplete = done;
    work.onabort = () => failed(work.error ?? new Error("stopped"));
    for (const item of list) {
      store.get(keyOf(item)).onsuccess = ({ target }) => {
        if (!target.result || target.result.at <= item.at) store.put(item, keyOf(item));
      };
    }
  });
}

/** Into memory, where it is of this place and later than what stands there; gives whether it was taken. */
function take(item) {
  const there = items.get(nameOf(item));
  if (!isHere(item) || (there && there.at >= item.at)) return false;
  items.set(nameOf(item), item);
  return true;
}

/** Keep a list of items: shown at once, then written, then told to the other tabs. */
async function keep(list) {
  list.forEach((item) => take(item) && shown(item));
  for (const item of list) unsaved.set(nameOf(item), item);
  channel?.postMessage(list);
  const waiting = [...unsaved.values()];
  try {
    await write(waiting);
    for (const item of waiting) if (unsaved.get(nameOf(item)) === item) unsaved.delete(nameOf(item));
    if (!unsaved.size) trouble(null);
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
