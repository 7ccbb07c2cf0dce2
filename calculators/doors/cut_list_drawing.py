"""The sticks of a cut list, one under the other, with their cuts to scale."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, label, leader, rectangle, sheet
from calculators.writing import feet_inches

MOST_STICKS = 12
"""More ways to cut than this are told in the table alone."""
ROOM = 0.2
"""A piece shorter than this part of the longest stick has no room for its length; the table has it."""


def cut_list_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """Each way to cut a stick, longest stock first: pieces light, what is left over hatched.

    A stick is drawn as a bar whose height is a part of the longest one's length, so that a text goes into it.
    """
    rows = answer["cuts"]
    longest = 1.0
    for row in rows:
        longest = max(longest, row["stock"])
    high = longest / 16
    shapes: list[Shape] = []
    words: list[str] = []
    for at in range(min(len(rows), MOST_STICKS)):
        row = rows[at]
        y = -at * high * 1.6
        shapes.append(rectangle(0.0, y, row["stock"], high, "earth", "cut"))
        x = 0.0
        for part in row["parts"]:
            shapes.append(rectangle(x, y, part["length"], high, "paper", "outline"))
            if part["length"] > ROOM * longest:
                shapes.append(label(x + part["length"] / 2, y + high / 2, feet_inches(part["length"])))
            x = x + part["length"] + values["kerf"]
        times = row["times"]
        shapes.append(leader(row["stock"], y + high / 2, f"{times} x {feet_inches(row['stock'])}", "right"))
        words.append(f"{times} x {feet_inches(row['stock'])}: {row['cuts']}")
    return sheet("Cuts of each stick", "; ".join(words) + ".", shapes)
