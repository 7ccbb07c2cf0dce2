// One field of a form: what was put in, what it means, and what stands on the page for it.
//
// A field holds `text` (what was put in, with its unit), `page` (where the page starts it), `start` (the reading of the
// measurement that it is linked to, or else `page`), and the elements `box` (for it all), `wrong` (why it cannot be used)
// and, where it has them, `reads`, `back` and `readAt`. `parts` is what the page has for it.

/** A field that tells the form when it is changed: `changed()` after each key, `settled()` when somebody is done. */
function makeField(form, input, number) {
  const there = form.root.querySelector(`[data-input="${input.name}"]`);
  const kept = `${form.name}.${input.name}`;
  partsOf[kept] ??= there.querySelector("template")?.content;
  const parts = partsOf[kept]?.cloneNode(true);
  const standard = parts?.querySelector(".ours-is b")?.textContent ?? null;
  const start = form.start.given[input.name] ?? standard ?? exactly(input);
  const field = { form, input, parts, standard, page: start, start, text: start, id: `${form.key}-${number}`, read: null };
  field.isFolded = Boolean(there.closest("details"));
  input.label = there.querySelector("dt").textContent;
  input.choices = choicesIn(parts, "[type=radio]");
  input.columns.forEach((column, at) => {
    const cell = parts.querySelector(".row-in").children[at];
    column.label = cell.firstChild.textContent;
    column.choices = choicesIn(cell, "option");
  });
  field.reading = form.start.readings[input.name] ? measureOf(form.start.readings[input.name]) : null;
  startFromReading(field);
  return field;
}

/** What the first form of a calculator brings for its fields, for every form of it on the page. */
const partsOf = {};

/** What can be chosen, as the calculator takes it. */
const choicesIn = (parts, kind) => [...(parts?.querySelectorAll(kind) ?? [])].map((one) => ({ name: one.value, label: one.label ?? one.nextSibling.textContent }));

/** The measurement of the page with that name. */
const measureOf = (name) => [...document.querySelectorAll("[data-measure]")].find((one) => JSON.parse(one.dataset.measure).name === name);

/** What was read at its measurement is where a field starts; a new reading is put in, whatever stood there. Whether it changed. */
function startFromReading(field, isNew = false) {
  const text = field.reading?.dataset.reads || field.page;
  if (!field.reading || text === field.start) return false;
  const follows = isNew || field.text === field.start;
  field.start = text;
  if (follows) put(field, text);
  else showAround(field);
  return true;
}

/** The default of an input as text; nothing for one that has to be given. */
function exactly(input) {
  const value = input.default;
  if (value === null || (Array.isArray(value) && value.length === 0)) return "";
  return isFigure(input) ? crew.asGiven(input, value) : crew.exactly(value, input.quantity, input.unit);
}

/** The value of a field or the message why there is none; read once for each text. */
function readField(field) {
  const { input, text } = field;
  if (field.read?.text !== text) field.read = { ...crew.readInput(field.form.name, input.name, text), text };
  return field.read;
}

/** Put a text into a field, as if somebody had. */
function put(field, text) {
  field.text = text;
  // The way of the example that a form starts with is not that of a figure that somebody measured.
  field.chose = text !== field.page;
  field.show?.();
  showAround(field);
}

/** Build a field's elements, once. */
function drawField(field) {
  if (field.box) return field.box;
  const { input, id } = field;
  const kind = { choice: choices, "yes-no": choices, plan: area, rows: rowsEditor }[input.quantity] ?? line;
  field.wrong = make("p", { class: "wrong", id: `${id}-wrong` });
  field.reads = make("p", { class: "reads" });
  const help = field.parts?.querySelector(".help") ?? "";
  if (help) help.id = `${id}-help`;
  field.describes = `${id}-wrong${help && ` ${id}-help`}`;
  const { label, control } = kind(field);
  const group = ["choice", "yes-no", "rows"].includes(input.quantity);
  const around = group ? { role: "group", "aria-labelledby": `${id}-asks`, "aria-describedby": field.describes } : {};
  field.box = make("div", { class: `field of-${input.quantity}`, "data-input": input.name, ...around });
  const given = make("div", { class: "given-in" }, control, field.reads, field.wrong, ...standardOf(field), ...readingAt(field));
  field.box.append(make("div", { class: "asked" }, label, help), given);
  field.show();
  showAround(field);
  return field.box;
}

/** Where the reading is that a field starts from, and the way back to it. */
function readingAt(field) {
  if (!field.reading) return [];
  const place = field.reading.closest(".step");
  const link = make("a", { href: `#${place.id}` }, fill(say.read_at, { n: place.querySelector(".number").lastChild.textContent.trim() }));
  const figure = make("b");
  const back = button(say.back_to_reading, () => {
    put(field, field.start);
    field.form.changed(field);
  }, { class: "back-to" });
  const element = make("p", { class: "read-at" }, link, " ", figure, back);
  field.readAt = () => {
    element.hidden = field.start === field.page;
    tell(figure, field.start);
    back.hidden = field.text === field.start;
  };
  return [element];
}

/** The crew's standard by name, and the way back to it. */
function standardOf(field) {
  if (field.standard === null) return [];
  const ours = field.parts.querySelector(".ours-is");
  field.back = button(say.back, () => {
    put(field, field.standard);
    field.form.changed(field);
    field.box.querySelector("input, textarea")?.focus();
  }, { class: "back-to" });
  ours.append(field.back);
  return [ours];
}

/** What stands around the figure: how it was read, why it cannot be used, the way back. */
function showAround(field) {
  if (!field.box) return;
  const { message, value } = readField(field);
  const changed = field.standard !== null && field.text !== field.standard && !sameValue(field, field.standard);
  if (field.back) field.back.hidden = !changed;
  field.readAt?.();
  field.box.classList.toggle("changed", changed);
  tell(field.reads, message === undefined ? readAs(field, value) : "");
}

/** Whether another text means the same figure. */
function sameValue(field, text) {
  const { value } = readField(field);
  const other = crew.readInput(field.form.name, field.input.name, text).value;
  return typeof value === "number" ? Math.abs(value - other) < 1e-9 : value === other;
}

/** A figure typed with another unit, or without one where feet and inches stand, said in the unit of the form. */
function readAs(field, value) {
  const { input, text } = field;
  if (input.quantity !== "length" || typeof value !== "number" || value < -1e9 || value > 1e9) return "";
  const { size, way } = parted(input.ways, text);
  const full = crew.write(way ? Math.abs(value) : value, input.quantity, unitOf(input), 0, "nearest");
  const typed = field.typed ?? inBox(input, size);
  const same = [full, withoutUnit(full, unitOf(input)), full.replace(/' 0"$/, "'")].some((one) => one === typed.trim());
  const plain = !isBare(typed) || unitOf(input) === "ft-in";
  const exact = Math.abs(crew.read(full, input.quantity, input.unit) - Math.abs(value)) < 1e-6;
  return same || !plain ? "" : `${exact ? "=" : "≈"} ${full}`;
}
