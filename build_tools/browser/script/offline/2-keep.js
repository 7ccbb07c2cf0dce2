// Keeping an edition: every file of the list into a store of its own, each held against its length and its digest.
// What breaks off goes on where it stopped; the edition that is read is not touched.

const AT_ONCE = 6;

async function keep() {
  const now = await readState();
  for (const name of ["current", "ready"]) {
    // The same book built again: nothing to fetch, and the later date is true of it.
    if (now[name]?.id !== EDITION.id) continue;
    await writeState({ ...now, [name]: about });
    return tell({ kind: "kept" });
  }
  const store = await caches.open(storeOf(EDITION.id));
  try {
    await fill(store, await lacking(store));
  } catch (/** @type {any} */ problem) {
    const noRoom = problem.name === "QuotaExceededError";
    if (noRoom) await caches.delete(storeOf(EDITION.id));
    await tell({ kind: "failed", why: noRoom ? "room" : problem.why ?? "signal" });
    throw problem;
  }
  const then = await readState();
  await writeState(then.current ? { ...then, ready: about } : { ...then, current: about });
  await tidy(await state());
  await tell({ kind: "kept" });
}

/** The files that have to be fetched; those that an older edition holds with the same digest are taken from there. */
async function lacking(store) {
  const here = new Set((await store.keys()).map((request) => request.url));
  const older = (await caches.keys()).filter((name) => name.startsWith(OWN) && name !== storeOf(EDITION.id));
  const wanted = [];
  for (const file of EDITION.files) {
    const address = at(file[0]);
    if (!here.has(address) && !(await copied(store, older, address, file[2]))) wanted.push(file);
  }
  return wanted;
}

async function copied(store, older, address, digest) {
  for (const cacheName of older) {
    const held = await caches.match(address, { cacheName });
    if (held?.headers.get("x-digest") !== digest) continue;
    await store.put(address, held);
    return true;
  }
  return false;
}

/** Fetch a few files at a time, and say how far it is. */
async function fill(store, wanted) {
  const of = wanted.reduce((sum, file) => sum + file[1], 0);
  const waiting = [...wanted];
  let got = 0, stopped = false, said = 0;
  const say = async () => {
    said = Date.now();
    await tell({ kind: "coming", got, of });
  };
  const work = async () => {
    while (waiting.length && !stopped) {
      const file = waiting.shift();
      await fetchFile(store, file);
      got += file[1];
      if (Date.now() - said > 250) await say();
    }
  };
  await say();
  try {
    await Promise.all(Array.from({ length: AT_ONCE }, work));
  } finally {
    stopped = true;
  }
}

async function fetchFile(store, [path, bytes, digest]) {
  // A server in between may hold an older file: the second time past everything that keeps copies.
  for (const cache of /** @type {RequestCache[]} */ (["no-cache", "reload"])) {
    const response = await fetch(at(path), { cache });
    const body = await response.arrayBuffer();
    if (response.ok && body.byteLength === bytes && (await digestOf(body)) === digest) {
      const headers = { "content-type": response.headers.get("content-type") ?? "", "x-digest": digest };
      return store.put(at(path), new Response(body, { headers }));
    }
  }
  throw Object.assign(new Error(`${path} is not what the list says`), { why: "differs" });
}

/** SHA-256, its first half, in hexadecimal digits. */
async function digestOf(body) {
  const whole = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return Array.from(whole.slice(0, 16), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
