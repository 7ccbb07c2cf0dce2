
/** The unit as it stands in the box. */
const unitWords = (unit) => ({ "ft-in": "ft in", "1:n": "" })[unit] ?? unit;

/** A text without the unit that stands in its box. */
function withoutUnit(text, unit) {
  const rest = text.slice(0, -1 - unit.length);
  return unit && text.endsWith(` ${unit}`) && isBare(rest) ? rest : text;
}
