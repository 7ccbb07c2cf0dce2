// The box above the steps: which job and space this is, how far it is, and the ways to the walk and the record.

const where = make("p", { class: "where" });
const far = make("p", { class: "far" });
const alarm = make("div", { class: "alarm", role: "alert" });
const room = make("div", { class: "room" });
const units = [false, true].map((metric) => button(metric ? say.metric : say.us, () => setUnits(metric), { class: "units-by", "data-metric": String(metric) }));
const before = make("div", { class: "before-place", role: "status" });
const bar = make("div", { class: "on-site" }, where, far, alarm, before,
  make("div", { class: "on-site-acts" },
    make("a", { href: WALK, class: "go" }, say.walk),
    button(say.place, () => panel("place"), { "data-panel": "place", "aria-expanded": "false" }),
    button(say.record, () => panel("record"), { "data-panel": "record", "aria-expanded": "false" }),
    make("div", { class: "units", role: "group", "aria-label": say.units }, ...units)),
  room);

/** The titles of jobs, spaces and people come with a script of their own, where a job is named or is to be chosen. */
/** @type {Places} */
let places = { jobs: [], people: [] };
const titleIn = (list, id) => list?.find((one) => one.id === id)?.title ?? id;

function placeWords() {
  const job = places.jobs.find((one) => one.id === at.job);
  const parts = at.job ? [titleIn(places.jobs, at.job), titleIn(job?.spaces, at.space)] : [say.no_job];
  return parts.filter(Boolean).join(" · ");
}

function showBar() {
  where.replaceChildren(make("b", {}, placeWords()), at.who ? ` · ${at.who}` : "");
  const numbered = steps.filter(({ box }) => box !== ACCEPT);
  const isDone = (step) => Boolean(get("tick", step.id)?.done);
  const done = numbered.filter(isDone).length;
  const outside = measures().filter((one) => one.box.dataset.verdict === "outside").length;
  const open = steps.filter(holdIsOpen).length;
  const lines = [fill(say.ticked, { n: done, of: numbered.length })];
  if (done === numbered.length && !steps.every(isDone)) lines.push(say.checks_open);
  if (outside) lines.push(outside === 1 ? say.one_outside : fill(say.many_outside, { n: outside }));
  if (open) lines.push(open === 1 ? say.one_open : fill(say.many_open, { n: open }));
  far.textContent = lines.join(" · ");
  for (const press of units) press.setAttribute("aria-pressed", String(press.dataset.metric === String(isMetric())));
}

/** Say that nothing is kept, and why; what is here can still be taken out. */
let inTrouble = "";
function trouble(problem) {
  const words = !problem ? "" : problem.name === "QuotaExceededError" ? say.full : problem.name === "Absent" ? say.absent : say.refused;
  if (words === inTrouble) return;
  inTrouble = words;
  alarm.replaceChildren(...(words ? [make("p", {}, words), button(say.take_out, () => panel("record", true))] : []));
}

/** An item was put in, here or in another tab. */
function shown(item) {
  // A look at a hold point lets the steps behind it go on.
  if (item.kind === "hold") return showAll();
  steps.find((step) => step.id === item.step)?.show();
  showBar();
}

function showAll() {
  steps.forEach((step) => step.show());
  showBar();
  own.settle?.();
}

async function refresh() {
  await readItems();
  showAll();
  if (document.visibilityState === "visible") await bringBefore();
}

/** One choice for the readings and the forms of the page. */
const setUnits = (metric) => document.dispatchEvent(new CustomEvent("crew-units", { detail: metric }));
document.addEventListener("crew-units", ({ detail }) => {
  remember("crew-units", detail ? "metric" : "us");
  ready().then(showBar);
});

/** @type {OnSite} */
const own = {
  WALK, top, root, about, at, steps, items, make, button, fill, get, keep, asked, isFilled, emptied, nameOf, walkKey, whenWords,
  holdIsOpen, setPlace, placeWords, titleIn, places: loadPlaces, refresh, showAll, room, before, tellBefore,
};

async function loadPlaces() {
  places = await need("places", "crewPlaces").catch(() => places);
  return places;
}

room.addEventListener("keydown", ({ key }) => key === "Escape" && panel(room.dataset.open));

/** Open or shut a panel under the box; `only` opens it and does what its first button does. */
async function panel(name, only = false) {
  const isOpen = room.dataset.open === name && !only;
  room.dataset.open = isOpen ? "" : name;
  for (const press of bar.querySelectorAll("[data-panel]")) press.setAttribute("aria-expanded", String(press.dataset.panel === room.dataset.open));
  if (isOpen) {
    bar.querySelector(`[data-panel=${name}]`).focus();
    return room.replaceChildren();
  }
  try {
    const open = await need("record", "crewRecord");
    await open(own)[name]();
    if (only) room.querySelector("button").click();
  } catch {
    room.replaceChildren(make("p", {}, say.no_script));
  }
}
