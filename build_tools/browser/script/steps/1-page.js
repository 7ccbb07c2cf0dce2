// What the scripts of the work on site share: the procedure of the page, and loading what is needed only after the first
// tap.

const say = {WORDS};
/** The address of the walk: no step can have it as its id. */
const WALK = "#_walk";
const top = /** @type {any} */ (document.currentScript).dataset.top;
const root = document.querySelector(".procedure");
const about = { procedure: root.dataset.procedure, revision: Number(root.dataset.revision), title: root.querySelector("h1").textContent.trim() };

/** The words of an element without the labels in it, on one line. */
function wordsOf(element) {
  const copy = element.cloneNode(true);
  for (const label of copy.querySelectorAll(".label, .unseen")) label.remove();
  return copy.textContent.replace(/\s+/g, " ").trim();
}

/**
 * A script by its global, when somebody first needs it; the forms of the page may have brought it already.
 *
 * @returns {Promise<any>}
 */
async function need(name, global) {
  if (!window[global]) await load(`${top}assets/script/${name}.js`);
  return window[global];
}
