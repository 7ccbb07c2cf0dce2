// Going through the screens: by tap at the lower edge, or by the arrow keys. A hold point lets nobody past until it is
// said who looked and when.

window.crewWalk = (own) => {
  if (own.walking) return;
  const { WALK, root, steps, make, button, fill, holdIsOpen } = own;
  copyGuards(root, steps);
  const screens = screensOf(own);
  const html = document.documentElement;
  const far = make("p", { class: "far" });
  const told = make("p", { class: "told", role: "status" });
  const leave = button(say.leave, () => shut(), { class: "leave" });
  const back = button(say.back_one, () => go(-1));
  const next = button(say.next, () => go(1), { class: "go" });
  const bar = make("nav", { class: "walk-bar", "aria-label": say.walk }, make("div", { class: "walk-far" }, far, told, leave), make("div", { class: "walk-by" }, back, next));
  let place = own.walkKey();
  let now = start();
  own.walking = true;
  document.body.append(bar);
  const fits = new ResizeObserver(() => html.style.setProperty("--walk-bar", `${bar.offsetHeight}px`));
  fits.observe(bar);
  own.settle = settle;
  addEventListener("keydown", onKey);
  addEventListener("hashchange", onHash);
  addEventListener("click", onClick);
  document.addEventListener("visibilitychange", stayAwake);
  show();
  stayAwake();

  /** The last screen that may be opened: behind an open hold point there is none. */
  function last() {
    const held = screens.findIndex(({ kind, step }) => kind === "hold" && holdIsOpen(step));
    return held < 0 ? screens.length - 1 : held;
  }

  /** Where the person left, or the step that a link led to, its dangers first; else the step on the screen, or the first
      that is not done. */
  function start() {
    const [left, id] = (remembered() ?? "").split(" ");
    const there = screens.findIndex(({ kind, step }) => (!left || kind === left) && (step?.id ?? "") === id);
    const seen = steps.find(({ box }) => location.hash.split("?")[0] === WALK && box.getBoundingClientRect().top >= 0 && box.getBoundingClientRect().top < innerHeight / 2);
    const begun = steps.some((step) => own.get("tick", step.id)?.done);
    const open = steps.find((step) => !own.get("tick", step.id)?.done);
    const first = there >= 0 ? there : !begun ? 0 : screens.findIndex(({ step }) => step && step === (open ?? seen));
    return Math.min(Math.max(first, 0), last());
  }

  /** Nobody stays behind a hold point that is open again; for another job or space its own walk goes on. */
  function settle() {
    if (place !== own.walkKey()) {
      place = own.walkKey();
      now = start();
    } else if (now > last()) {
      now = last();
    } else {
      return showNext();
    }
    show();
  }

  function remembered() {
    try {
      return sessionStorage.getItem(place);
    } catch {
      return null;
    }
  }

  function mark(path) {
    try {
      if (path) sessionStorage.setItem(WALKING, path);
      else sessionStorage.removeItem(WALKING);
      sessionStorage.setItem(place, `${screens[now].kind} ${screens[now].step?.id ?? ""}`);
    } catch {
      // Then a reload starts where the ticks end.
    }
  }

  function show() {
    const { kind, step, boxes, head } = screens[now];
    for (const one of root.querySelectorAll(".walk-on")) one.classList.remove("walk-on");
    for (const box of boxes) box.classList.add("walk-on");
    if (step && kind !== "end") step.box.closest(".part").classList.add("walk-on");
    html.dataset.walk = kind;
    const number = steps.indexOf(step) + 1;
    const isLast = kind === "end" || kind === "before";
    far.textContent = isLast ? boxes.at(-1).querySelector("h2")?.textContent ?? own.about.title : fill(kind === "danger" ? say.before_step : say.step_of, { n: number, of: steps.length - Number(steps.at(-1)?.id === "acceptance") });
    back.disabled = now === 0;
    told.textContent = "";
    showNext();
    scrollTo(0, 0);
    head.setAttribute("tabindex", "-1");
    head.focus({ preventScroll: true });
    mark(location.pathname);
  }

  function showNext() {
    const { kind, step } = screens[now];
    const stops = kind === "hold" && holdIsOpen(step);
    next.textContent = now === screens.length - 1 ? say.finish : kind === "danger" ? say.have_read : say.next;
    next.setAttribute("aria-disabled", String(stops));
    if (!stops && told.textContent === say.held) told.textContent = "";
  }

  function go(ways) {
    const { kind, step } = screens[now];
    if (ways > 0 && kind === "hold" && holdIsOpen(step)) {
      told.textContent = say.held;
      step.hold.enter();
      step.hold.box.querySelector("[type=submit]").scrollIntoView({ block: "nearest" });
      return;
    }
    if (now + ways < 0) return;
    if (now + ways === screens.length) {
      now = 0;
      return shut(step);
    }
    now += ways;
    show();
  }

  function onKey(event) {
    const ways = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    const types = event.target.closest?.("input:not([type=checkbox]), textarea, select, .slide, dialog");
    // Out of a box first, then out of the walk.
    if (event.key === "Escape") return types ? screens[now].head.focus() : shut();
    if (!ways || types || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    go(ways);
  }

  /** A link to a place of this page leads out of the walk, to that place: what the walk hides, the browser cannot scroll
      to. The browser's way back to the page without a place leads to the step on the screen. */
  function onHash() {
    const [id] = location.hash.slice(1).split("?");
    if (`#${id}` !== WALK) shut(id ? { id, box: document.getElementById(id) ?? root } : undefined);
  }

  /** A link to the place that the address names already changes no address. */
  function onClick(event) {
    if (event.target.closest?.("a[href]")?.href !== location.href) return;
    event.preventDefault();
    onHash();
  }

  /** Back to the full page, at the same step or at another place. */
  function shut(to = screens[now].step) {
    mark("");
    own.walking = false;
    delete html.dataset.walk;
    fits.disconnect();
    bar.remove();
    for (const one of root.querySelectorAll(".message.copied")) one.remove();
    own.settle = null;
    removeEventListener("keydown", onKey);
    removeEventListener("hashchange", onHash);
    removeEventListener("click", onClick);
    document.removeEventListener("visibilitychange", stayAwake);
    own.lock?.release().catch(() => {});
    own.lock = null;
    const { id, box } = to ?? { id: "", box: root };
    if (location.hash.split("?")[0] !== `#${id}`) {
      try {
        history.replaceState(history.state, "", `${location.pathname}${location.search}${id ? `#${id}` : ""}`);
      } catch {
        location.hash = id;
      }
    }
    box.scrollIntoView();
    const head = box.querySelector("h3, h1") ?? box;
    head.setAttribute("tabindex", "-1");
    head.focus({ preventScroll: true });
  }

  /** Keep the screen on, where the browser lets a page; where not, say so. */
  async function stayAwake() {
    if (document.visibilityState !== "visible") return;
    try {
      own.lock = await navigator.wakeLock.request("screen");
      if (!own.walking) own.lock.release();
    } catch {
      told.textContent = say.may_sleep;
    }
  }
};
