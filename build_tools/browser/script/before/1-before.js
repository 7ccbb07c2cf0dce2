// What was entered before a job, or a space of it, was chosen: it moves there, or somebody is asked.

const say = {WORDS};

/** Entries up to a time were left where they were: not moved here, and nowhere else without a word. */
const leftKey = ({ about }, ...place) => ["crew-left", about.procedure, ...place].join(" ");
const isLeft = (/** @type {OnSite} */ own, /** @type {Item} */ item, ...place) => item.at <= (remembered(leftKey(own, ...place)) ?? "");
function leaveThere(/** @type {OnSite} */ own) {
  const { job, space } = own.at;
  for (const key of [leftKey(own), leftKey(own, job, space)]) remember(key, new Date().toISOString());
  own.tellBefore();
}

/** What was found for a place, if that is still the one: what was entered before a job was chosen moves to it. Somebody is asked where that has entries of its own, be they
    taken back, for those of a job whose space is chosen now, and for what was left where it was before. */
window.crewBefore = async (own, place, all) => {
  const { at, items, before } = own;
  await own.places();
  if (place.job !== at.job || place.space !== at.space) return;
  const found = all.filter((item) => !isLeft(own, item, at.job, at.space));
  const moves = found.filter((item) => !item.job && !isLeft(own, item));
  if (moves.length && !items.size) {
    await moveItems(own, moves, at);
    tellMoved(own, moves);
  } else if (found.length) {
    askBefore(own, found);
  } else if (before.dataset.asks) {
    own.tellBefore();
  }
};

/** Move entries to another place, where a later one stays. Each counts as a thousandth of a second later, so that it can be
    moved back. */
function moveItems(/** @type {OnSite} */ { keep, emptied }, /** @type {Item[]} */ list, { job, space }) {
  const soon = (item) => new Date(Date.parse(item.at) + 1).toISOString();
  return keep(list.flatMap((item) => [{ ...item, job, space, at: soon(item) }, { ...emptied(item), at: soon(item) }]));
}

/** That entries were moved, and the way back; what was changed since then stays. */
function tellMoved(/** @type {OnSite} */ own, list) {
  const { at, items, nameOf } = own;
  const moved = list.map((item) => [nameOf({ ...item, job: at.job, space: at.space }), Date.parse(item.at) + 1]);
  const back = button(say.move_back, async () => {
    const same = moved.filter(([name, time]) => Date.parse(items.get(name)?.at ?? "") === time).map(([name]) => items.get(name));
    leaveThere(own);
    await moveItems(own, same, { job: "", space: "" });
  });
  own.tellBefore(fill(list.length === 1 ? say.one_moved : say.many_moved, { n: list.length, place: own.placeWords() }), back);
}

/** Ask about them; the same again changes nothing. */
function askBefore(/** @type {OnSite} */ own, list) {
  const asks = JSON.stringify(list.map((item) => [own.nameOf(item), item.at]));
  if (own.before.dataset.asks === asks) return;
  const yes = button(say.move_here, async () => {
    await moveItems(own, list, own.at);
    own.tellBefore();
  });
  const no = button(say.leave_there, () => leaveThere(own));
  own.tellBefore(fill(list.length === 1 ? say.one_before : say.many_before, { n: list.length, place: own.placeWords() }), yes, no);
  own.before.dataset.asks = asks;
}
