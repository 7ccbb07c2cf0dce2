// A drawing as SVG text: what calculators/drawing_layout.py laid out, written as build_tools/pages/drawings.py writes it.
const TONES = ["paper", "air", "plastic", "steel", "solid"], drawings = {};
let drawn = 0;

function safe(text) {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
}

function element(tag, attributes, inner) {
  const given = Object.entries(attributes).filter(([, value]) => value !== "");
  const start = `<${tag}${given.map(([name, value]) => ` ${name}="${safe(String(value))}"`).join("")}`;
  return inner === undefined ? `${start}/>` : `${start}>${inner}</${tag}>`;
}

function drawMark(mark, key) {
  const { kind, x, y, anchor, turn, cx, cy, r, d, fill } = mark;
  if (kind === "text") return element("text", { x, y, "text-anchor": anchor, transform: turn }, safe(mark.text));
  const isTone = TONES.includes(fill);
  const given = {
    class: `on-${mark.look}${isTone ? ` in-${fill}` : ""}`,
    fill: isTone ? "" : fill === "none" ? fill : `url(#${key}-${fill})`
  };
  return kind === "circle" ? element(kind, { cx, cy, r, ...given }) : element("path", { d, ...given });
}

function pattern({ name, width, height, d }, key) {
  const paper = element("path", { d: `M0 0H${width}V${height}H0Z`, class: "in-paper" });
  const given = { width, height, id: `${key}-${name}`, patternUnits: "userSpaceOnUse" };
  return element("pattern", given, paper + element("path", { d, class: "hatch" }));
}

// The drawing as numbers, or null where there is none.
crew.drawing = (name, values, answer) => {
  try {
    drawings[name] ??= crew.calculators[name].draws?.();
    return drawings[name](crew.complete(name, values), answer);
  } catch {
    return null;
  }
};

// The drawing; `key` begins every id in it, and without one it gets its own.
crew.draw = (sheet, key = `drawn-${(drawn += 1)}`) => {
  const { box, hatches, marks, title, alt } = drawing_layout$lay_out(sheet), [, , width, height] = box.split(" ");
  const inner = [
    element("defs", {}, hatches.map((hatch) => pattern(hatch, key)).join("")),
    element("title", { id: `${key}-title` }, safe(title)),
    element("desc", { id: `${key}-alt` }, safe(alt)),
    ...marks.map((mark) => drawMark(mark, key))
  ];
  return element("svg", {
    xmlns: "http://www.w3.org/2000/svg", viewBox: box, width, height, role: "img",
    "aria-labelledby": `${key}-title ${key}-alt`, class: "drawing"
  }, inner.join(""));
};
