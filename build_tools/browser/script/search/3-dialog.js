// The search as people see it: a field, and the answers under it as they type.

const says = window.crewSearch;
const here = new URL("../../", document.querySelector("script[src$=\"script/find.js\"]").src).href;
const entries = says.entries;
let ready = null;
const box = document.createElement("dialog");
box.className = "crew-search";
box.setAttribute("aria-label", says.title);
box.innerHTML = '<form method="dialog"><input type="text" inputmode="search" autocomplete="off" autocapitalize="off" spellcheck="false" role="combobox" aria-expanded="true" aria-controls="crew-found" aria-autocomplete="list"><button class="shut" value="shut"></button></form><p class="said" role="status"></p><ol id="crew-found" role="listbox"></ol>';
const field = box.querySelector("input");
const list = box.querySelector("ol");
const said = box.querySelector(".said");
box.querySelector(".shut").textContent = says.shut;
field.placeholder = says.title;
field.setAttribute("aria-label", says.title);
document.body.append(box);
let marked = -1;

function line(entry, index) {
  const item = document.createElement("li");
  item.setAttribute("role", "option");
  item.id = `crew-found-${index}`;
  const link = document.createElement("a");
  link.href = here + entry[0];
  link.tabIndex = -1;
  const title = document.createElement("b");
  title.textContent = entry[1];
  const text = document.createElement("span");
  text.textContent = entry[2] || entry[4].slice(0, 120);
  link.append(title, text);
  item.append(link);
  return item;
}

function answer() {
  ready = ready || makeReady(entries);
  const typed = field.value.trim();
  const { found, meant } = typed ? search(typed, ready, says.words) : { found: [], meant: [] };
  list.replaceChildren(...found.map(line));
  said.textContent = !typed ? says.hint : !found.length ? says.nothing : meant.length ? says.meant.replace("{word}", meant.join(", ")) : "";
  mark(found.length ? 0 : -1);
}

function mark(index) {
  const items = [...list.children];
  marked = index;
  items.forEach((item, at) => item.setAttribute("aria-selected", String(at === index)));
  if (index >= 0) {
    field.setAttribute("aria-activedescendant", items[index].id);
    items[index].scrollIntoView({ block: "nearest" });
  } else field.removeAttribute("aria-activedescendant");
}

field.addEventListener("input", answer);
box.addEventListener("keydown", (event) => {
  const last = list.children.length - 1;
  if (event.key === "ArrowDown" && last >= 0) mark(Math.min(marked + 1, last));
  else if (event.key === "ArrowUp" && last >= 0) mark(Math.max(marked - 1, 0));
  else if (event.key === "Enter" && event.target === field) {
    if (marked >= 0) { box.close(); list.children[marked].firstChild.click(); }
  } else return;
  event.preventDefault();
});
list.addEventListener("click", () => box.close());
box.addEventListener("click", (event) => { if (event.target === box) box.close(); });

window.crewFind = (typed) => {
  if (!box.open) box.showModal();
  if (typed !== undefined) field.value = typed;
  field.focus();
  field.select();
  answer();
};
