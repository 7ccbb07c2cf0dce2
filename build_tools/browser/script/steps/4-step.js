// What each step takes on site: a tick, a note, its readings, and the hold point after it.

const ACCEPT = root.querySelector(".accept");

/** The steps as they stand on the page, and the checks at the end as one more. */
const steps = [...root.querySelectorAll(".step"), ACCEPT].filter(Boolean).map((box) => {
  const isEnd = box === ACCEPT;
  const title = isEnd ? box.parentElement.querySelector("h2") : box.querySelector(".do");
  const hold = box.querySelector(".hold");
  return {
    id: isEnd ? "acceptance" : box.id,
    print: box.dataset.print,
    title: wordsOf(title),
    box,
    hold: hold && { box: hold, title: wordsOf(hold.querySelector(".bar a")) },
    measures: [...box.querySelectorAll("[data-measure]")].map(measureOf),
  };
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
  const open = button(say.note, () => {
    note.hidden = !note.hidden;
    open.setAttribute("aria-expanded", String(!note.hidden));
    if (!note.hidden) text.focus();
  }, { "aria-expanded": "false", "aria-controls": `note-${step.id}`, class: "note-by" });
  const line = make("div", { class: "done-line" }, make("label", { class: "tick" }, tick, done), by, open, changed, note);
  step.box.insertBefore(line, step.hold?.box ?? null);
  tick.addEventListener("change", () => did("tick", step, { done: tick.checked }));
  const keepNote = () => text.value.trim() !== (get("note", step.id)?.text ?? "") && did("note", step, { text: text.value.trim() });
  text.addEventListener("input", later(500, keepNote));
  text.addEventListener("change", keepNote);
  if (step.hold) buildHold(step);
  step.show = () => {
    const kept = get("tick", step.id);
    tick.checked = Boolean(kept?.done);
    by.textContent = kept?.done ? whose(kept) : "";
    line.classList.toggle("is-done", tick.checked);
    const differs = tick.checked && kept.print !== step.print;
    changed.hidden = !differs;
    if (differs) {
      const again = button(fill(say.tick_again, { n: about.revision }), () => did("tick", step, { done: true }));
      changed.replaceChildren(make("p", {}, fill(say.changed, { n: kept.revision, when: whenWords(kept.at) })), again);
    }
    const words = get("note", step.id)?.text ?? "";
    if (document.activeElement !== text) text.value = words;
    if (words && note.hidden) {
      note.hidden = false;
      open.setAttribute("aria-expanded", "true");
    }
    step.measures.forEach((measure) => measure.show());
    step.showHold?.();
  };
}

/** A time as the box for it takes it: in the time of this place. */
function localTime(date) {
  return new Date(date.getTime() - date.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}

/** A hold point asks who looked and when; until both are said it is open. */
function buildHold(step) {
  const id = `hold-${step.id}`;
  const looked = make("input", { type: "text", id, autocomplete: "off", autocapitalize: "words" });
  const when = make("input", { type: "datetime-local", id: `${id}-when` });
  const wrong = make("p", { class: "wrong", role: "alert" });
  const form = make("form", { class: "looks", novalidate: true },
    make("label", { for: id }, say.looked, looked), make("label", { for: `${id}-when` }, say.when, when),
    make("button", { type: "submit" }, say.has_passed), wrong);
  const passed = make("p", { role: "status" });
  const back = button(say.take_back, () => did("hold", step, { passed: false, looked: "", when: "" }));
  const held = make("div", { class: "looked" }, passed, back);
  step.hold.box.append(form, held);
  looked.addEventListener("focus", () => (when.value ||= localTime(new Date())));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const early = when.value > localTime(new Date(Date.now() + 60_000));
    wrong.textContent = !looked.value.trim() ? say.say_who : !when.value || !isLocalTime(when.value) ? say.say_when : early ? say.not_yet : "";
    if (wrong.textContent) return (looked.value.trim() ? when : looked).focus();
    did("hold", step, { passed: true, looked: looked.value.trim(), when: when.value });
  });
  step.showHold = () => {
    const kept = get("hold", step.id);
    const open = !kept?.passed;
    step.hold.box.classList.toggle("is-open", open);
    form.hidden = !open;
    held.hidden = open;
    passed.textContent = open ? "" : `✓ ${fill(say.looked_at, { who: kept.looked, when: whenWords(kept.when) })}`;
    step.hold.changed?.();
  };
}
const holdIsOpen = (step) => Boolean(step.hold) && !get("hold", step.id)?.passed;
