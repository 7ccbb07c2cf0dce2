// What most scripts of the pages use: making elements, filling in words, what the browser remembers, waiting for a pause.

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

/** Words with what is put into them: fill("{n} less", {n: "1 in"}). */
const fill = (words, given) => words.replace(/\{(\w+)\}/g, (_, name) => given[name]);

/** A figure that goes two ways is a plain size and the words of its way: a text in these two parts, and whole again. */
function parted(ways, text) {
  const way = ways.find((one) => text.toLowerCase().endsWith(one.toLowerCase())) ?? "";
  return { size: text.slice(0, text.length - way.length).trimEnd(), way };
}
const whole = (size, way) => (way && size.trim() ? `${size.trim()} ${way}` : size);

/** The ways as buttons, one of which is pressed; `chosen` is told which. */
function waysToPick(ways, name, label, chosen) {
  const radios = ways.map((way) => make("input", { type: "radio", name, value: way }));
  for (const radio of radios) radio.addEventListener("change", () => chosen(radio.value));
  const element = make("div", { class: "choose", role: "radiogroup", "aria-label": label }, ...radios.map((radio) => make("label", {}, radio, make("span", {}, radio.value))));
  return { element, show: (way) => radios.forEach((radio) => (radio.checked = radio.value === way)) };
}

/** A day and hour as people say it, in the time of this place. */
function whenWords(iso) {
  const when = new Date(iso);
  return Number.isNaN(when.getTime()) ? iso : when.toLocaleString(document.documentElement.lang, { month: "short", day: "numeric", hour: "numeric", minute: "2-digit" });
}

/** Put words where they are not yet: a reader that speaks says only what is new. */
function tell(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

/** A browser may forbid a page to remember something, or have no room; then it holds for this page alone. */
const memory = {};
function remembered(name) {
  try {
    return memory[name] ?? localStorage.getItem(name);
  } catch {
    return null;
  }
}
function remember(name, value) {
  try {
    localStorage.setItem(name, value);
    delete memory[name];
  } catch {
    memory[name] = value;
  }
}

/** The same call again within the time replaces the one before. */
function later(time, does) {
  let waiting;
  return () => {
    clearTimeout(waiting);
    waiting = setTimeout(does, time);
  };
}
