
/** A typed text with the unit that stands in its box, where it brings none. */
function united(text, quantity, unit) {
  if (!unit || unit === "1:n" || quantity === "count" || !isBare(text)) return text;
  return `${text.trim()} ${unit === "ft-in" ? "in" : unit}`;
}
