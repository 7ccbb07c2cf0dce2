// The menu by keyboard: what folds in it is a label of a box to tick, which takes a tap but no key by itself.
document.addEventListener("keydown", (event) => {
  const target = /** @type {HTMLElement} */ (event.target);
  if (![" ", "Enter"].includes(event.key) || !target.matches("label[tabindex]")) return;
  event.preventDefault();
  target.click();
});
