// What most scripts of the pages use: making elements and filling in words.

/** An element with its attributes (true: there without a value; false, null: not there) and what stands in it. */
function make(tag, given = {}, ...inside) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(given)) {
    if (value !== false && value !== null) element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...inside.filter((one) => one !== null && one !== ""));
  return element;
}

/** Words with what is put into them: fill("{n} less", {n: "1 in"}). */
const fill = (words, given) => words.replace(/\{(\w+)\}/g, (_, name) => given[name]);
