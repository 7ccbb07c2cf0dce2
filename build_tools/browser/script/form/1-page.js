// What every piece of the forms uses: the words of the page, making elements, and what the browser remembers.

const page = JSON.parse(document.getElementById("crew-page").textContent);
const say = page.words;

/** An element with its attributes (true: there without a value; false, null: not there) and what stands in it. */
function make(tag, given = {}, ...inside) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(given)) {
    if (value !== false && value !== null) element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...inside.filter((one) => one !== null && one !== ""));
  return element;
}

/** A button that does something. */
function button(words, does, given = {}) {
  const made = make("button", { type: "button", ...given }, words);
  made.addEventListener("click", does);
  return made;
}

/** Change an element's words only where they differ, so that nothing is read out twice. */
function write(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

/** The words of the page with what is put into them: fill("{n} less", {n: "1 in"}). */
function fill(words, given) {
  return words.replace(/\{(\w+)\}/g, (_, name) => given[name]);
}

/** A browser may forbid a page to remember anything; then it starts anew each time. */
function remembered(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

function remember(name, value) {
  try {
    localStorage.setItem(name, value);
  } catch {
    // Then the choice holds for this page alone.
  }
}

const coming = {};

/** Load scripts, each once, to run in their order. They are ordinary ones: a page opened from a file can load no others. */
function load(addresses) {
  return Promise.all(addresses.filter(Boolean).map((address) => coming[address] ??= new Promise((done, failed) => {
    const script = make("script", { src: page.top + address });
    script.async = false;
    script.onload = done;
    script.onerror = failed;
    document.head.append(script);
  })));
}

const scriptOf = (scripts, name) => scripts.find((one) => one.endsWith(`/${name}.js`));

/** The same call again within the time replaces the one before. */
function later(time, does) {
  let waiting;
  return () => {
    clearTimeout(waiting);
    waiting = setTimeout(does, time);
  };
}
