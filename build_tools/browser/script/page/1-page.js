// The line at the foot of every page that says which book this device has.

const say = {WORDS};
const { worker, top: way } = /** @type {HTMLScriptElement} */ (document.currentScript).dataset;
const top = new URL(`${way}/`, location.href).href;

/** An element with words in it. */
function make(tag, words, given = {}) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(given)) element.setAttribute(name, value);
  element.append(words);
  return element;
}

const fill = (words, given) => words.replace(/\{(\w+)\}/g, (_, name) => given[name]);
