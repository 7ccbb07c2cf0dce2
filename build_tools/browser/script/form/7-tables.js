// The computed tables of the page that are of the same calculator: the row and the column nearest to what was put in.

const tablesOf = (form) => document.querySelectorAll(`table[data-calculator="${form.name}"]`);

/** Mark them for these values; without any, unmark them. */
function markTables(form, values) {
  unmarkTables(form);
  if (!values) return;
  for (const table of tablesOf(form)) {
    const { down, across } = table.dataset;
    if (![down, across].some((name) => name && isChanged(form, name))) continue;
    const row = nearest([...table.querySelectorAll("tbody > tr")], values[down]);
    const heads = [...table.querySelectorAll("thead th[data-value]")];
    const column = across && values[across] !== 0 ? nearest(heads, values[across]) : null;
    if (!row) continue;
    mark(row, row.querySelector("th"), values[down]);
    if (column) mark(column, column, values[across]);
    if (column) row.querySelectorAll("td")[heads.indexOf(column)]?.classList.add("yours");
  }
}

function isChanged(form, name) {
  const field = form.fields.find((one) => one.input.name === name);
  return Boolean(field) && field.text !== field.page;
}

function unmarkTables(form) {
  for (const table of tablesOf(form)) {
    for (const tag of table.querySelectorAll(".tag.nearest")) tag.remove();
    for (const marked of table.querySelectorAll(".yours")) marked.classList.remove("yours");
  }
}

/** The element whose value is nearest: for a figure the least away, for a choice the same one. */
function nearest(elements, value) {
  if (typeof value !== "number") return elements.find((one) => one.dataset.value.toLowerCase() === String(value).toLowerCase()) ?? null;
  const away = (one) => Math.abs(Number(one.dataset.value) - value);
  return elements.reduce((best, one) => (best === null || away(one) < away(best) ? one : best), null);
}

function mark(marked, head, value) {
  const exact = typeof value !== "number" || Math.abs(Number(marked.dataset.value) - value) < 1e-6;
  marked.classList.add("yours");
  head.append(make("span", { class: "tag nearest" }, exact ? say.yours : say.nearest));
}
