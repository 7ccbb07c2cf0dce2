// What this phone has: the edition that is read, the one that waits to be taken, and the pages that stay with an older
// one. It stands in a store of its own, since the browser ends this script whenever it likes.

const scope = registration.scope;
const OWN = `crew-book ${new URL(scope).pathname} `;
const STATE = { cacheName: `crew-state ${new URL(scope).pathname}` };
const about = { id: EDITION.id, date: EDITION.date, bytes: EDITION.bytes };

/** The full address of a file of the site. */
const at = (path) => new URL(path, scope).href;
const storeOf = (id) => OWN + id;

/** @type {Promise<any> | null} */
let known = null;

/** The state as it was last read or written here. */
const state = () => (known ??= readState());

/** The state anew: another run of this script may have written it. An edition whose files are gone does not count. */
async function readState() {
  const held = await caches.match(at("kept-state"), STATE);
  const now = { current: null, ready: null, held: [], ...(held ? await held.json() : {}) };
  for (const name of ["current", "ready"]) {
    if (now[name] && !(await caches.has(storeOf(now[name].id)))) now[name] = null;
  }
  if (!now.current && now.ready) [now.current, now.ready] = [now.ready, null];
  known = Promise.resolve(now);
  return now;
}

async function writeState(now) {
  const store = await caches.open(STATE.cacheName);
  await store.put(at("kept-state"), new Response(JSON.stringify(now), { headers: { "content-type": "application/json" } }));
  known = Promise.resolve(now);
}

/** Say something to every open page of the book. */
async function tell(message) {
  const open = await clients.matchAll({ type: "window", includeUncontrolled: true });
  for (const page of open) page.postMessage({ ...message, edition: about });
}

/** Drop the editions that nobody reads any more, and forget the pages that were closed. */
async function tidy(now) {
  const open = new Set((await clients.matchAll({ type: "window", includeUncontrolled: true })).map((page) => page.id));
  const held = now.held.filter((one) => one.pages.some((page) => open.has(page)));
  if (held.length !== now.held.length) await writeState({ ...now, held });
  const wanted = new Set([now.current, now.ready, EDITION, ...held].filter(Boolean).map((one) => storeOf(one.id)));
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OWN) && !wanted.has(name)).map((name) => caches.delete(name)));
}
