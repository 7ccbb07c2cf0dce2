// Which book this device has, how far a newer one has come, and the newer one offered: never put in place by itself.

const places = [...document.querySelectorAll("[data-kept]")];
const scope = new URL(top).pathname;
const megabytes = (bytes) => (bytes / 1e6).toFixed(1);
/** @type {{ current: any, ready: any }} */
let has = { current: null, ready: null };

/** A day as people say it; with the time where two books are of one day. */
function dayOf(edition, other) {
  const made = new Date(edition.date);
  const day = made.toLocaleDateString(document.documentElement.lang, { day: "numeric", month: "short", year: "numeric" });
  if (!other || new Date(other.date).toDateString() !== made.toDateString()) return day;
  return `${day}, ${made.toLocaleTimeString(document.documentElement.lang, { hour: "numeric", minute: "2-digit" })}`;
}

/**
 * Write the line in each of its places: what there is, what happens, and a button where there is a choice.
 *
 * @param {{ words: string, does: () => void } | null} act
 */
function show(more = "", act = null, live = "polite") {
  const line = has.current ? fill(say.has, { date: dayOf(has.current, has.ready) }) : "";
  for (const place of places) {
    place.setAttribute("aria-live", live);
    const button = act && make("button", act.words, { type: "button" });
    button?.addEventListener("click", () => act?.does());
    place.replaceChildren(make("p", [line, more].filter(Boolean).join(" ")), ...(button ? [button] : []));
  }
}

async function readHas() {
  const held = await caches.match(`${top}kept-state`, { cacheName: `crew-state ${scope}` });
  has = { current: null, ready: null, ...(held ? await held.json() : {}) };
}

/** What is to be said when nothing is on its way. */
function showHas() {
  if (!has.ready) return show();
  const act = { words: fill(say.take, { date: dayOf(has.ready, has.current) }), does: takeNew };
  show(say.newer, act);
  if (!places.some((place) => place.closest(".home"))) strip();
}

/** On a page other than home the offer stands above it as well, unless somebody reads further down already. */
function strip() {
  const above = document.querySelector(".md-content .crew");
  if (!above || scrollY > 0 || document.querySelector(".newer")) return;
  const button = make("button", fill(say.take, { date: dayOf(has.ready, has.current) }), { type: "button" });
  button.addEventListener("click", takeNew);
  const box = make("div", make("p", say.newer), { class: "newer kept" });
  box.append(button);
  above.before(box);
}

async function takeNew() {
  const registration = await navigator.serviceWorker.getRegistration(top);
  registration?.active?.postMessage({ kind: "take", id: has.ready.id });
}
