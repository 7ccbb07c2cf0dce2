// Begin: which place this is, what was kept of it, and whether somebody is walking.

const isWalk = () => location.hash.split("?")[0] === WALK;
const WALKING = "crew-walking";

function walkingAt() {
  try {
    return sessionStorage.getItem(WALKING) === location.pathname;
  } catch {
    return false;
  }
}

async function walk() {
  try {
    (await need("walk", "crewWalk"))(own);
  } catch {
    alarm.append(make("p", {}, say.no_script));
  }
}

async function begin() {
  const given = new URLSearchParams(location.search);
  let held = {};
  try {
    held = JSON.parse(remembered("crew-place") ?? "{}") ?? {};
  } catch {
    // Somebody else wrote it: then no job.
  }
  const from = given.has("job") ? { job: given.get("job"), space: given.get("space") ?? "" } : held;
  Object.assign(at, { job: String(from.job ?? ""), space: String(from.space ?? ""), who: remembered("crew-who") ?? "" });
  if (given.has("job")) remember("crew-place", JSON.stringify({ job: at.job, space: at.space }));
  steps.forEach(buildStep);
  root.querySelector("#steps").after(bar);
  root.classList.add("takes");
  showAll();
  if (at.job) loadPlaces().then(showBar);
  if (isMetric()) ready();
  await refresh();
  if (isWalk() || walkingAt()) walk();
}

addEventListener("hashchange", () => isWalk() && walk());
root.addEventListener("click", (event) => {
  // A second tap on the way to the walk changes no address.
  if (event.target.closest(`a[href="${WALK}"]`) && isWalk()) walk();
});
begin();
