/** A figure that goes two ways is a plain size and the words of its way: a text in these two parts, and whole again. */
function parted(ways, text) {
  const way = ways.find((one) => text.toLowerCase().endsWith(one.toLowerCase())) ?? "";
  return { size: text.slice(0, text.length - way.length).trimEnd(), way };
}
const whole = (size, way) => (way && size.trim() ? `${size.trim()} ${way}` : size);
