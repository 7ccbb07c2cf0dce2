// The page of records: those that were handed over are read here, in this browser alone, and added up by job.

const say = {WORDS};
const top = "";
const records = [];
const box = document.querySelector("[data-records]");
const chosen = document.querySelector("#records-in");
const out = box.querySelector("[data-read]");
const told = box.querySelector(".records-told");

/** An element whose texts come from files, in which nothing is unseen or turns a line around. */
const write = (tag, given, ...inside) => make(tag, given, ...inside.map((one) => (typeof one === "string" ? printable(one) : one)));

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
    if (!found) lines.push(write("p", { class: "wrong" }, fill(say.no_record, { name: file.name })));
    if (ahead.length) lines.push(askAhead({ make: write, button, fill }, file.name, ahead, takes));
  }
  told.replaceChildren(write("p", {}, fill(say.read, { n: records.length })), ...lines);
  show(merged(records));
}

function show(works) {
  out.replaceChildren(...byJob(works).map((ones) => jobPart(ones)));
  if (!works.length) return;
  const all = works.flatMap(linesOf);
  out.prepend(write("p", {}, button(say.csv, () => handOut("records.csv", `\ufeff${csvOf(all)}`, "text/csv"), { class: "act" })));
}

function byJob(works) {
  const jobs = new Map();
  for (const work of works) jobs.set(work.job.id, [...(jobs.get(work.job.id) ?? []), work]);
  return [...jobs.values()].sort(([a], [b]) => Number(!a.job.id) - Number(!b.job.id));
}

/** One job: its works in a table, and under it what needs a look. `also` stands under its head. */
function jobPart(works, also = "") {
  const title = works[0].job.title || say.no_job;
  const sums = works.map((work) => ({ work, ...summaryOf(work) }));
  const heads = [say.space, say.procedure, say.done, say.by, say.outside_n, say.holds_n];
  const far = ({ done, of, checksOpen }) => [fill(say.n_of, { n: done, of }), checksOpen ? say.checks_open : ""].filter(Boolean).join(", ");
  const row = ({ work, people, last, outside, holds, done, of, checksOpen }) => write("tr", {},
    write("th", { scope: "row" }, work.page ? write("a", { href: work.page }, work.procedure.title) : work.procedure.title),
    ...[[say.space, work.space.title || work.space.id || "–"], [say.done, far({ done, of, checksOpen })], [say.by, [people.join(", "), last && dayWords(last)].filter(Boolean).join(", ") || "–"], [say.outside_n, String(outside.length)], [say.holds_n, String(holds.length)]].map(([label, text]) => write("td", { "data-label": label }, text)));
  const table = write("table", { class: "sums declared" }, write("thead", {}, write("tr", {}, ...[heads[1], heads[0], ...heads.slice(2)].map((head) => write("th", { scope: "col" }, head)))), write("tbody", {}, ...sums.map(row)));
  const place = (line) => [line.procedure, line.space].filter(Boolean).join(", ");
  const list = (head, lines, words) => (lines.length ? [write("h4", {}, head), write("ul", { class: "plain" }, ...lines.map((line) => write("li", {}, write("b", {}, place(line)), ` ${words(line)}`)))] : []);
  return write("section", { class: "part" }, write("h3", {}, title), also, write("div", { class: "slide", role: "region", "aria-label": printable(title), tabindex: "0" }, table),
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
  read([...event.dataTransfer?.files ?? []]);
});
box.classList.add("live-records");
showDevice();
