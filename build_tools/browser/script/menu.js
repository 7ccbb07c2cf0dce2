// The menu by keyboard: what folds in it is a label of a box to tick, which takes a tap but no key by itself.
document.addEventListener("keydown", (event) => {
  if (![" ", "Enter"].includes(event.key) || !event.target.matches("label[tabindex]")) return;
  event.preventDefault();
  event.target.click();
});
