"""A box in section, filled by what goes into it as the code counts it."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, leader, line, polyline, rectangle, sheet
from calculators.writing import decimal

WIDE = 3.0
DEEP = 3.0
FILLS = ["wood", "paper", "gravel", "plastic"]


def box_fill_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """The box as a square of its volume; each line of the count is a layer whose height is its part of that volume.

    What stands above the rim does not fit. The layers are no places: wires lie where they are folded.
    """
    has = answer["has"] * 1728
    needed = answer["needed"] * 1728
    shapes: list[Shape] = []
    y = 0.0
    at = 0
    for part in answer["parts"]:
        volume = part["volume"] * 1728
        high = DEEP * volume / has
        if high > 0:
            shapes.append(rectangle(0.0, y, WIDE, high, FILLS[at], "fine"))
            shapes.append(leader(WIDE, y + high / 2, f"{part['what']}; {decimal(volume, 2)} cu in", "right"))
        y = y + high
        at = at + 1
        if at == len(FILLS):
            at = 0
    shapes.append(polyline([[0.0, DEEP], [0.0, 0.0], [WIDE, 0.0], [WIDE, DEEP]], "cut"))
    shapes.append(line(0.0, DEEP, WIDE, DEEP, "limit"))
    shapes.append(dimension(0.0, 0.0, 0.0, DEEP, f"box {decimal(has, 2)} cu in", "left"))
    shapes.append(dimension(0.0, 0.0, 0.0, y, f"needed {decimal(needed, 2)} cu in", "left"))
    verdict = "It does not fit: what stands above the rim is too much." if not answer["fits"] else "It fits."
    alt = f"A box of {decimal(has, 2)} cu in with {decimal(needed, 2)} cu in counted into it. {verdict}"
    return sheet("Box and its fill", alt, shapes)
