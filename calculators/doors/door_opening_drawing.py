"""A prehung door in its rough opening, seen from the side that it opens to."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, circle, dimension, leader, line, rectangle, sheet
from calculators.writing import inches

STUD = 1.5
HEADER = 3.5
BEYOND = 5.0


def door_opening_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the subfloor at the left stud of the rough opening; the high side is at the left."""
    wide = answer["rough_width"]
    tall = values["height"]
    under = values["under_door"]
    high = answer["rough_height"]
    floor = values["floor"]
    jamb = values["jamb"]
    slope = values["floor_slope"]
    shim = values["shim"]
    unit = answer["unit_width"]
    leg = answer["high_leg"]
    head = floor + leg
    door = values["width"]
    left = shim + jamb + values["reveal"]
    bottom = floor + under
    shapes: list[Shape] = [
        rectangle(-STUD, -slope, STUD, high + slope, "wood", "cut"),
        rectangle(wide, -slope, STUD, high + slope, "wood", "cut"),
        rectangle(-STUD, high, wide + 2 * STUD, HEADER, "wood", "cut"),
        rectangle(shim, floor, jamb, leg, "paper", "outline"),
        rectangle(shim + unit - jamb, floor - slope, jamb, leg + slope, "paper", "outline"),
        rectangle(shim, head, unit, jamb, "paper", "outline"),
        rectangle(left, bottom, door, tall, "none", "outline"),
        circle(left + door - 2.5, bottom + 36.0, 1.0, "steel", "outline"),
        line(-STUD - BEYOND, 0.0, wide + STUD + BEYOND, -slope, "cut"),
    ]
    if floor > 0:
        shapes.append(line(-STUD - BEYOND, floor, wide + STUD + BEYOND, floor - slope, "hidden"))
        shapes.append(leader(wide + STUD + BEYOND, floor - slope, f"floor to come, {inches(floor)}", "right"))
    shapes.append(dimension(left, bottom, left + door, bottom, inches(door), "below"))
    shapes.append(dimension(0.0, 0.0, wide, -slope, inches(wide), "below"))
    shapes.append(dimension(left, bottom, left, bottom + tall, inches(tall), "left"))
    shapes.append(dimension(-STUD, 0.0, -STUD, high, inches(high), "left"))
    shapes.append(leader(shim + unit - jamb / 2, head - 20.0, f"leg, {inches(answer['low_leg'])}", "right"))
    shapes.append(leader(left + door / 2, floor + under / 2, f"gap {inches(under)}", "right"))
    shapes.append(leader(wide - shim / 2, head - 6.0, f"shims, {inches(shim)}", "right"))
    lower = ""
    if slope > 0:
        lower = f" The floor is {inches(slope)} lower at the right, and that leg is {inches(answer['low_leg'])} long."
    alt = (
        f"A door {inches(door)} by {inches(tall)} in a rough opening {inches(wide)} wide and "
        f"{inches(high)} high over the subfloor, the floor to come {inches(floor)} thick, {inches(under)} under the "
        f"door, a leg of {inches(answer['low_leg'])} and {inches(shim)} of shims each side.{lower}"
    )
    return sheet("Door in its rough opening", alt, shapes)
