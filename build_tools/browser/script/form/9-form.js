// A worked example of the page becomes a form that answers as somebody types.

function makeForm(root) {
  const start = JSON.parse(root.dataset.start);
  const name = root.dataset.calculator;
  const form = { root, name, start, key: start.key, shows: [], declared: crew.calculators[name].declaration };
  form.fields = form.declared.inputs.map((input, number) => makeField(form, input, number));
  form.answerBox = root.querySelector(".comes");
  form.changed = (field) => {
    work(form);
    addressLater(form);
    followLater(form, field);
  };
  form.markLater = later(100, () => markTables(form, form.values));
  form.settled = (field) => sayWrong(form, field, true);
  form.waitToSay = later(600, () => form.fields.forEach((field) => sayWrong(form, field, false)));
  makeAnswer(form);
  root.querySelector(".puts").replaceChildren(...fieldParts(form));
  form.answerBox.after(acts(form));
  root.classList.add("live");
  return form;
}

/** What the page gives to type in, and the rest folded; a folded field is built when it is first seen. */
function fieldParts(form) {
  const open = form.fields.filter((field) => !field.isFolded);
  const folded = form.fields.filter((field) => field.isFolded);
  const head = make("div", { class: "head-in" }, make("p", { class: "label" }, say.put_in), hasUnits(form) ? unitSwitch() : "");
  const parts = [head, make("div", { class: "fields" }, ...open.map(drawField))];
  if (!folded.length) return parts;
  const inside = make("div", { class: "fields" });
  form.rest = make("details", { class: "worked rest" }, make("summary", {}, say.at_standards), inside);
  form.openRest = () => {
    if (!inside.children.length) inside.append(...folded.map(drawField));
  };
  form.rest.addEventListener("toggle", form.openRest);
  form.showRest = () => {
    form.openRest();
    form.rest.open = true;
  };
  return [...parts, form.rest];
}

/** Start over, and the link. */
function acts(form) {
  const said = make("span", { role: "status" });
  const again = button(say.start_over, () => {
    form.fields.forEach((field) => put(field, field.start));
    work(form);
  }, { class: "act again" });
  const copy = button(say.copy_link, async () => {
    tell(said, "");
    tell(said, (await copyLink(form)) ? say.copied : say.not_copied);
  }, { class: "act copy" });
  return make("div", { class: "acts" }, again, copy, said);
}

/** Whether a form has a figure that is another in metres. */
const hasUnits = ({ declared }) => [...declared.inputs, ...declared.outputs].some((one) => crew.unit(one.quantity, one.unit, true) !== one.unit);

/** Feet and inches or metres: one choice for all forms and pages, remembered. */
function unitSwitch() {
  const one = (words, on) => button(words, () => setUnits(on), { class: "units-by", "data-metric": String(on), "aria-pressed": String(metric === on) });
  return make("div", { class: "units", role: "group", "aria-label": say.units }, one(say.us, false), one(say.metric, true));
}

function setUnits(on) {
  metric = on;
  remember("crew-units", on ? "metric" : "us");
  for (const press of document.querySelectorAll(".units-by")) press.setAttribute("aria-pressed", String(press.dataset.metric === String(on)));
  for (const form of forms) {
    for (const field of form.fields) put(field, field.text);
    work(form);
  }
  document.dispatchEvent(new CustomEvent("crew-units", { detail: metric }));
}

// The readings of a procedure page have the same choice.
document.addEventListener("crew-units", ({ detail }) => detail !== metric && setUnits(detail));

/** The same figure asked for at another step of the page follows, where both started alike. */
function follow(form, field) {
  for (const other of forms) {
    const twin = other !== form && other.name === form.name && other.fields.find((one) => one.input.name === field.input.name);
    if (twin && twin.start === field.start && twin.text !== field.text) {
      put(twin, field.text);
      work(other);
    }
  }
}

/** A reading was made or taken back: the forms that start from it follow. */
document.addEventListener("crew-reading", ({ detail }) => {
  for (const form of forms) {
    const linked = form.fields.filter(({ input }) => form.start.readings[input.name] === detail.name);
    if (linked.filter((field) => startFromReading(field, detail.isNew)).length) work(form);
  }
});

/** The answer comes first; what stands elsewhere on the page waits until typing pauses. */
function followLater(form, field) {
  field.followLater ??= later(150, () => follow(form, field));
  field.followLater();
}

/** Work it out anew. */
function work(form) {
  const values = {};
  let wrong = [];
  for (const one of form.fields) {
    const { value, message } = readField(one);
    if (message !== undefined) wrong.push({ name: one.input.name, message });
    else values[one.input.name] = value;
  }
  const result = wrong.length ? null : crew.run(form.name, values, metric);
  if (result?.message !== undefined) wrong = [{ name: result.input, message: result.message }];
  noteWrong(form, wrong);
  if (wrong.length) {
    const atNone = wrong.find((one) => !form.fields.some((field) => field.input.name === one.name));
    setStale(form, true, atNone?.message ?? say.stale);
    form.values = null;
    form.waitToSay();
  } else {
    form.values = values;
    showAnswer(form, values, result?.answer);
  }
  form.markLater();
}

/** Keep what is wrong at its field; what is mended is cleared at once, what is new waits until typing pauses. */
function noteWrong(form, wrong) {
  for (const field of form.fields) {
    field.message = wrong.find((one) => one.name === field.input.name)?.message ?? "";
    const said = field.wrong?.textContent;
    if (said && said !== field.message) sayWrong(form, field, false);
  }
}

/** Say beside a field why it cannot be used; aloud once somebody is done with it. */
function sayWrong(form, field, aloud) {
  if (field.message && !field.box) form.showRest?.();
  if (!field.box) return;
  const { wrong, box, message } = field;
  if (message && form.rest?.contains(box)) form.rest.open = true;
  if (aloud && message) wrong.setAttribute("role", "alert");
  else if (!message) wrong.removeAttribute("role");
  tell(wrong, message ?? "");
  box.classList.toggle("is-wrong", Boolean(message));
  for (const control of box.querySelectorAll("input, textarea, select")) {
    if (message) control.setAttribute("aria-invalid", "true");
    else control.removeAttribute("aria-invalid");
  }
}

/** @type {{ key: string } | null} */
let lastForm = null;
const writeLater = later(300, () => addressWrite(lastForm?.key));

/** Write the address when typing pauses: a browser counts how often it is written. */
function addressLater(form) {
  lastForm = form;
  writeLater();
}

/** Load a calculator and make its forms live. Where it does not load, the worked examples stand, and it is asked for again. */
function begin(name) {
  const shared = window.crew ? null : page.scripts[0];
  begun[name] ??= loadAll([shared, scriptOf(page.scripts, name)]).then(() => makeLive(name), () => delete begun[name]);
  return begun[name];
}
const begun = {};

/** Every form, for what the address puts in; then to the place that it names. */
async function beginAll(mayMove = true) {
  await Promise.all(roots.map((root) => begin(root.dataset.calculator)));
  const place = addressTake();
  if (mayMove) place?.scrollIntoView();
}

function makeLive(name) {
  const made = roots.filter((root) => root.dataset.calculator === name).map(makeForm);
  forms.push(...made);
  forms.sort((one, other) => roots.indexOf(one.root) - roots.indexOf(other.root));
  made.forEach((form) => work(form));
}

/** Each begins when it comes near the screen: most pages are read without one. What the address puts in needs all. */
function beginForms(mayMove) {
  if (addressRead().given.length) return beginAll(mayMove);
  near.disconnect();
  roots.forEach((root) => near.observe(root));
}

const near = new IntersectionObserver((seen) => {
  for (const { isIntersecting, target } of seen) if (isIntersecting) begin(/** @type {HTMLElement} */ (target).dataset.calculator);
}, { rootMargin: "1500px" });

// What did not come is asked for again when signal is back, as when somebody comes to it again.
window.addEventListener("online", () => beginForms(false));

window.addEventListener("hashchange", () => {
  lastForm = null; // Somebody went on before the address was written: it names the new place.
  if (addressRead().given.length) {
    beginAll();
  } else if (forms.length) {
    addressWrite();
  }
});

const roots = [...document.querySelectorAll("[data-calculator][data-start]")];
const isReload = /** @type {PerformanceNavigationTiming} */ (performance.getEntriesByType("navigation")[0])?.type === "reload";
beginForms(!isReload);
