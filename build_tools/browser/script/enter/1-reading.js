// What somebody enters at a step is read and judged by this script, which comes with the first tap into a reading or a
// hold point: how far it is, in words, and what is still missing.

const say = {WORDS};

/** The value of a typed text, a bare figure in that unit; or why it is none. */
function readText(data, text, unit) {
  const { size, way } = parted(waysOf(data), text);
  const value = crew.read(size, data.quantity, unit);
  if (value === null) return { why: crew.why(size, data.quantity, unit) };
  if (data.ways && value !== 0 && (!way || value < 0)) return { why: fill(say.which_way, { ways: waysOf(data).join(" / ") }) };
  if (value < 0 && data.low === undefined && !data.ways && data.quantity !== "temperature") return { why: say.no_minus };
  return { value: way && way === waysOf(data)[1] ? -value : value };
}

/** That a reading is outside, by how much in its unit, and to which side. */
function outsideWords(data, value, unit) {
  const limits = heldTo(data, value);
  const { less, more } = limits.find(({ never }) => !never) ?? {};
  if (less === undefined) return fill(say.never, limits[0]);
  const words = less > NOISE ? say.too_little : isEven(data) ? say.outside_by : say.too_much;
  return fill(words, { by: difference(data, Math.max(less, more), unit) });
}

/** A difference in the unit of a reading, to the tape's mark; a smaller one in figures. */
function difference({ quantity }, size, unit) {
  if (quantity === "temperature") return crew.write(unit === "C" ? (size * 5) / 9 : size, "number", unit);
  if (unit === "1:n") return crew.write(size, quantity, "%");
  const written = crew.write(size, quantity, unit);
  if (quantity !== "length" || crew.read(written, quantity, unit) > 0) return written;
  const plain = unit === "ft-in" ? "in" : unit;
  return crew.write(size / crew.read("1", quantity, plain), "number", plain);
}

/** A reading as it is kept: a figure without a unit, or a way, gets the one that stands in its box. */
function taken(data, text, way, unit) {
  const full = whole(text, way);
  const { value = null, why } = readText(data, full, unit);
  return { text: value === null ? full : whole(united(text, data.quantity, unit), way), value, why };
}
