"""A closet from the front: rods, shelf, cleats, brackets and their heights."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, leader, line, polyline, rectangle, sheet
from calculators.writing import feet_inches, inches

CLEAT = 3.5
MOST_MARKS = 8
"""Brackets past this many are told in the table alone."""


def rod_and_brackets(shapes: list[Shape], width: float, height: float, thick: float, places: list[Any]) -> None:
    """A rod at that height between its side walls, with a bracket under each place."""
    shapes.append(rectangle(0.0, height - thick / 2, width, thick, "wood", "outline"))
    for mark in places:
        at = mark["place"]
        shapes.append(rectangle(at - 0.5, height - thick / 2 - 2.0, 1.0, 2.0, "steel", "outline"))


def closet_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the floor at the left wall; the front is open, the back cleats are seen under the shelf."""
    width = values["width"]
    high = values["height"]
    thick = values["rod_diameter"]
    rod = answer["top_rod"]
    low = answer["second_rod"]
    bottom = answer["shelf_bottom"]
    top = answer["shelf_top"]
    places = answer["bracket_places"]
    shapes: list[Shape] = [
        rectangle(0.0, 0.0, width, high, "paper", "nothing"),
        rectangle(0.0, bottom - CLEAT, width, CLEAT, "none", "fine"),
        rectangle(0.0, bottom, width, top - bottom, "wood", "cut"),
    ]
    rod_and_brackets(shapes, width, rod, thick, places)
    if low > 0:
        rod_and_brackets(shapes, width, low, thick, places)
    shapes.append(polyline([[0.0, 0.0], [0.0, high], [width, high], [width, 0.0]], "cut"))
    shapes.append(line(0.0, 0.0, width, 0.0, "cut"))
    if low > 0:
        shapes.append(dimension(0.0, 0.0, 0.0, low, inches(low), "left"))
    shapes.append(dimension(0.0, 0.0, 0.0, rod, inches(rod), "left"))
    shapes.append(dimension(width, 0.0, width, top, inches(top), "left"))
    shapes.append(dimension(0.0, 0.0, 0.0, high, feet_inches(high), "left"))
    for mark in places[0:MOST_MARKS]:
        shapes.append(dimension(0.0, 0.0, mark["place"], 0.0, inches(mark["place"], 0.125), "below"))
    shapes.append(dimension(0.0, 0.0, width, 0.0, feet_inches(width), "below"))
    shapes.append(leader(width, (top + bottom) / 2, f"shelf, {inches(values['shelf_depth'])} deep", "right"))
    shapes.append(leader(width, rod, f"rod, {inches(thick)}", "right"))
    if low > 0:
        shapes.append(leader(width, low, "low rod", "right"))
    if len(places) > 0:
        shapes.append(leader(places[0]["place"], rod - thick / 2 - 1.5, "bracket", "right"))
    second = f", a second rod at {inches(low)}" if low > 0 else ""
    brackets = "No brackets are needed."
    if len(places) > 0:
        brackets = f"Brackets at {', '.join([inches(mark['place'], 0.125) for mark in places])} from the left wall."
    alt = (
        f"A closet {feet_inches(width)} wide and {feet_inches(high)} high from the front: a rod at {inches(rod)}"
        f"{second}, the shelf's top at {inches(top)}. {brackets}"
    )
    return sheet("Closet from the front", alt, shapes)
