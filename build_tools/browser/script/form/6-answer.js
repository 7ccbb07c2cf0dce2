// The answer as it stands on the page: written anew where it differs, struck out where a figure cannot be used.

/** The parts of the answer, in place of the worked example that the page came with. */
function makeAnswer(form) {
  for (const there of form.root.querySelectorAll("[data-output]")) {
    form.shows.push(there.dataset.output);
    const output = form.declared.outputs.find((one) => one.name === there.dataset.output);
    output.label ||= there.querySelector("dt").textContent;
  }
  const stale = make("p", { class: "stale-says", hidden: true });
  const figures = make("dl", { class: "answer" });
  const lists = make("div");
  const live = make("div", { "aria-live": "polite" }, stale, figures, lists);
  const cautions = make("div", { "aria-live": "polite" });
  const steps = make("ol");
  const working = make("details", { class: "worked" }, make("summary", {}, say.how_worked_out), steps);
  form.answerBox.replaceChildren(make("p", { class: "label" }, say.answer), live, cautions, working);
  form.answer = { stale, figures, lists, cautions, steps, working, lines: new Map() };
}

function showAnswer(form, values, answer) {
  const { figures, lists, cautions, steps, working, lines } = form.answer;
  setStale(form, false);
  const shown = shownLines(form, answer);
  for (const one of shown) {
    if (one.rows?.length) continue;
    const there = lines.get(one.name) ?? addLine(figures, one);
    lines.set(one.name, there);
    tell(there.lastChild, one.text || say.nothing);
  }
  for (const [name, there] of lines) there.hidden = Boolean(shown.find((one) => one.name === name)?.rows?.length);
  replaceWhenNew(lists, shown.filter((one) => one.rows?.length), (one) => rowsTable(form, one));
  replaceWhenNew(cautions, answer.cautions, (words) => make("p", { class: "watch" }, make("span", { class: "label" }, say.caution), words));
  replaceWhenNew(steps, answer.working, (words) => make("li", {}, words));
  working.hidden = answer.working.length === 0;
  redraw(form, values, answer);
}

/** The outputs that the page asks for, in its order. */
function shownLines(form, answer) {
  const all = crew.shown(form.name, answer, metric);
  return form.shows.map((name) => all.find((one) => one.name === name));
}

/** A line of the answer; it is read out whole when its figure changes. */
function addLine(figures, one) {
  const made = make("div", { "aria-atomic": "true", "data-output": one.name }, make("dt", {}, one.label), make("dd"));
  figures.append(made);
  return made;
}

function replaceWhenNew(box, things, draw) {
  const key = JSON.stringify(things);
  if (box.drawn === key) return;
  box.drawn = key;
  box.replaceChildren(...things.map(draw));
}

function rowsTable(form, one) {
  const columns = form.declared.outputs.find((output) => output.name === one.name).columns;
  const heads = columns.map((column) => make("th", { scope: "col" }, column.label));
  const cell = (row, column, at) => at === 0
    ? make("th", { scope: "row" }, row[column.name] || say.nothing)
    : make("td", { "data-label": column.label }, row[column.name] || say.nothing);
  const body = one.rows.map((row) => make("tr", {}, ...columns.map((column, at) => cell(row, column, at))));
  const table = make("table", { class: "sums declared answer-rows" }, make("caption", {}, one.label), make("thead", {}, make("tr", {}, ...heads)), make("tbody", {}, ...body));
  return make("div", { class: "slide", role: "region", "aria-label": one.label, tabindex: "0" }, table);
}

/** The last good answer stays to be read, struck out, while a figure cannot be used. */
function setStale(form, isStale, words = "") {
  for (const part of [form.answerBox, form.root.querySelector("[data-drawing]")]) part?.classList.toggle("stale", isStale);
  form.answer.stale.hidden = !isStale;
  tell(form.answer.stale, words);
}

/** The drawing beside the form, once it no longer is the one that the page came with. */
function redraw(form, values, answer) {
  const box = form.root.querySelector("[data-drawing]");
  const same = !form.redrawn && form.fields.every((field) => field.text === field.page);
  if (!box || same) return;
  form.redrawn = { values, answer };
  loadAll(page.draw).then(() => drawLatest(form, box), () => box.replaceChildren());
}

/** Several keys may have been pressed while the script was on its way: the last is drawn, in a moment of its own. */
function drawLatest(form, box) {
  if (form.drawing) return;
  form.drawing = true;
  requestAnimationFrame(() => {
    form.drawing = false;
    const sheet = crew.drawing(form.name, form.redrawn.values, form.redrawn.answer);
    if (sheet) box.innerHTML = crew.draw(sheet, `${form.key}-drawing`);
    box.hidden = !sheet;
  });
}
