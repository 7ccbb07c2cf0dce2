"""A drawing's numbers onto paper: the scale, the rows of dimension lines, the leaders' texts.

The scale is the largest at which everything stands within a phone's column. The same function lays a drawing out when
the site is built and, compiled, when a figure is changed on the page.
"""

from __future__ import annotations

from typing import Any

from calculators.drawing_hatches import HATCHES
from calculators.drawing_notes import place_column, place_dimensions, place_flags
from calculators.drawing_text import LINE, PAPER, SIZE, Mark, Placed, number, path, round_mark, text_width, written
from calculators.writing import decimal

TALL = 400.0
"""Height that a drawing may take."""
EDGE = 3.0
"""Clear paper around everything."""
BARS = [0.25, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 60.0, 120.0, 240.0, 480.0, 1200.0]
"""Lengths that a scale bar may show, inches."""


def lay_out(sheet: dict[str, Any]) -> dict[str, Any]:
    """The sheet on paper: ``box`` (the viewBox), ``title``, ``alt``, the ``hatches`` it uses, and ``marks`` in order.

    ``scale`` (paper units an inch) and ``origin`` (the inches at the paper's 0, 0) tell where a point went.

    >>> from calculators.drawing import dimension, rectangle, sheet
    >>> laid = lay_out(sheet("Board", "A board.", [rectangle(0.0, 0.0, 96.0, 5.5, "wood", "cut")]))
    >>> laid["marks"][0]["fill"]
    'wood'
    """
    frame = extents(sheet["shapes"])
    wide = frame[2] - frame[0]
    high = (frame[3] - frame[1]) * sheet["stretch"]
    scale = min(PAPER / wide, TALL / high)
    placed = place(sheet, frame, scale)
    for _ in range(24):
        over_wide = placed["right"] - placed["left"] + 2 * EDGE - PAPER
        over_high = placed["bottom"] - placed["top"] - TALL
        if over_wide > 0.001 or over_high > 0.001:
            less = max(over_wide / wide, over_high / high, scale * 0.01)
            scale = max(scale - less, scale * 0.6)
            placed = place(sheet, frame, scale)
    width = max(PAPER, placed["right"] - placed["left"] + 2 * EDGE)
    left = (placed["left"] + placed["right"] - width) / 2
    box = [left, placed["top"] - EDGE, width, placed["bottom"] - placed["top"] + 2 * EDGE]
    return {
        "box": " ".join([number(each) for each in box]),
        "title": sheet["title"],
        "alt": sheet["alt"],
        "hatches": hatches_in(placed["marks"]),
        "marks": placed["marks"],
        "scale": scale,
        "origin": [frame[0], frame[3]],
    }


def hatches_in(marks: list[Mark]) -> list[dict[str, Any]]:
    """The hatches that the marks are filled with."""
    found: list[dict[str, Any]] = []
    for name in HATCHES:
        used = False
        for mark in marks:
            if mark["kind"] != "text" and mark["fill"] == name:
                used = True
        if used:
            hatch = HATCHES[name]
            found.append({"name": name, "width": hatch["width"], "height": hatch["height"], "d": hatch["d"]})
    return found


def extents(shapes: list[dict[str, Any]]) -> list[float]:
    """Least x, least y, most x, most y of all shapes, with some size even where there is none."""
    first = shapes[0]["points"][0]
    frame = [first[0], first[1], first[0], first[1]]
    for shape in shapes:
        reach: float = shape["radius"] if shape["kind"] == "circle" else 0.0
        points: list[list[float]] = shape["points"]
        for point in points:
            frame[0] = min(frame[0], point[0] - reach)
            frame[1] = min(frame[1], point[1] - reach)
            frame[2] = max(frame[2], point[0] + reach)
            frame[3] = max(frame[3], point[1] + reach)
    if frame[2] - frame[0] < 0.001:
        frame[2] = frame[0] + 0.001
    if frame[3] - frame[1] < 0.001:
        frame[3] = frame[1] + 0.001
    return frame


def place(sheet: dict[str, Any], frame: list[float], scale: float) -> Placed:
    """Everything at that scale, texts over all lines; the outline's upper left corner is the paper's 0, 0."""
    up = scale * sheet["stretch"]
    wide = (frame[2] - frame[0]) * scale
    high = (frame[3] - frame[1]) * up
    placed: Placed = {"marks": [], "left": -2.0, "top": -2.0, "right": wide + 2, "bottom": high + 2}
    dimensions: list[dict[str, Any]] = []
    leaders: list[dict[str, Any]] = []
    labels: list[dict[str, Any]] = []
    for shape in sheet["shapes"]:
        corners: list[list[float]] = shape["points"]
        points = [[(point[0] - frame[0]) * scale, (frame[3] - point[1]) * up] for point in corners]
        kind = shape["kind"]
        if kind == "dimension":
            dimensions.append({"points": points, "text": shape["text"], "side": shape["side"]})
        elif kind == "leader" or kind == "label":
            text = {"x": points[0][0], "y": points[0][1], "text": shape["text"], "side": shape["side"]}
            if kind == "leader" or not label_fits(labels, text, shape["room"] * scale, wide, high):
                leaders.append(text)
            else:
                labels.append(text)
        else:
            draw(placed["marks"], shape, points, scale)
    for side in ["above", "below", "left", "right"]:
        place_dimensions(placed, [each for each in dimensions if each["side"] == side], side, wide, high)
    for side in ["above", "below"]:
        place_flags(placed, [each for each in leaders if each["side"] == side], side, wide)
    for side in ["left", "right"]:
        place_column(placed, [each for each in leaders if each["side"] == side], side)
    place_scale(placed, scale, sheet["stretch"])
    for text in labels:
        placed["marks"].append(written(text["x"], text["y"] + SIZE * 0.35, text["text"], "middle", False))
    lines = [mark for mark in placed["marks"] if mark["kind"] != "text"]
    lines.extend([mark for mark in placed["marks"] if mark["kind"] == "text"])
    placed["marks"] = lines
    return placed


def label_fits(labels: list[dict[str, Any]], text: dict[str, Any], room: float, wide: float, high: float) -> bool:
    """Whether a text has its room, stands within the outline and meets no other label.

    >>> label_fits([], {"x": 50.0, "y": 10.0, "text": "panel"}, 0.0, 100.0, 20.0)
    True
    >>> label_fits([], {"x": 50.0, "y": 10.0, "text": "panel"}, 20.0, 100.0, 20.0)
    False
    """
    long = text_width(text["text"])
    if 0 < room < long:
        return False
    if text["x"] - long / 2 < -2 or text["x"] + long / 2 > wide + 2 or text["y"] < 0 or text["y"] > high:
        return False
    free = True
    for other in labels:
        beside = abs(other["x"] - text["x"]) > (text_width(other["text"]) + long) / 2 + 3
        if not beside and abs(other["y"] - text["y"]) < LINE:
            free = False
    return free


def draw(marks: list[Mark], shape: dict[str, Any], points: list[list[float]], scale: float) -> None:
    """A line, an outline or a circle."""
    kind = shape["kind"]
    if kind == "area":
        marks.append(path(points, True, shape["style"], shape["fill"]))
    elif kind == "circle":
        marks.append(round_mark(points[0][0], points[0][1], shape["radius"] * scale, shape["style"], shape["fill"]))
    elif kind == "break":
        marks.append(path(zigzag(points[0], points[1]), False, shape["style"], "none"))
    else:
        marks.append(path(points, False, shape["style"], "none"))


def zigzag(start: list[float], end: list[float]) -> list[list[float]]:
    """A line with a zigzag in its middle, 12 long and 10 wide."""
    x = end[0] - start[0]
    y = end[1] - start[1]
    long = max(abs(x) + abs(y), 0.001)
    along = [x / long, y / long]
    middle = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2]
    points = [start]
    for turn in [[-6.0, 0.0], [-2.0, 5.0], [2.0, -5.0], [6.0, 0.0]]:
        points.append(
            [middle[0] + along[0] * turn[0] - along[1] * turn[1], middle[1] + along[1] * turn[0] + along[0] * turn[1]]
        )
    points.append(end)
    return points


def place_scale(placed: Placed, scale: float, stretch: float) -> None:
    """A bar of a round length under the drawing, and a word where heights are drawn larger."""
    length = BARS[0]
    for each in BARS:
        if each * scale <= 90:
            length = each
    y = placed["bottom"] + 14
    long = length * scale
    text = decimal(length, 2) + " in"
    if length >= 12:
        text = decimal(length / 12, 2) + " ft"
    if stretch != 1:
        text = text + " across; heights drawn " + decimal(stretch, 1) + " times larger"
    placed["marks"].append(path([[0.0, y], [long, y], [long, y - 4], [0.0, y - 4]], True, "bar", "none"))
    placed["marks"].append(path([[0.0, y], [long / 2, y], [long / 2, y - 4], [0.0, y - 4]], True, "bar", "solid"))
    placed["marks"].append(written(long + 5, y, text, "start", False))
    placed["right"] = max(placed["right"], long + 5 + text_width(text))
    placed["bottom"] = y + 4
