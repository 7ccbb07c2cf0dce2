// What the scripts of the work on site share: the procedure of the page, and loading what is needed only after the first
// tap.

const say = {WORDS};
/** The address of the walk: no step can have it as its id. */
const WALK = "#_walk";
const top = document.currentScript.dataset.top;
const root = document.querySelector(".procedure");
const about = { procedure: root.dataset.procedure, revision: Number(root.dataset.revision), title: root.querySelector("h1").textContent.trim() };

/** The words of an element without the labels in it, on one line. */
function wordsOf(element) {
  const copy = element.cloneNode(true);
  for (const label of copy.querySelectorAll(".label, .unseen")) label.remove();
  return copy.textContent.replace(/\s+/g, " ").trim();
}

const coming = {};

/** Load a script once, unless its global is there; the forms of the page may have asked for it already. */
function need(name, global) {
  if (window[global]) return Promise.resolve(window[global]);
  coming[name] ??= new Promise((done, failed) => {
    const given = document.querySelector(`script[src$="script/${name}.js"]`);
    const script = given ?? make("script", { src: `${top}assets/script/${name}.js` });
    script.addEventListener("load", () => done(window[global]));
    script.addEventListener("error", () => {
      delete coming[name];
      script.remove();
      failed(new Error(name));
    });
    if (!given) document.head.append(script);
  });
  return coming[name];
}
