// What each step takes on site: a tick, a note, its readings, and the hold point after it.

const ACCEPT = root.querySelector(".accept");

/**
 * The steps as they stand on the page, and the checks at the end as one more.
 *
 * @type {Step[]}
 */
const steps = [...root.querySelectorAll(".step"), ACCEPT].filter(Boolean).map((box) => {
  const isEnd = box === ACCEPT;
  const title = isEnd ? box.parentElement.querySelector("h2") : box.querySelector(".do");
  const hold = box.querySelector(".hold");
  /** @type {any} */
  const step = {
    id: isEnd ? "acceptance" : box.id,
    print: box.dataset.print,
    title: wordsOf(title),
    box,
    hold: hold && { box: hold, title: wordsOf(hold.querySelector(".bar a")), who: wordsOf(hold.querySelector(".looks-at-it")), ...JSON.parse(hold.dataset.lookers) },
    measures: [...box.querySelectorAll("[data-measure]")].map(measureOf),
  };
  return step;
});
const measures = () => steps.flatMap((step) => step.measures);

function measureOf(box) {
  const data = JSON.parse(box.dataset.measure);
  const [what, limits, mend] = [".what", ".figure", ".outside"].map((place) => wordsOf(box.querySelector(place)));
  const unitNow = () => (box.querySelector(".reading .unit").textContent = unitWords(unitOf(data)));
  return { box, data, what, limits, mend, unitNow };
}

/** Whose it is and when, in small letters. */
const whose = (item) => [item.by, whenWords(item.at)].filter(Boolean).join(", ");

function buildStep(step) {
  step.measures.forEach((measure) => readingOf(step, measure));
  const tick = make("input", { type: "checkbox", id: `tick-${step.id}` });
  const done = make("span", {}, say.done, make("span", { class: "unseen" }, `: ${step.title}`));
  const by = make("span", { class: "by" });
  const changed = make("div", { class: "changed-since", hidden: true });
  const text = make("textarea", { id: `note-${step.id}`, rows: "2" });
  const note = make("div", { class: "note-in", hidden: true }, make("label", { for: `note-${step.id}` }, say.note), text);
  const showNote = (isShown) => {
    note.hidden = !isShown;
    open.setAttribute("aria-expanded", String(isShown));
  };
  const open = button(say.note, () => {
    showNote(note.hidden);
    if (!note.hidden) text.focus();
  }, { "aria-expanded": "false", "aria-controls": `note-${step.id}`, class: "note-by" });
  const past = make("div", { class: "past-hold", role: "alert" });
  const line = make("div", { class: "done-line" }, make("label", { class: "tick" }, tick, done), by, open, past, changed, note);
  step.box.insertBefore(line, step.hold?.box ?? null);
  tick.addEventListener("change", () => (tick.checked ? tickIt() : did("tick", step, { done: false })));

  /** Past an open hold point only where somebody says so after he was told of it. */
  function tickIt() {
    const stop = openHoldBefore(step);
    if (!stop) return did("tick", step, { done: true });
    tick.checked = Boolean(get("tick", step.id)?.done);
    past.replaceChildren(
      make("p", {}, fill(say.stops_before, { hold: stop.hold.title, who: stop.hold.who })),
      button(say.to_hold, () => stop.hold.enter(), { class: "go" }),
      button(say.tick_past, () => {
        tick.focus();
        did("tick", step, { done: true });
      }));
  }

  const keepNote = () => text.value.trim() !== (get("note", step.id)?.text ?? "") && did("note", step, { text: text.value.trim() });
  text.addEventListener("input", later(500, keepNote));
  text.addEventListener("change", keepNote);
  if (step.hold) buildHold(step);
  step.leave = () => {
    showNote(false);
    step.hold?.leave();
  };
  step.show = () => {
    const kept = get("tick", step.id);
    tick.checked = Boolean(kept?.done);
    past.replaceChildren();
    by.textContent = kept?.done ? whose(kept) : "";
    line.classList.toggle("is-done", tick.checked);
    const differs = tick.checked && kept.print !== step.print;
    changed.hidden = !differs;
    if (differs) {
      const again = button(fill(say.tick_again, { n: about.revision }), tickIt);
      changed.replaceChildren(make("p", {}, fill(say.changed, { n: kept.revision, when: whenWords(kept.at) })), again);
    }
    const words = get("note", step.id)?.text ?? "";
    if (document.activeElement !== text) text.value = words;
    if (words) showNote(true);
    step.measures.forEach((measure) => measure.show());
    step.showHold?.();
  };
}

/** A hold point asks who looked and when; until both are said it is open. Who looked is picked, or named in full. What is
    said is looked over by the script that comes with the first tap. */
function buildHold(step) {
  const id = `hold-${step.id}`;
  const { people } = step.hold;
  const picked = make("select", { id }, make("option", { value: "" }, say.pick_who), ...people.map(([one], index) => make("option", { value: index }, one)), make("option", { value: "other" }, say.somebody_else));
  const name = make("input", { type: "text", id: `${id}-name`, autocomplete: "off", autocapitalize: "words" });
  const named = make("label", { for: `${id}-name`, hidden: true }, say.full_name, name);
  const when = make("input", { type: "datetime-local", id: `${id}-when` });
  const wrong = make("p", { class: "wrong", role: "alert" });
  const form = make("form", { class: "looks", novalidate: true },
    make("label", { for: id }, say.looked, picked), named, make("label", { for: `${id}-when` }, say.when, when),
    make("button", { type: "submit" }, say.has_passed), wrong);
  const passed = make("p", { role: "status" });
  const back = button(say.take_back, () => did("hold", step, EMPTY.hold));
  const held = make("div", { class: "looked" }, passed, back);
  step.hold.box.append(form, held);
  picked.addEventListener("change", () => {
    named.hidden = picked.value !== "other";
    if (picked.value) when.value ||= localTime(new Date());
  });
  form.addEventListener("input", () => wrong.replaceChildren());
  form.addEventListener("focusin", () => need("enter", "crewEnter").catch(() => {}));
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const isSure = event.submitter?.matches(".anyway");
    try {
      const given = (await need("enter", "crewEnter")).lookOf({ ...step.hold, picked, name, when, wrong }, isSure);
      if (!given) return;
      did("hold", step, given);
      step.hold.leave();
    } catch {
      wrong.textContent = say.no_script;
    }
  });
  step.hold.leave = () => {
    form.reset();
    named.hidden = true;
    wrong.textContent = "";
  };
  step.hold.enter = () => {
    picked.focus();
    step.hold.box.scrollIntoView({ block: "nearest" });
  };
  step.showHold = () => {
    const kept = get("hold", step.id);
    const open = !kept?.passed;
    step.hold.box.classList.toggle("is-open", open);
    form.hidden = !open;
    held.hidden = open;
    passed.textContent = open ? "" : `✓ ${fill(say.looked_at, { who: kept.role ? `${kept.looked}, ${kept.role},` : kept.looked, when: whenWords(kept.when) })}`;
  };
}
const holdIsOpen = (step) => Boolean(step.hold) && !get("hold", step.id)?.passed;

/** The first open hold point before a step: work stops there. */
const openHoldBefore = (step) => steps.slice(0, steps.indexOf(step)).find(holdIsOpen);
