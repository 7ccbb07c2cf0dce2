// The search as people see it: a field, and the answers under it as they type.

const says = window.crewSearch;
const here = new URL("../../", document.querySelector("script[src$=\"script/page.js\"]").src).href;
const entries = says.entries;
/** @type {ReturnType<typeof makeReady> | null} */
let ready = null;
const box = document.createElement("dialog");
box.className = "crew-search";
box.setAttribute("aria-label", says.title);
box.innerHTML = '<form method="dialog"><input type="text" inputmode="search" autocomplete="off" autocapitalize="off" spellcheck="false"><button class="shut" value="shut"></button></form><p class="said" role="status"></p><ol></ol>';
const field = box.querySelector("input");
const list = box.querySelector("ol");
const said = box.querySelector(".said");
box.querySelector(".shut").textContent = says.shut;
field.placeholder = says.title;
field.setAttribute("aria-label", says.title);
document.body.append(box);
function line(entry) {
  const item = document.createElement("li");
  const link = document.createElement("a");
  link.href = here + entry[0];
  const title = document.createElement("b");
  title.textContent = entry[1];
  const text = document.createElement("span");
  text.textContent = entry[2] || entry[4].replace(/^(.{1,118})\s.+$/s, "$1 …");
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
}

/** The links that the arrows walk through; the field stands above the first. */
function step(by) {
  const links = [...list.querySelectorAll("a")];
  const at = links.indexOf(document.activeElement) + by;
  if (at < 0) field.focus();
  else if (links[at]) links[at].focus();
}

field.addEventListener("input", answer);
box.addEventListener("keydown", (event) => {
  if (event.key === "ArrowDown") step(1);
  else if (event.key === "ArrowUp") step(-1);
  else if (event.key === "Enter" && event.target === field) list.querySelector("a")?.click();
  else return;
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
