"""A rectangular slab from above, and below it a section through its edge, drawn larger."""

from __future__ import annotations

from math import floor
from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, break_line, dimension, enlarged, label, leader, line, rectangle, sheet
from calculators.drawing_scale import larger
from calculators.writing import feet_inches, inches
from calculators.writing_units import write

BOARD = 1.5
"""Thickness of a form board."""
STRIP = 0.5
"""Thickness of the isolation strip."""
DRIVEN = 4.0
"""So far a stake is drawn below the base."""


def slab_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is a corner of the slab, x along its length. One formed end is the right one, one side the lower."""
    length = values["length"]
    width = values["width"]
    formed = values["ends"] + values["sides"] > 0
    west = values["base_beyond"] if values["ends"] > 1 else 0.0
    north = values["base_beyond"] if values["sides"] > 1 else 0.0
    shapes: list[Shape] = []
    if values["base_thickness"] > 0 and formed:
        base_length = length + values["ends"] * values["base_beyond"]
        base_width = width + values["sides"] * values["base_beyond"]
        shapes.append(rectangle(-west, width + north - base_width, base_length, base_width, "none", "hidden"))
    shapes.append(rectangle(0.0, 0.0, length, width, "none", "cut"))
    shapes.append(line(0.0, 0.0, length, width, "fine"))
    shapes.append(dimension(0.0, width, length, width, feet_inches(length), "above"))
    shapes.append(dimension(0.0, 0.0, 0.0, width, feet_inches(width), "left"))
    shapes.append(label(length * 0.5, width * 0.82, falling(values), length * 0.9, "above"))
    shapes.append(
        label(length * 0.5, width * 0.18, "diagonal " + feet_inches(answer["diagonal"]), length * 0.9, "above")
    )
    shown = max(16.0, 2 * values["thickness"])
    reach = outside(values, formed)
    times = max(1.0, floor(1.3 * length / (shown + reach)) / 2)
    x = length / 2 + (reach - shown) / 2 * times
    y = -max(length, width) * 0.16 - values["base_beyond"]
    shapes.append(label(length / 2, y * 0.5, "section at the edge, " + larger(times), 0.0, "below"))
    shapes.extend(enlarged(section(values, formed, shown), x, y, times))
    return sheet("Slab on ground", words(values, answer, formed), shapes)


def falling(values: dict[str, Any]) -> str:
    """How it falls, with the way on the drawing."""
    return "falls " + write(values["fall"], "slope", "%", 0.1) + " lengthwise"


def outside(values: dict[str, Any], formed: bool) -> float:
    """How far the section reaches beyond the slab's edge."""
    if not formed:
        return STRIP
    reach: float = max(values["base_beyond"], 2 * BOARD)
    return reach


def section(values: dict[str, Any], formed: bool, shown: float) -> list[Shape]:
    """Through an edge: x from the edge into the slab, y from the slab's top."""
    thick = values["thickness"]
    base = values["base_thickness"]
    bottom = -thick - base
    start = -values["base_beyond"] if formed else 0.0
    shapes: list[Shape] = []
    if base > 0:
        shapes.append(rectangle(start, bottom, shown - start, base, "gravel", "fine"))
        shapes.append(dimension(shown, -thick, shown, bottom, "base " + inches(base), "right"))
    shapes.append(rectangle(0.0, -thick, shown, thick, "concrete", "cut"))
    if formed:
        shapes.append(rectangle(-BOARD, -thick, BOARD, thick, "wood", "cut"))
        shapes.append(rectangle(-2 * BOARD, bottom - DRIVEN, BOARD, thick + base + DRIVEN - 1.0, "wood", "outline"))
        shapes.append(leader(-BOARD, -thick / 2, "form board and stake", "below"))
        if base > 0 and values["base_beyond"] > 0:
            beyond = "base beyond " + inches(values["base_beyond"])
            shapes.append(dimension(start, bottom, 0.0, bottom, beyond, "below"))
    else:
        shapes.append(rectangle(-STRIP, -thick, STRIP, thick, "plastic", "outline"))
        shapes.append(leader(-STRIP / 2, -thick / 2, "isolation strip", "below"))
    shapes.append(dimension(shown, 0.0, shown, -thick, "slab " + inches(thick), "right"))
    shapes.append(break_line(shown, 0.0, shown, bottom))
    return shapes


def words(values: dict[str, Any], answer: Answer, formed: bool) -> str:
    """The drawing in words."""
    edge = "isolation strip at its edge"
    if formed:
        edge = "form board on the base, held by a stake outside it"
        if values["base_thickness"] > 0 and values["base_beyond"] > 0:
            edge = f"{edge}, and the base reaching {inches(values['base_beyond'])} beyond"
    base = f" on {inches(values['base_thickness'])} of base" if values["base_thickness"] > 0 else ""
    return (
        f"From above: a slab of {feet_inches(values['length'])} by {feet_inches(values['width'])}, "
        f"{feet_inches(answer['diagonal'])} from corner to corner, that {falling(values)}. In section: "
        f"{inches(values['thickness'])} of concrete{base}, with a {edge}."
    )
