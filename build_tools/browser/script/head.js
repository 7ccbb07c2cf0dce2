// The one script that stands in a page, in the head: what has to be there before anything is painted.
(root => {
  // The two fonts that every page begins with, asked for before the style sheet names them; not from a folder, where a
  // browser refuses it.
  const { fonts } = /** @type {HTMLScriptElement} */ (document.currentScript).dataset;
  if (fonts && location.protocol !== "file:") {
    for (const name of ["regular", "bold"]) {
      const link = document.createElement("link");
      document.head.append(Object.assign(link, { rel: "preload", as: "font", type: "font/woff2", crossOrigin: "", href: `${fonts}/crew-${name}.woff2` }));
    }
  }
  root.classList.replace("no-js", "js");
  let look;
  try {
    look = localStorage.getItem("crew-look");
  } catch {
    // Then as the system says.
  }
  root.dataset.look = look || (matchMedia("(prefers-contrast: more)").matches ? "sun" : "plain");
})(document.documentElement);
