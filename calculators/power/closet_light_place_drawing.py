"""A closet cut from back to front: the storage space, and the light with its clearance."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, label, leader, line, polygon, rectangle, sheet
from calculators.writing import tape

LOW_DEPTH = 24.0
LIGHT = 6.0


def closet_light_place_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the back wall at the floor; the room is to the right."""
    high = values["ceiling"]
    away = values["from_back"]
    hangs = values["hangs"]
    low = answer["storage_low"]
    deep = answer["storage_high"]
    wide = max(LOW_DEPTH, deep, away + LIGHT) + 6.0
    space = [[0.0, 0.0], [LOW_DEPTH, 0.0], [LOW_DEPTH, low], [deep, low], [deep, high], [0.0, high]]
    shapes: list[Shape] = [
        polygon(space, "earth", "limit"),
        line(0.0, 0.0, 0.0, high, "cut"),
        line(0.0, high, wide, high, "cut"),
        line(0.0, 0.0, wide, 0.0, "cut"),
    ]
    if hangs > 0:
        shapes.append(rectangle(away, high - hangs, LIGHT, hangs, "paper", "outline"))
    else:
        shapes.append(rectangle(away, high, LIGHT, 5.0, "paper", "outline"))
    shapes.append(leader(away + LIGHT / 2, high - hangs / 2, f"light: {answer['verdict']}", "right"))
    shapes.append(label(12.0, low / 2, "storage", 24.0))
    shapes.append(dimension(0.0, high, deep, high, tape(deep), "above"))
    shapes.append(dimension(0.0, high, away, high, tape(away), "above"))
    shapes.append(dimension(0.0, 0.0, LOW_DEPTH, 0.0, tape(LOW_DEPTH), "below"))
    shapes.append(dimension(0.0, 0.0, 0.0, low, tape(low), "left"))
    shapes.append(dimension(0.0, 0.0, 0.0, high, tape(high), "left"))
    alt = (
        f"A closet {tape(high)} high in section: storage {tape(LOW_DEPTH)} deep up to {tape(low)} and "
        f"{tape(deep)} deep above; the light's edge is {tape(away)} from the back wall, {tape(answer['has'])} "
        f"clear where {tape(answer['needed'])} is needed."
    )
    return sheet("Closet light in section", alt, shapes)
