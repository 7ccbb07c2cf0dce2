// Opens the search. What it needs is large, so it comes when somebody first asks for it.
(() => {
  "use strict";
  const own = document.currentScript;
  let asked = false;
  const load = (name, then) => {
    const script = document.createElement("script");
    script.src = new URL(name, own.src).href;
    script.onload = then;
    document.head.append(script);
  };
  const open = (event) => {
    event.preventDefault();
    if (window.crewFind) return window.crewFind();
    if (!asked) load("found.js", () => load("search.js", () => window.crewFind()));
    asked = true;
  };
  document.querySelectorAll("[data-find]").forEach((button) => button.addEventListener("click", open));
  document.addEventListener("keydown", (event) => {
    const typing = event.target.closest("input, textarea, select, [contenteditable]");
    if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) open(event);
  });
})();
