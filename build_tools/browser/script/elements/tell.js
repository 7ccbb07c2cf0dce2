/** Put words where they are not yet: a reader that speaks says only what is new. */
function tell(element, words) {
  if (element.textContent !== words) element.textContent = words;
}
