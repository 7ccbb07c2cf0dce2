// In the head of every page: the look for the sun is there before anything is painted.
(root => {
  let look;
  try {
    look = localStorage.getItem("crew-look");
  } catch {
    // Then as the system says.
  }
  root.dataset.look = look || (matchMedia("(prefers-contrast: more)").matches ? "sun" : "plain");
})(document.documentElement);
