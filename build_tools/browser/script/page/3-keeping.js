// Starting the script that keeps the book (offline.js), once the page is there and the line is free.

const HOUR = 3_600_000;
let mayKeep = false;
let looked = 0;
let failed = false;

const told = {
  coming: ({ got, of }) => show(fill(has.current ? say.coming_newer : say.coming, { got: megabytes(got), of: megabytes(of) }), null, "off"),
  failed: ({ why, edition }) => {
    failed = true;
    show(fill(say[`failed_${why}`], { of: megabytes(edition.bytes) }));
  },
  kept: () => readHas().then(showHas),
  taken: () => location.reload(),
};

async function start() {
  if (!worker) return show(say.preview);
  if (location.protocol === "file:") return show(say.folder);
  if (!window.isSecureContext) return show(say.unsafe);
  if (!navigator.serviceWorker || !window.caches) return show(say.cannot);
  document.head.append(make("link", "", { rel: "manifest", href: `${top}site.webmanifest` }));
  navigator.serviceWorker.addEventListener("message", ({ data }) => told[data?.kind]?.(data));
  try {
    await readHas();
  } catch {
    return show(say.refused);
  }
  showHas();
  if (!has.current && navigator.connection?.saveData) return offerToKeep();
  mayKeep = true;
  const whenFree = window.requestIdleCallback ?? setTimeout;
  const soon = () => setTimeout(() => whenFree(keep), 500);
  if (document.readyState === "complete") soon();
  else addEventListener("load", soon);
}

/** Somebody pays for each megabyte: say how many, and wait to be asked. */
async function offerToKeep() {
  try {
    const { bytes } = await (await fetch(`${top}edition.json`)).json();
    const begin = () => {
      mayKeep = true;
      keep();
    };
    show("", { words: fill(say.keep, { of: megabytes(bytes) }), does: begin });
  } catch {
    // No signal: then there is nothing to offer.
  }
}

/** Keep the book, or look whether there is a newer one. A browser looks by itself when a page is opened. */
async function keep() {
  failed = false;
  try {
    const registration = await navigator.serviceWorker.register(`${top}${worker}`, { scope: top });
    watch(registration.installing);
    registration.addEventListener("updatefound", () => watch(registration.installing));
    if (registration.active && !has.current) registration.active.postMessage({ kind: "keep" });
    else if (registration.active && looked) await registration.update();
    looked = Date.now();
  } catch {
    // No signal, or the browser refuses: what is here stays, and the next page tries again.
    if (!has.current) show(navigator.onLine ? say.refused : say.failed_signal);
  }
}

/** One that the browser ended without a word was cut off. */
function watch(coming) {
  const look = () => {
    if (coming.state === "redundant" && !failed) show(say.failed_signal);
    if (coming.state !== "installing") coming.removeEventListener("statechange", look);
  };
  coming?.addEventListener("statechange", look);
}

addEventListener("online", () => mayKeep && keep());
document.addEventListener("visibilitychange", () => {
  if (mayKeep && looked && document.visibilityState === "visible" && Date.now() - looked > HOUR) keep();
});
start();
