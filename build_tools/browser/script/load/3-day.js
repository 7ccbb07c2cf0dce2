// A day: how far it is, in the day and in the list of days at the top, and starting it afresh.

const page = document.querySelector(".crew.load");
const stays = make("p", {}, say.load_stays);
const alarm = make("div", { class: "alarm", role: "alert" });

const counted = (n, one, many) => (n === 1 ? one : fill(many, { n }));

/** How far some lines are, in words. */
function farOf(lines) {
  const [truck, comes] = [false, true].map((one) => lines.filter((line) => line.comes === one));
  const on = (some) => ({ n: some.filter((line) => line.isOn).length, of: some.length });
  const changed = lines.filter((line) => line.tick && !line.isOn).length;
  const { n, of } = on(truck);
  return [
    of && fill(n === of ? say.load_all : say.load_far, { n, of }),
    comes.length && fill(say.load_comes, on(comes)),
    changed && counted(changed, say.load_one_changed, say.load_many_changed),
    lines.some((line) => unsaved.has(line.key)) && say.load_not_kept,
  ].filter(Boolean).join(" · ");
}

function dayOf(section) {
  const day = section.id.slice(2);
  const name = section.querySelector("h2").firstChild.textContent.trim();
  const far = make("p", { class: "loaded", role: "status" });
  const last = make("span", { class: "last" });
  const sure = make("b", { id: `sure-${day}` });
  const leave = button(say.load_leave, () => ask(false));
  const clear = button(say.load_clear, () => {
    const refused = keep(keysOf(day), null);
    ask(false);
    changed(refused);
    section.querySelector("input").focus();
  });
  const question = make("div", { role: "group", class: "clearing", "aria-labelledby": sure.id, hidden: true }, sure, leave, clear);
  const open = button(say.load_afresh, () => ask(true));
  const afresh = make("div", { class: "afresh" }, last, open, question);
  const inList = make("small");
  const lines = [...section.querySelectorAll("[data-line]")].map((item) => lineOf(item, day, changed));

  /** The question takes the place of the button. 'Leave them' comes first: who taps twice by mistake clears nothing. */
  function ask(asks) {
    open.hidden = asks;
    question.hidden = !asks;
    const n = keysOf(day).length;
    sure.textContent = asks ? fill(n === 1 ? say.load_one_sure : say.load_many_sure, { n, day: name }) : "";
    (asks ? leave : open).focus();
  }
  question.addEventListener("keydown", ({ key }) => key === "Escape" && ask(false));

  /** What an earlier tap could not keep may lie on other days: while there is such a thing all are shown anew. */
  function changed(refused) {
    if (refused && !section.contains(alarm)) section.querySelector(".lists").before(alarm);
    const all = refused || alarm.textContent;
    trouble(refused);
    if (all) showAll();
    else show();
  }

  function show() {
    lines.forEach((line) => line.show());
    const ticked = lines.filter((line) => line.tick);
    const times = ticked.map((line) => line.tick?.at).sort();
    section.classList.toggle("begun", ticked.length > 0);
    afresh.hidden = !ticked.length;
    tell(far, farOf(lines));
    tell(last, ticked.length ? fill(say.load_last, { when: whenWords(times.at(-1)) }) : "");
    tell(inList, ticked.length ? fill(say.n_of, { n: lines.filter((line) => line.isOn).length, of: lines.length }) : "");
  }

  section.querySelector(".doing").after(far, afresh);
  page.querySelector(`.jump a[href="#${section.id}"]`).append(inList);
  return { start: keyOf(day, ""), show };
}

/** Say that the browser does not keep the ticks, and why. */
function trouble(problem) {
  tell(alarm, !problem ? "" : problem.name === "QuotaExceededError" ? say.load_full : say.load_refused);
}

const days = [...page.querySelectorAll(".truck")].map(dayOf);
const showAll = () => days.forEach((day) => day.show());

// What another tab did came later than what this one could not keep. Without a word from there a tab looks again when
// it is seen; and a browser that puts boxes back as they were has done so when the page is shown.
addEventListener("storage", ({ key }) => {
  unsaved.delete(key);
  for (const day of days) if (!key || key.startsWith(day.start)) day.show();
});
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && showAll());
addEventListener("pageshow", showAll);
addEventListener("beforeunload", (event) => unsaved.size && event.preventDefault());

page.querySelector(".jump").before(stays, alarm);
trouble(refusal());
showAll();
