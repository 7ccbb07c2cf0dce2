// In the sun: black on white with strong rules, whatever the system's colours are, at one tap. The head of the page has
// set the look already, before anything was painted (head.js).

const root = document.documentElement;
const sun = document.querySelector(".sun-switch");

function look(name) {
  root.dataset.look = name;
  sun.setAttribute("aria-pressed", String(name === "sun"));
  for (const meta of document.querySelectorAll("meta[name=theme-color]")) {
    meta.dataset.plain ??= meta.content;
    meta.content = name === "sun" ? "#ffffff" : meta.dataset.plain;
  }
}

sun.addEventListener("click", () => {
  look(root.dataset.look === "sun" ? "plain" : "sun");
  try {
    localStorage.setItem("crew-look", root.dataset.look ?? "plain");
  } catch {
    sun.title = sun.dataset.forgotten;
    sun.setAttribute("aria-label", sun.dataset.forgotten);
  }
});

// It was changed on another page, which is open beside this one or was left a moment ago.
addEventListener("storage", ({ key, newValue }) => key === "crew-look" && look(newValue || "plain"));
addEventListener("pageshow", ({ persisted }) => {
  try {
    if (persisted) look(localStorage.getItem("crew-look") || "plain");
  } catch {
    // Then it stays as it is.
  }
});
look(root.dataset.look);
