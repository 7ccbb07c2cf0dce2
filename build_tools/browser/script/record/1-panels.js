// The two panels of the box above the steps: which job and space this is and who, and the record of this procedure.

const say = {WORDS};

window.crewRecord = (own) => {
  const { about, at, items, make, button, fill, room } = own;
  return { place, record };

  async function place() {
    const { jobs, people } = await own.places();
    const who = make("input", { type: "text", id: "place-who", list: "place-people", autocomplete: "off", autocapitalize: "words", value: at.who });
    const names = make("datalist", { id: "place-people" }, ...people.map((name) => make("option", { value: name })));
    const job = jobs.length ? choice("place-job", say.no_job, jobs, at.job) : make("input", { type: "text", id: "place-job", value: at.job, autocomplete: "off" });
    const spaceIn = make("span", {});
    const showSpaces = () => {
      const spaces = jobs.find((one) => one.id === job.value)?.spaces;
      spaceIn.replaceChildren(spaces ? choice("place-space", say.no_space, spaces, at.space) : make("input", { type: "text", id: "place-space", value: at.space, autocomplete: "off" }));
      spaceIn.parentElement.hidden = Boolean(jobs.length) && !job.value;
    };
    const form = make("form", { class: "place-in" }, make("label", { for: "place-job" }, say.job, job), make("label", { for: "place-space" }, say.space, spaceIn), make("label", { for: "place-who" }, say.who, who, names), make("button", { type: "submit" }, say.take_place), make("p", {}, say.place_why));
    job.addEventListener("input", showSpaces);
    form.addEventListener("submit", async (event) => {
      event.preventDefault();
      await own.setPlace(job.value.trim(), spaceIn.firstChild.value.trim(), who.value.trim());
      if (room.contains(form)) document.querySelector('[data-panel="place"]').click();
    });
    room.replaceChildren(form);
    showSpaces();
    job.focus();
  }

  function choice(id, none, list, chosen) {
    const known = [{ id: "", title: none }, ...list];
    if (chosen && !list.some((one) => one.id === chosen) && id === "place-job") known.push({ id: chosen, title: chosen });
    return make("select", { id }, ...known.map((one) => make("option", { value: one.id, selected: one.id === chosen }, one.title)));
  }

  /** The record as it stands, also what the browser refused to keep. */
  async function recordNow() {
    const { jobs } = await own.places();
    const job = jobs.find((one) => one.id === at.job);
    return {
      format: FORMAT,
      version: 1,
      taken: new Date().toISOString(),
      job: { id: at.job, title: job?.title ?? at.job },
      space: { id: at.space, title: own.titleIn(job?.spaces, at.space) },
      procedure: { id: about.procedure, title: about.title, revision: about.revision },
      steps: own.asked().steps,
      items: [...items.values()].map(entryOf).filter(Boolean).sort((a, b) => (a.at < b.at ? -1 : 1)),
    };
  }

  async function record() {
    const said = make("div", { class: "said", role: "status" });
    const chosen = make("input", { type: "file", id: "record-in", accept: ".json,application/json", multiple: true });
    chosen.addEventListener("change", () => takeIn([...chosen.files], said));
    room.replaceChildren(
      make("div", { class: "record-by" },
        button(say.take_out, async () => {
          const now = await recordNow();
          const name = handOutRecords(now, "record", about.procedure, at.job, at.space, now.taken.slice(0, 10));
          said.replaceChildren(make("p", {}, fill(say.taken_out, { name })));
        }, { class: "go" }),
        button(say.print, async () => printSheet(await recordNow())),
        make("label", { for: "record-in", class: "file-in" }, say.put_in, chosen),
        afresh(said)),
      said,
      make("p", {}, say.stays, make("a", { href: `${own.top}records.html` }, say.all_records)));
    room.querySelector("button").focus();
  }

  /** For work that comes again: a second tap empties every entry, which is an entry itself, so it holds on other devices. */
  function afresh(said) {
    let sure = false;
    const press = button(say.afresh, async () => {
      const filled = [...items.values()].filter(own.isFilled);
      if (sure) {
        await own.keep(filled.map(own.emptied));
        own.showAll();
      }
      sure = !sure && filled.length > 0;
      press.textContent = sure ? fill(say.afresh_sure, { n: filled.length }) : say.afresh;
      said.replaceChildren(make("p", {}, sure ? say.afresh_why : say.afresh_done));
    });
    return press;
  }

  /** Entries of files into what is kept; where both have one, the later stays. */
  async function takeIn(files, said) {
    const lines = [];
    for (const file of files) {
      const given = await recordsOf(file);
      if (!given) lines.push(make("p", {}, printable(fill(say.no_record, { name: file.name }))));
      const { made, ahead } = partedByNow(given ?? []);
      for (const one of made) if (one.items.length || !ahead.length) lines.push(...await putIn(one));
      const takes = async () => {
        for (const one of ahead) said.append(...await putIn(one));
        await own.refresh();
      };
      if (ahead.length) lines.push(askAhead(own, file.name, ahead, takes));
    }
    await own.refresh();
    said.replaceChildren(...lines);
  }

  /** One record into what is kept; gives what is said of it. */
  async function putIn({ job, space, procedure, steps, items: entries }) {
    const asked = procedure.id === about.procedure ? own.asked() : { ...procedure, procedure: procedure.id, steps };
    await own.keep(entries.map((one) => ({ name: "", ...one, job: job.id, space: space.id, procedure: procedure.id })), asked);
    const words = [job.title, space.title].filter(Boolean).join(" · ") || say.no_job;
    const lines = [make("p", {}, printable(fill(say.put_in_done, { n: entries.length, title: procedure.title, place: words })))];
    const isElsewhere = procedure.id === about.procedure && (job.id !== at.job || space.id !== at.space);
    if (isElsewhere) lines.push(button(say.go_there, () => own.setPlace(job.id, space.id, at.who)));
    return lines;
  }

  /** The record as a sheet of paper: only it is printed, once. */
  function printSheet(now) {
    const sums = summaryOf(now);
    const heads = [say.step, say.what, say.limits, say.entry, say.state, say.by];
    const shown = (text) => make("td", {}, printable(text));
    const row = (line) => make("tr", {}, shown(line.step), shown(line.kind === "step" ? line.title : line.what || say.note), shown(line.limits), shown(line.entry), shown(say[`state_${line.state.replaceAll(" ", "_")}`] ?? line.state), shown([line.by, line.at && own.whenWords(line.at)].filter(Boolean).join(", ")));
    const sheet = make("section", { class: "crew record-sheet" },
      make("h1", {}, about.title),
      make("p", {}, printable([now.job.title || say.no_job, now.space.title, fill(say.revision, { n: about.revision }), fill(say.ticked, { n: sums.done, of: sums.of }), sums.checksOpen ? say.checks_open : "", own.whenWords(now.taken)].filter(Boolean).join(" · "))),
      make("table", {}, make("thead", {}, make("tr", {}, ...heads.map((head) => make("th", { scope: "col" }, head)))), make("tbody", {}, ...sums.lines.map(row))),
      make("p", { class: "sign-here" }, say.sign_here));
    document.querySelector(".record-sheet")?.remove();
    document.body.append(sheet);
    document.documentElement.dataset.prints = "record";
    const after = () => {
      delete document.documentElement.dataset.prints;
      sheet.remove();
    };
    addEventListener("afterprint", after, { once: true });
    print();
  }
};
