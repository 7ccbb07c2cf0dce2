"""The first opening of a trim take-off from the front, with what is cut for it; without openings, the run of base."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, leader, polygon, rectangle, sheet
from calculators.writing import feet_inches, inches

STOOL_THICKNESS = 0.75
FLAT = 24.0
"""A run of base is drawn so many times as long as it is high: its height has no scale."""


def run_of_base(answer: Answer) -> Sheet:
    """The walls laid out straight, and how much of them has base."""
    walls = answer["walls"]
    base = answer["base"]
    high = walls / FLAT
    shapes: list[Shape] = [rectangle(0.0, 0.0, walls, high, "paper", "outline")]
    shapes.append(dimension(0.0, high, walls, high, feet_inches(walls), "above"))
    alt = f"The walls laid out straight, {feet_inches(walls)}, "
    if base > 0:
        shapes.append(rectangle(0.0, 0.0, base, high, "wood", "outline"))
        shapes.append(dimension(0.0, 0.0, base, 0.0, feet_inches(base), "below"))
        alt = alt + f"with base on {feet_inches(base)} of them."
    else:
        alt = alt + "with no base."
    return sheet("Base, laid out straight", alt, shapes)


def trim_take_off_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the lower left corner of the first opening, between the jambs."""
    if len(values["openings"]) == 0:
        return run_of_base(answer)
    opening = values["openings"][0]
    width = opening["width"]
    high = opening["height"]
    reveal = values["reveal"]
    out = reveal + values["casing_width"]
    name = opening["name"].strip() or opening["kind"]
    framed = opening["kind"] == "window" and values["window_trim"] == "frame"
    stool = opening["kind"] == "window" and values["window_trim"] == "stool"
    foot = 0.0
    inner = 0.0
    if framed:
        foot = -out
        inner = -reveal
    top = high + out
    left = -out
    right = width + out
    shapes: list[Shape] = [rectangle(0.0, 0.0, width, high, "paper", "fine")]
    shapes.append(polygon([[-reveal, inner], [-reveal, high + reveal], [left, top], [left, foot]], "wood"))
    shapes.append(
        polygon([[width + reveal, inner], [width + reveal, high + reveal], [right, top], [right, foot]], "wood")
    )
    shapes.append(
        polygon([[-reveal, high + reveal], [left, top], [right, top], [width + reveal, high + reveal]], "wood")
    )
    leg = top - foot
    across = right - left
    shapes.append(dimension(left, foot, left, top, inches(leg), "left"))
    shapes.append(dimension(left, top, right, top, inches(across), "above"))
    shapes.append(leader(width + reveal, high / 2, f"reveal {inches(reveal)}", "right"))
    alt = (
        f"'{name}' from the front, casing set back {inches(reveal)} from the jambs: legs {inches(leg)} and head"
        f" {inches(across)} at the long points"
    )
    if framed:
        shapes.append(polygon([[-reveal, inner], [left, foot], [right, foot], [width + reveal, inner]], "wood"))
        alt = alt + ", the bottom as long as the head"
    below = foot
    if stool:
        horn = values["horn"]
        thick = STOOL_THICKNESS
        deep = values["casing_width"]
        shapes.append(rectangle(left - horn, -thick, across + 2 * horn, thick, "wood", "outline"))
        shapes.append(rectangle(left, -thick - deep, across, deep, "wood", "outline"))
        below = -thick - deep
        shapes.append(dimension(left - horn, below, right + horn, below, inches(across + 2 * horn), "below"))
        shapes.append(leader(right, below + deep / 2, f"apron {inches(across)}", "right"))
        alt = alt + f"; the stool {inches(across + 2 * horn)}, the apron {inches(across)}"
    shapes.append(dimension(0.0, below, width, below, inches(width), "below"))
    alt = alt + f". Between the jambs it is {inches(width)} wide."
    return sheet(f"{name}, from the front", alt, shapes)
