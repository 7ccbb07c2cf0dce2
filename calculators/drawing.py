"""Shapes of a drawing to scale, as plain dicts of numbers in inches.

x goes to the right and y goes UP, in inches of the thing itself; a plan, a section and an elevation all draw so.
Texts are no part of the scale: the layout (``calculators.drawing_layout``) finds the largest scale at which everything
fits a phone, puts dimension lines outside the outline in rows, and leaders' texts beside it, so that none overlap.
A drawing function says WHAT is dimensioned and on which side, never where the text stands.

Fills are materials and styles are weights of line, never colours: a drawing must read in black and white.
Give texts of figures by ``calculators.writing`` (``inches``, ``feet_inches``). The ``alt`` says in words, with the
figures, what the drawing shows.

A drawing function ``NAME_drawing(values, answer)`` gets the inputs and the answer in inside units, keeps to the plain
subset (positional arguments only) and is named in the calculator's ``drawing=``. This is a whole one::

    def shelf_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
        wide = values["width"]
        deep = values["depth"]
        shapes = [
            rectangle(0.0, 0.0, wide, 0.75, "wood", "cut"),
            rectangle(0.0, -deep, wide, deep - 1.0, "none", "hidden"),
            dimension(0.0, 0.0, wide, 0.0, feet_inches(wide), "below"),
            leader(wide / 2, 0.375, "shelf, 3/4 in", "right"),
        ]
        return sheet("Shelf", f"A shelf {feet_inches(wide)} wide and 3/4 in thick.", shapes)

>>> dimension(0.0, 0.0, 12.0, 0.0, "12 in", "below")["text"]
'12 in'
"""

from __future__ import annotations

from math import ceil, cos, pi, sin
from typing import Any

from calculators.declaration import Sheet

Shape = dict[str, Any]
Points = list[list[float]]

FILLS = [
    "none",
    "paper",
    "wood",
    "concrete",
    "gravel",
    "earth",
    "wax",
    "china",
    "steel",
    "plastic",
    "tile",
    "water",
    "air",
]
"""Materials. ``none`` shows what lies behind, ``paper`` hides it."""

STYLES = ["cut", "outline", "fine", "hidden", "centre", "limit", "nothing"]
"""Lines: ``cut`` (heavy: what the section cuts), ``outline``, ``fine``, ``hidden`` (dashed), ``centre`` (chain),
``limit`` (heavy dashes: what the code or the standard asks for), ``nothing`` (a fill without an edge)."""

SIDES = ["above", "below", "left", "right"]
"""Where a dimension line or a leader's text goes."""


def line(x1: float, y1: float, x2: float, y2: float, style: str = "outline") -> Shape:
    """A straight line.

    >>> line(0.0, 0.0, 12.0, 0.0, "hidden")["points"]
    [[0.0, 0.0], [12.0, 0.0]]
    """
    return {"kind": "line", "points": [[x1, y1], [x2, y2]], "style": style}


def polyline(points: Points, style: str = "outline") -> Shape:
    """A line through the points, open at its ends."""
    return {"kind": "line", "points": points, "style": style}


def break_line(x1: float, y1: float, x2: float, y2: float) -> Shape:
    """A line with a zigzag in the middle: what is drawn goes on beyond it."""
    return {"kind": "break", "points": [[x1, y1], [x2, y2]], "style": "fine"}


def polygon(points: Points, fill: str = "none", style: str = "outline") -> Shape:
    """A closed outline with a fill."""
    return {"kind": "area", "points": points, "fill": fill, "style": style}


def rectangle(x: float, y: float, width: float, height: float, fill: str = "none", style: str = "outline") -> Shape:
    """A rectangle by its lower left corner.

    >>> rectangle(1.0, 2.0, 10.0, 4.0)["points"]
    [[1.0, 2.0], [11.0, 2.0], [11.0, 6.0], [1.0, 6.0]]
    """
    return polygon([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], fill, style)


def circle(x: float, y: float, radius: float, fill: str = "none", style: str = "outline") -> Shape:
    """A circle by its centre."""
    return {"kind": "circle", "points": [[x, y]], "radius": radius, "fill": fill, "style": style}


def arc_points(x: float, y: float, across: float, up: float, start: float, end: float) -> Points:
    """Points on an arc of an ellipse, to join into a line or an outline.

    ``across`` and ``up`` are the half axes in inches. ``start`` and ``end`` are degrees, counterclockwise from the
    right; an end below the start goes clockwise. A point stands at least every 7-1/2 degrees.

    >>> [[abs(x), y] for x, y in arc_points(0.0, 0.0, 2.0, 1.0, 0.0, 90.0)][-1]
    [0.00, 1.0]
    """
    parts = max(1, ceil(abs(end - start) / 7.5))
    points = []
    for i in range(parts + 1):
        turn = (start + (end - start) * i / parts) * pi / 180
        points.append([x + across * cos(turn), y + up * sin(turn)])
    return points


def arc(x: float, y: float, radius: float, start: float, end: float, style: str = "outline") -> Shape:
    """An arc of a circle from ``start`` to ``end`` degrees, counterclockwise from the right."""
    return polyline(arc_points(x, y, radius, radius, start, end), style)


def label(x: float, y: float, text: str, room: float = 0.0, side: str = "right") -> Shape:
    """A text centred on the point, inside the drawing.

    ``room`` is the width in inches that it may take there; 0 is no limit. Where it would be wider, would reach over the
    outline or would meet an earlier label, it becomes a leader's text on that ``side``.
    """
    return {"kind": "label", "points": [[x, y]], "text": text, "room": room, "side": side}


def leader(x: float, y: float, text: str, side: str = "right") -> Shape:
    """A text beside the drawing with a line that points at (x, y). Long texts are broken into lines."""
    return {"kind": "leader", "points": [[x, y]], "text": text, "side": side}


def dimension(x1: float, y1: float, x2: float, y2: float, text: str, side: str) -> Shape:
    """A dimension between two points, with extension lines from them and ticks at its ends.

    ``above`` and ``below`` measure across, ``left`` and ``right`` measure up, whatever the points' other coordinate.
    Rows are found by the layout: give the short ones first, and the overall one last.
    """
    return {"kind": "dimension", "points": [[x1, y1], [x2, y2]], "text": text, "side": side}


def enlarged(shapes: list[Shape], x: float, y: float, times: float) -> list[Shape]:
    """The shapes so many times larger about 0, 0, and then moved to (x, y): a detail beside what it belongs to.

    Say on the sheet how many times larger it is drawn.

    >>> enlarged([circle(1.0, 2.0, 0.5)], 10.0, 0.0, 3.0)[0]["points"]
    [[13.0, 6.0]]
    """
    found = []
    for shape in shapes:
        copy = {**shape}
        copy["points"] = [[x + point[0] * times, y + point[1] * times] for point in shape["points"]]
        if shape["kind"] == "circle":
            copy["radius"] = shape["radius"] * times
        if shape["kind"] == "label":
            copy["room"] = shape["room"] * times
        found.append(copy)
    return found


def sheet(title: str, alt: str, shapes: list[Shape], stretch: float = 1.0) -> Sheet:
    """A whole drawing. ``alt`` says the same in words with its figures.

    ``stretch`` draws heights so many times larger than widths, and says so on the drawing (a drain's fall would be too
    small to see); the shapes' own numbers stay true. Later shapes are drawn over earlier ones, texts over all.
    """
    return {"title": title, "alt": alt, "shapes": shapes, "stretch": stretch}
