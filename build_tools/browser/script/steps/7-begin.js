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

/** Whether somebody came by a link. A page that the browser loads again, by itself too, stays with what was chosen since. */
const isVisit = () => !document.wasDiscarded && !["reload", "back_forward"].includes(/** @type {PerformanceNavigationTiming} */ (performance.getEntriesByType("navigation")[0])?.type);

async function begin() {
  const given = new URLSearchParams(location.search);
  Object.assign(at, placeHeld());
  if (given.has("job")) {
    if (isVisit() || remembered("crew-place") === null) {
      Object.assign(at, { job: given.get("job"), space: given.get("space") ?? "" });
      remember("crew-place", JSON.stringify({ job: at.job, space: at.space }));
    }
    addressPlace();
  }
  steps.forEach(buildStep);
  root.querySelector("#steps").after(bar);
  root.classList.add("takes");
  showAll();
  if (at.job) loadPlaces().then(showBar);
  if (isMetric()) ready();
  await refresh();
  if (isWalk() || resumes()) walk();
}

/** Where somebody is in the walk: another one for each job and space. */
function walkKey() {
  return ["crew-walk", location.pathname, at.job, at.space].join(" ");
}

/** A walk goes on after a reload. A link to a step leads to that step instead, and a walk from there begins with it. */
function resumes() {
  const [id] = location.hash.slice(1).split("?");
  if (!id || !isVisit()) return walkingAt();
  try {
    if (walkingAt()) sessionStorage.removeItem(WALKING);
    if (steps.some((step) => step.id === id)) sessionStorage.setItem(walkKey(), ` ${id}`);
  } catch {
    // Then nothing was left here either.
  }
  return false;
}

addEventListener("hashchange", () => isWalk() && walk());
root.addEventListener("click", (event) => {
  // A second tap on the way to the walk changes no address.
  if (event.target.closest(`a[href="${WALK}"]`) && isWalk()) walk();
});
begin();
