"""The ground along a wall in section, heights drawn larger."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Points, Shape, dimension, leader, polygon, rectangle, sheet
from calculators.writing import feet_inches, inches
from calculators.writing_units import write

STRIP = 120.0
"""The 10 ft along the foundation that IRC R401.3 looks at."""
WALL = 8.0
"""Thickness at which the foundation is drawn."""
ABOVE = 6.0
"""So far the foundation is drawn above the ground."""
STRETCH = 3.0
"""Heights are drawn so many times larger, or the fall would not be seen."""


def ground_fall_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is where the ground meets the wall; x goes away from it."""
    strip = min(values["room"], STRIP)
    drop = answer["drop_fresh"]
    beyond = strip * 0.35
    under = -drop - strip * 0.12
    top: Points = [[0.0, 0.0], [strip, -drop]]
    short = values["room"] < STRIP and not values["paved"]
    if short:
        top.append([strip + beyond * 0.5, -drop - strip * 0.05])
        top.append([strip + beyond, -drop])
    else:
        top.append([strip + beyond, -drop - beyond * 0.02])
    ground = [*top, [strip + beyond, under], [0.0, under]]
    shapes: list[Shape] = [
        polygon(ground, "earth", "cut"),
        rectangle(-WALL, under, WALL, ABOVE - under, "concrete", "cut"),
        rectangle(-WALL, ABOVE, WALL * 0.75, ABOVE, "wood", "outline"),
    ]
    if values["paved"]:
        slab: Points = [[0.0, 0.0], [strip, -drop], [strip, -drop - 4.0], [0.0, -4.0]]
        shapes.append(polygon(slab, "concrete", "cut"))
    shapes.append(dimension(0.0, 0.0, strip, -drop, feet_inches(strip), "above"))
    shapes.append(dimension(strip, 0.0, strip, -drop, "drop " + inches(drop), "right"))
    shapes.append(leader(-WALL / 2, under * 0.5, "house wall", "below"))
    if short:
        shapes.append(leader(strip + beyond * 0.5, -drop - strip * 0.05, "swale or drain", "below"))
    return sheet("Fall of the ground", words(values, answer, strip, short), shapes, STRETCH)


def words(values: dict[str, Any], answer: Answer, strip: float, short: bool) -> str:
    """The drawing in words."""
    what = "paving" if values["paved"] else "ground"
    end = " At its end a swale or a drain takes the water along." if short else ""
    slope = write(answer["slope"], "slope", "%", 0.1)
    return (
        f"In section: beside the foundation the {what} drops {inches(answer['drop_fresh'])} over {feet_inches(strip)} "
        f"away from the wall, as it is built; {slope} at least when it has settled.{end}"
    )
