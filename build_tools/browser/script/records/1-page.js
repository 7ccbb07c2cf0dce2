// The page of records: those that were handed over are read here, in this browser alone, and added up by job.

const say = {WORDS};
const top = "";
const records = [];
const box = document.querySelector("[data-records]");
const chosen = document.getElementById("records-in");
const out = box.querySelector("[data-read]");
const told = box.querySelector(".records-told");

async function read(files) {
  const lines = [];
  const takes = (ones) => {
    records.push(...ones);
    show(merged(records));
  };
  for (const file of files) {
    const found = await recordsOf(file);
    const { made, ahead } = partedByNow(found ?? []);
    records.push(...made);
    if (!found) lines.push(make("p", { class: "wrong" }, fill(say.no_record, { name: file.name })));
    if (ahead.length) lines.push(askAhead({ make, button, fill }, file.name, ahead, takes));
  }
  told.replaceChildren(make("p", {}, fill(say.read, { n: records.length })), ...lines);
  show(merged(records));
}

function show(works) {
  out.replaceChildren(...byJob(works).map((ones) => jobPart(ones)));
  if (!works.length) return;
  const all = works.flatMap(linesOf);
  out.prepend(make("p", {}, button(say.csv, () => handOut("records.csv", `\ufeff${csvOf(all)}`, "text/csv"), { class: "act" })));
}

function byJob(works) {
  const jobs = new Map();
  for (const work of works) jobs.set(work.job.id, [...(jobs.get(work.job.id) ?? []), work]);
  return [...jobs.values()].sort(([a], [b]) => !a.job.id - !b.job.id);
}

/** One job: its works in a table, and under it what needs a look. `also` stands under its head. */
function jobPart(works, also = "") {
  const title = works[0].job.title || say.no_job;
  const sums = works.map((work) => ({ work, ...summaryOf(work) }));
  const heads = [say.space, say.procedure, say.done, say.by, say.outside_n, say.holds_n];
  const far = ({ done, of, checksOpen }) => [fill(say.n_of, { n: done, of }), checksOpen ? say.checks_open : ""].filter(Boolean).join(", ");
  const row = ({ work, people, last, outside, holds, ...sum }) => make("tr", {},
    make("th", { scope: "row" }, work.page ? make("a", { href: work.page }, work.procedure.title) : work.procedure.title),
    ...[[say.space, work.space.title || work.space.id || "–"], [say.done, far(sum)], [say.by, [people.join(", "), last && dayWords(last)].filter(Boolean).join(", ") || "–"], [say.outside_n, String(outside.length)], [say.holds_n, String(holds.length)]].map(([label, text]) => make("td", { "data-label": label }, text)));
  const table = make("table", { class: "sums declared" }, make("thead", {}, make("tr", {}, ...[heads[1], heads[0], ...heads.slice(2)].map((head) => make("th", { scope: "col" }, head)))), make("tbody", {}, ...sums.map(row)));
  const place = (line) => [line.procedure, line.space].filter(Boolean).join(", ");
  const list = (head, lines, words) => (lines.length ? [make("h4", {}, head), make("ul", { class: "plain" }, ...lines.map((line) => make("li", {}, make("b", {}, place(line)), ` ${words(line)}`)))] : []);
  return make("section", { class: "part" }, make("h3", {}, title), also, make("div", { class: "slide", role: "region", "aria-label": title, tabindex: "0" }, table),
    ...list(say.outside_list, sums.flatMap(({ outside }) => outside), (line) => fill(say.outside_line, { what: line.what, entry: line.entry, limits: line.limits, by: line.by || say.nobody })),
    ...list(say.holds_list, sums.flatMap(({ holds }) => holds), (line) => fill(say.holds_line, { n: line.step, what: line.what })),
    ...list(say.others_list, sums.flatMap(({ others }) => others), (line) => fill(say.others_line, { n: line.step, what: line.what, entry: line.entry })),
    ...list(say.changed_list, sums.flatMap(({ changed }) => changed), (line) => (line.step ? fill(say.changed_line, { n: line.step, title: line.title }) : line.title)));
}

chosen.addEventListener("change", async () => {
  await read([...chosen.files]);
  chosen.value = "";
});
addEventListener("dragover", (event) => {
  event.preventDefault();
  box.classList.add("over");
});
addEventListener("dragleave", (event) => !event.relatedTarget && box.classList.remove("over"));
addEventListener("drop", (event) => {
  event.preventDefault();
  box.classList.remove("over");
  read([...event.dataTransfer.files]);
});
box.classList.add("live-records");
showDevice();
