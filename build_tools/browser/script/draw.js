// A drawing as SVG text: what calculators/drawing_layout.py laid out, written as build_tools/pages/drawings.py writes it.
(function () {
  "use strict";
  var TONES = ["paper", "air", "plastic", "steel", "solid"], drawn = 0, drawings = {};
  Object.assign(crew.given, {GIVEN});

  function safe(text) {
    return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
  }

  function element(tag, attributes, inner) {
    var names = Object.keys(attributes).filter(function (name) { return attributes[name] !== ""; });
    var start = "<" + tag + names.map(function (name) { return " " + name + '="' + safe(String(attributes[name])) + '"'; }).join("");
    return inner === undefined ? start + "/>" : start + ">" + inner + "</" + tag + ">";
  }

  function look(mark, key) {
    var tone = TONES.indexOf(mark.fill) >= 0;
    return {
      "class": "on-" + mark.look + (tone ? " in-" + mark.fill : ""),
      fill: tone ? "" : mark.fill === "none" ? "none" : "url(#" + key + "-" + mark.fill + ")"
    };
  }

  function drawMark(mark, key) {
    if (mark.kind === "text") {
      return element("text", { x: mark.x, y: mark.y, "text-anchor": mark.anchor, transform: mark.turn }, safe(mark.text));
    }
    var given = look(mark, key);
    if (mark.kind === "circle") {
      return element("circle", { cx: mark.cx, cy: mark.cy, r: mark.r, "class": given["class"], fill: given.fill });
    }
    return element("path", { d: mark.d, "class": given["class"], fill: given.fill });
  }

  function pattern(hatch, key) {
    var paper = element("path", { d: "M0 0H" + hatch.width + "V" + hatch.height + "H0Z", "class": "in-paper" });
    var attributes = { width: hatch.width, height: hatch.height, id: key + "-" + hatch.name, patternUnits: "userSpaceOnUse" };
    return element("pattern", attributes, paper + element("path", { d: hatch.d, "class": "hatch" }));
  }

  // Called by the script of a calculator's drawing.
  crew.addDrawing = function (name, drawing) {
    drawings[name] = drawing;
  };

  // The drawing as numbers, or null where there is none.
  crew.drawing = function (name, values, answer) {
    if (!drawings[name]) return null;
    try {
      return drawings[name](crew.complete(name, values), answer);
    } catch (stopped) {
      return null;
    }
  };

  // The drawing; `key` begins every id in it, and without one it gets its own.
  crew.draw = function (sheet, key) {
    if (!key) key = "drawn-" + (drawn += 1);
    var laid = modules.drawing_layout.lay_out(sheet), box = laid.box.split(" ");
    var inner = element("defs", {}, laid.hatches.map(function (hatch) { return pattern(hatch, key); }).join(""));
    inner += element("title", { id: key + "-title" }, safe(laid.title));
    inner += element("desc", { id: key + "-alt" }, safe(laid.alt));
    inner += laid.marks.map(function (mark) { return drawMark(mark, key); }).join("");
    return element("svg", {
      xmlns: "http://www.w3.org/2000/svg", viewBox: laid.box, width: box[2], height: box[3], role: "img",
      "aria-labelledby": key + "-title " + key + "-alt", "class": "drawing"
    }, inner);
  };
})();
