"""The distances of a gas meter as bars against their limits."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, leader, line, rectangle, sheet
from calculators.writing import tape

MOST = 96.0
"""A longer distance is drawn so far."""
HIGH = 6.0
STEP = 14.0


def gas_meter_place_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """One bar for each distance from the meter, at x = 0, to the right; the limit is a heavy dashed line across it."""
    rows = answer["distances"]
    shapes: list[Shape] = []
    words: list[str] = []
    for at in range(len(rows)):
        each = rows[at]
        y = -at * STEP
        long = min(MOST, each["measured"])
        limit = min(MOST, each["limit"])
        fill = "earth"
        word = "passes"
        if not each["passes"]:
            fill = "steel"
            word = "fails"
        if long > 0:
            shapes.append(rectangle(0.0, y, long, HIGH, fill, "outline"))
        shapes.append(line(limit, y - 2.0, limit, y + HIGH + 2.0, "limit"))
        shapes.append(leader(long, y + HIGH / 2, f"{each['what']}: {tape(each['measured'])}, {word}", "right"))
        words.append(f"{each['what']} {tape(each['measured'])} where {tape(each['limit'])} is least: {word}")
    last = -(len(rows) - 1) * STEP
    shapes.append(line(0.0, last - 3.0, 0.0, HIGH + 3.0, "cut"))
    first = min(MOST, rows[0]["limit"])
    shapes.append(dimension(0.0, HIGH + 3.0, first, HIGH + 3.0, tape(rows[0]["limit"]), "above"))
    return sheet("Distances from the gas meter", "; ".join(words) + ".", shapes)
