
/** `pass`, `outside`, or `unread` for what is no figure. */
function verdictOf(data, value) {
  if (typeof value !== "number") return "unread";
  return heldTo(data, value).some((one) => one.isWithin) ? "pass" : "outside";
}
