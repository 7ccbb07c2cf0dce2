// The walk: one step filling the screen. The page's own elements are shown one after another, so that a live form, a
// drawing and a reading work as on the full page, and what is entered is the same.

const say = {WORDS};
const WALKING = "crew-walking";

/** What is shown after what: the start, and for each step its dangers, itself, and the hold point after it. */
function screensOf({ root, steps }) {
  const before = root.querySelector("#before")?.closest(".part");
  const alone = [...root.querySelectorAll(":scope > .alone")];
  const screens = before || alone.length ? [{ kind: "before", boxes: [...alone, before].filter(Boolean), head: root.querySelector("h1") }] : [];
  steps.forEach((step) => {
    const isEnd = step.id === "acceptance";
    const head = isEnd ? step.box.parentElement.querySelector("h2") : step.box.querySelector("h3");
    const here = { step, boxes: [isEnd ? step.box.parentElement : step.box], head };
    if (dangersOf(root, step).length) screens.push({ ...here, kind: "danger", head: step.box.querySelector(".message .word") ?? head });
    screens.push({ ...here, kind: isEnd ? "end" : "step" });
    if (step.hold) screens.push({ ...here, kind: "hold", head: step.hold.box.querySelector(".bar") });
  });
  return screens;
}

/** The messages at a step, and those that stand earlier and guard it. */
function dangersOf(root, step) {
  if (step.id === "acceptance") return [];
  const guards = [...root.querySelectorAll(".message:not(.copied)")].filter((one) => one.querySelector(`.guards a[href="#${step.id}"]`) && !step.box.contains(one));
  return [...step.box.querySelectorAll(":scope > .message"), ...guards];
}

/** A danger that stands earlier on the page is shown again right before the step that it guards. */
function copyGuards(root, steps) {
  for (const step of steps) {
    const own = step.box.querySelector(":scope > .message:not(.copied)");
    for (const message of dangersOf(root, step)) {
      if (step.box.contains(message)) continue;
      const copy = message.cloneNode(true);
      copy.classList.add("copied");
      step.box.insertBefore(copy, own ?? step.box.firstChild);
    }
  }
}
