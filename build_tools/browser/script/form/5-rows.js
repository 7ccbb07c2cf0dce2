// Rows, such as the openings of a schedule: a small block for each, with a box for each column. The text of the field
// has a row to each `;` and a column to each `,`, as rows are written everywhere in the book.

const cellsOf = (text) => text.split(/[;\n]/).filter((row) => row.trim()).map((row) => row.split(",").map((cell) => cell.trim()));
const rowText = (cells) => cells.join(", ").replace(/[, ]+$/, "");

function rowsEditor(field) {
  const { input, id } = field;
  const list = make("div", { class: "rows-in" });
  const changed = () => {
    field.text = [...list.children].map((row) => rowText(row.cells())).filter(Boolean).join("; ");
    field.form.changed(field);
  };
  const add = (cells) => list.append(rowBlock(field, list, cells, changed));
  field.show = () => {
    list.replaceChildren();
    cellsOf(field.text).forEach(add);
  };
  const more = button(say.add_row, () => {
    add([]);
    list.lastChild.querySelector("input").focus();
  }, { class: "act" });
  return { label: make("p", { class: "asks", id: `${id}-asks` }, input.label), control: make("div", {}, list, more) };
}

/** One row; `cells()` gives its texts. */
function rowBlock(field, list, cells, changed) {
  const controls = field.input.columns.map((column, at) => cellControl(column, cells[at] ?? ""));
  const row = make("div", { class: "row-in" });
  row.cells = () => controls.map((one) => one.text());
  controls.forEach((one, at) => row.append(make("label", {}, make("span", {}, field.input.columns[at].label), one.element)));
  row.append(button(say.drop_row, () => {
    const next = row.nextSibling ?? row.previousSibling;
    row.remove();
    changed();
    next?.querySelector("input").focus();
  }, { class: "act" }));
  row.addEventListener("input", changed);
  row.addEventListener("change", () => field.form.settled(field));
  return row;
}

/** The control of a cell and the way to its text. Signs that part rows and cells are no part of a text. */
function cellControl(column, text) {
  if (column.quantity === "yes-no") return listed(column, text, [{ name: "yes", label: say.yes }, { name: "no", label: say.no }]);
  if (column.quantity === "choice") return listed(column, text, column.choices);
  const typing = make("input", { type: "text", inputmode: keys(column), autocomplete: "off", value: inBox(column, text) });
  return { element: typing, text: () => withUnit(column, typing.value.replace(/[,;]+/g, " ").trim()) };
}

function listed(column, text, known) {
  const chosen = text || { true: "yes", false: "no" }[column.default] || column.default;
  const isChosen = (one) => [one.name, one.label].some((word) => word.toLowerCase() === String(chosen).toLowerCase());
  const list = make("select", {}, ...known.map((one) => make("option", { value: one.name, selected: isChosen(one) }, one.label)));
  // What is left at its default is not written, so that a short row stays short.
  const byDefault = String({ true: "yes", false: "no" }[column.default] ?? column.default);
  return { element: list, text: () => (list.value === byDefault ? "" : list.value) };
}
