// Answering the pages: from the edition that is read, else from the network. A page goes on with the edition it was
// opened with, also when a newer one is taken in another window.

addEventListener("install", (event) => event.waitUntil(keep().then(() => skipWaiting())));

addEventListener("activate", (event) => event.waitUntil(Promise.all([clients.claim(), readState().then(tidy)])));

addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(scope)) event.respondWith(answer(event));
});

addEventListener("message", (/** @type {any} */ event) => {
  const { kind, id } = event.data ?? {};
  if (kind === "take") event.waitUntil(take(id, event.source));
  if (kind === "keep") event.waitUntil(keep().catch(() => {}));
});

async function answer(event) {
  const { request } = event;
  const opens = request.mode === "navigate";
  try {
    const now = await state();
    if (opens && now.held.length && !registration.installing) event.waitUntil(tidy(now));
    const edition = (!opens && now.held.find((one) => one.pages.includes(event.clientId))) || now.current;
    const kept = edition && (await keptFile(edition, request.url, opens));
    if (kept) return kept;
  } catch {
    // A phone may refuse to read its own store: then as if there were none.
  }
  try {
    return await fetch(request);
  } catch (gone) {
    if (!opens) throw gone;
    const headers = { "content-type": "text/html; charset=utf-8" };
    return new Response(ABSENT.replace("HOME", at("index.html")), { status: 404, headers });
  }
}

/** A file of an edition; a folder gives its first page. */
async function keptFile(edition, url, opens) {
  const { pathname } = new URL(url);
  const find = (path) => caches.match(new URL(path, scope).href, { cacheName: storeOf(edition.id) });
  if (pathname.endsWith("/")) return find(`${pathname}index.html`);
  const file = await find(pathname);
  if (file || !opens) return file;
  // Another book of this server may lie there: without its last slash its address falls to the book above it.
  const folder = `${pathname}/`;
  const leads = (await caches.has(`crew-state ${folder}`)) || (await find(`${folder}index.html`));
  return leads && Response.redirect(folder);
}

/** Read the waiting edition from now on. Other open pages stay with the one that they came from. */
async function take(id, page) {
  const now = await readState();
  if (now.ready?.id !== id) return;
  const open = await clients.matchAll({ type: "window", includeUncontrolled: true });
  const stay = open.map((one) => one.id).filter((one) => one !== page.id && !now.held.some(({ pages }) => pages.includes(one)));
  const held = stay.length && now.current ? [...now.held, { id: now.current.id, pages: stay }] : now.held;
  const then = { current: now.ready, ready: null, held };
  await writeState(then);
  page.postMessage({ kind: "taken" });
  if (!registration.installing) await tidy(then);
}
