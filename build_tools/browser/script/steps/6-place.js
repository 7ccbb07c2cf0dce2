// Which job and space the entries are of: what is chosen on one page holds on all, and what was entered before comes along.

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
  const box = document.activeElement;
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

/** Entries up to a time were left where they were: not moved here, and nowhere else without a word. */
const leftKey = (...place) => ["crew-left", about.procedure, ...place].join(" ");
const isLeft = (item, ...place) => item.at <= (remembered(leftKey(...place)) ?? "");
function leaveThere() {
  for (const key of [leftKey(), leftKey(at.job, at.space)]) remember(key, new Date().toISOString());
  tellBefore();
}

/** What was entered before a job was chosen moves to the job. Somebody is asked where that has entries of its own, be they
    taken back, for those of a job whose space is chosen now, and for what was left where it was before. */
async function bringBefore() {
  const place = { ...at };
  const found = (await entriesBefore()).filter((item) => !isLeft(item, at.job, at.space));
  if (found.length) await loadPlaces();
  if (place.job !== at.job || place.space !== at.space) return;
  const moves = found.filter((item) => !item.job && !isLeft(item));
  if (moves.length && !items.size) {
    await moveItems(moves, at);
    tellMoved(moves);
  } else if (found.length) {
    askBefore(found);
  } else if (before.dataset.asks) {
    tellBefore();
  }
}

/** Say something about entries of before, with what can be done about it; the same again changes nothing. */
function tellBefore(words = "", ...acts) {
  before.replaceChildren(...(words ? [make("p", {}, words), ...acts] : []));
  delete before.dataset.asks;
}

/** That entries were moved, and the way back; what was changed since then stays. */
function tellMoved(list) {
  const moved = list.map((item) => [nameOf({ ...item, job: at.job, space: at.space }), Date.parse(item.at) + 1]);
  const back = button(say.move_back, async () => {
    const same = moved.filter(([name, time]) => Date.parse(items.get(name)?.at) === time).map(([name]) => items.get(name));
    leaveThere();
    await moveItems(same, { job: "", space: "" });
  });
  tellBefore(fill(list.length === 1 ? say.one_moved : say.many_moved, { n: list.length, place: placeWords() }), back);
}

function askBefore(list) {
  const asks = JSON.stringify(list.map((item) => [nameOf(item), item.at]));
  if (before.dataset.asks === asks) return;
  const yes = button(say.move_here, async () => {
    await moveItems(list, at);
    tellBefore();
  });
  const no = button(say.leave_there, leaveThere);
  tellBefore(fill(list.length === 1 ? say.one_before : say.many_before, { n: list.length, place: placeWords() }), yes, no);
  before.dataset.asks = asks;
}
