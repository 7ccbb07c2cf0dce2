// Which job and space the entries are of: what is chosen on one page holds on all. What was entered before comes along, by a
// script of its own.

/** The place and the name that were chosen last on this device, on whichever page. */
function placeHeld() {
  const who = remembered("crew-who") ?? "";
  try {
    const { job = "", space = "" } = JSON.parse(remembered("crew-place")) ?? {};
    return { job: String(job), space: String(space), who };
  } catch {
    return { job: "", space: "", who }; // Somebody else wrote it: then no job.
  }
}

/** What was chosen on another page holds here too: no entry goes to the place that was left. */
async function followPlace() {
  const held = placeHeld();
  if (["job", "space", "who"].some((name) => held[name] !== at[name])) await moveTo(held);
}

/** Choose a job, a space of it and who does the work, for every open page of the book. */
async function setPlace(job, space, who) {
  remember("crew-who", who);
  remember("crew-place", JSON.stringify({ job, space: job ? space : "" }));
  await followPlace();
}

/** Show another place. What is being typed belongs to the one before; a look, a note or a panel that is open ends. */
async function moveTo(place) {
  const box = /** @type {HTMLElement} */ (document.activeElement);
  if (steps.some((step) => step.box.contains(box))) box.blur();
  if (box.matches(".reading input")) await ready();
  if (room.dataset.open) panel(room.dataset.open);
  Object.assign(at, place);
  addressPlace();
  items.clear();
  tellBefore();
  steps.forEach((step) => step.leave());
  if (at.job) loadPlaces().then(showBar);
  await refresh();
}

/** The address names the place, so that a link leads here. */
function addressPlace() {
  const address = new URL(location.href);
  address.searchParams.delete("job");
  address.searchParams.delete("space");
  if (at.job) address.searchParams.set("job", at.job);
  if (at.space) address.searchParams.set("space", at.space);
  try {
    history.replaceState(history.state, "", address);
  } catch {
    // A browser may refuse it to a page opened from a file.
  }
}

/** Say something about entries of before, with what can be done about it. */
function tellBefore(words = "", ...acts) {
  before.replaceChildren(...(words ? [make("p", {}, words), ...acts] : []));
  delete before.dataset.asks;
}

/** What was entered before a job was chosen is looked at where there is any; without the script for it, it stays. */
async function bringBefore() {
  const place = { ...at };
  const found = await entriesBefore();
  if (!found.length && !before.dataset.asks) return;
  try {
    await (await need("before", "crewBefore"))(own, place, found);
  } catch {
    // It is asked about again at the next visit.
  }
}
