// The ticks of a load-out, kept by the browser: what is on the truck, by job, day and line, with the time and the amount.
//
// Each tick has a key of its own in localStorage, which is read and written at once. So no tab can write over what
// another one ticked, the later tap is what stands, and there is nothing to merge, as there would be with one key a day.
// A tick takes some 150 signs and a browser gives about five million: room for years of load-outs.

const { job, top } = /** @type {{ job: string, top: string }} */ (/** @type {HTMLScriptElement} */ (document.currentScript).dataset);
const START = `crew-load ${new URL(top, location.href).pathname} ${job} `;
const keyOf = (day, line) => `${START}${day} ${line}`;

/** What the browser refused to keep, by key: a tick, or null for one that was taken back. Gone with the page. */
const unsaved = new Map();

/** The tick under a key, `{at, amount}`, or null. */
function kept(key) {
  if (unsaved.has(key)) return unsaved.get(key);
  try {
    const tick = JSON.parse(localStorage.getItem(key) ?? "null");
    return typeof tick?.amount === "string" ? tick : null;
  } catch {
    return null;
  }
}

/** Keep a tick under each key, or none, and what was refused before; gives why the browser refuses, or null. */
function keep(keys, tick) {
  /** @type {unknown} */
  let refused = null;
  for (const key of keys) unsaved.set(key, tick);
  for (const [key, one] of unsaved) {
    try {
      if (one) localStorage.setItem(key, JSON.stringify(one));
      else localStorage.removeItem(key);
      unsaved.delete(key);
    } catch (problem) {
      refused = problem;
    }
  }
  return refused;
}

/** Why the browser will keep nothing, before anybody relies on it; null where it does keep. */
function refusal() {
  try {
    localStorage.setItem(START, "");
    localStorage.removeItem(START);
    return null;
  } catch (problem) {
    return problem;
  }
}

/** Every key of a day that has a tick, also of lines that an earlier plan had. */
function keysOf(day) {
  let stored = [];
  try {
    stored = Object.keys(localStorage);
  } catch {
    // Then only what this page holds.
  }
  const all = new Set([...stored, ...unsaved.keys()]);
  return [...all].filter((key) => key.startsWith(keyOf(day, "")) && kept(key));
}
