
/** A button that does something. */
function button(words, does, given = {}) {
  const made = make("button", { type: "button", ...given }, words);
  made.addEventListener("click", does);
  return made;
}
