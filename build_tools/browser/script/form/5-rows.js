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
  const row = field.parts.querySelector(".row-in").cloneNode(true);
  const texts = field.input.columns.map((column, at) => cellText(column, row.children[at].lastChild, cells[at] ?? ""));
  row.cells = () => texts.map((text) => text());
  row.lastChild.addEventListener("click", () => {
    const next = row.nextSibling ?? row.previousSibling;
    row.remove();
    changed();
    next?.querySelector("input").focus();
  });
  row.addEventListener("input", changed);
  row.addEventListener("change", () => field.form.settled(field));
  return row;
}

/** Fill the control of a cell; gives the way to its text. Signs that part rows and cells are no part of a text. */
function cellText(column, control, text) {
  if (!column.choices.length) {
    control.inputMode = keys(column);
    control.value = inBox(column, text);
    return () => withUnit(column, control.value.replace(/[,;]+/g, " ").trim());
  }
  // What is left at its default is not written, so that a short row stays short.
  const byDefault = String({ true: "yes", false: "no" }[column.default] ?? column.default);
  const isChosen = (one) => [one.name, one.label].some((word) => word.toLowerCase() === (text || byDefault).toLowerCase());
  const chosen = column.choices.find(isChosen);
  if (chosen) control.value = chosen.name;
  return () => (control.value === byDefault ? "" : control.value);
}
