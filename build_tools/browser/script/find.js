// Opens the search. What it needs is large, so it comes when somebody first asks for it; what did not come is asked for again.
(() => {
  "use strict";
  const own = /** @type {HTMLScriptElement} */ (document.currentScript);
  /** @type {Promise<void> | null} */
  let coming = null;
  const load = (name) => new Promise((done, failed) => {
    const script = document.createElement("script");
    script.src = new URL(name, own.src).href;
    script.onload = done;
    script.onerror = () => {
      script.remove();
      failed(new Error(name));
    };
    document.head.append(script);
  });
  const find = async () => {
    if (!window.crewSearch) await load("found.js");
    if (!window.crewFind) await load("search.js");
    window.crewFind?.();
  };
  const open = (event) => {
    event.preventDefault();
    coming ??= find().catch(() => {}).finally(() => (coming = null));
  };
  document.querySelectorAll("[data-find]").forEach((button) => button.addEventListener("click", open));
  document.addEventListener("keydown", (event) => {
    const typing = /** @type {HTMLElement} */ (event.target).closest("input, textarea, select, [contenteditable]");
    if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) open(event);
  });
})();
