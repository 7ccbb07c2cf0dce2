// Figures in the unit that the reader has chosen. What was typed is kept with its unit, so that switching the units to
// and fro, or sending a link to somebody with the other ones, never changes a figure.

const NO_FIGURE = ["choice", "yes-no", "text", "plan", "rows"];

/** What the buttons beside a field add and take away, in the unit of its box: a mark of the tape, or a whole one. */
const STEPS = {
  in: 1 / 16, "in/ft": 1 / 16, m: 0.1, "cu yd": 0.25, gal: 0.25, m3: 0.1, L: 0.5, m2: 0.5, lb: 10, kg: 5, t: 0.1, h: 0.5,
};

let metric = remembered("crew-units") === "metric";

const isFigure = (input) => !NO_FIGURE.includes(input.quantity);
const unitOf = (input) => crew.unit(input.quantity, input.unit, metric);

/** A typed text with the unit that stands in its box, where it brings none and is read with it. */
function withUnit(input, text) {
  const full = united(text, input.quantity, isFigure(input) ? unitOf(input) : "");
  return full === text || crew.read(full, input.quantity, input.unit) === null ? text : full;
}

/** A text with its unit as the box shows it: a figure in feet and inches is shown in metres to who asked for them. */
function inBox(input, text) {
  const unit = unitOf(input);
  const value = isFigure(input) && unit !== input.unit ? crew.read(text, input.quantity, input.unit) : null;
  const isMetric = /\d\s*(mm|cm|m|m2|m3|L|kg|t|C)\s*$/i.test(text);
  if (value === null || isMetric) return withoutUnit(text, unit);
  return withoutUnit(crew.write(value, input.quantity, unit, 0, "nearest"), unit);
}

/** The next mark above or below a value, in the unit of the box, kept between the limits. */
function stepped(input, value, ways) {
  const unit = unitOf(input);
  const size = STEPS[unit] ?? (input.quantity === "slope" ? 0.5 : unit === "mm" && input.unit === "ft-in" ? 10 : 1);
  // A degree of heat starts elsewhere in each unit, so that two points are wanted.
  const zero = crew.read("0", input.quantity, unit);
  const one = crew.read("1", input.quantity, unit);
  const marks = (value - zero) / (one - zero) / size;
  const count = ways > 0 ? Math.floor(marks + 1e-6) + 1 : Math.ceil(marks - 1e-6) - 1;
  const next = zero + count * size * (one - zero);
  const kept = Math.min(input.most ?? Infinity, Math.max(input.least ?? -Infinity, next));
  return crew.write(kept, input.quantity, unit, size, "nearest");
}
