"""The trench in section: its walls, the spoil beside it, and the ladder."""

from __future__ import annotations

from math import sqrt
from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, leader, line, polygon, sheet
from calculators.writing import decimal, feet_inches, rounded

RUNG = 12.0
RAIL = 5.0
"""Rungs a foot apart; the rail is drawn wider than it is, to be seen."""


def trench_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """Section across the trench; 0, 0 is the middle of its bottom, y = depth is the ground. Spoil lies on the right.

    The ladder lies on the left wall, or leans at one in four where the wall is upright, and stands out 3 ft above.
    """
    depth = values["depth"]
    bottom = values["width"] / 2
    top = answer["top_width"] / 2
    edge = top + answer["spoil_from_edge"]
    heap = answer["heap_width"]
    high = depth + answer["heap_height"]
    left = -top - 36.0 - 36.0 * (top - bottom) / depth
    right = edge + heap + 12.0
    under = -max(12.0, depth / 6)
    ground = [
        [left, depth],
        [-top, depth],
        [-bottom, 0.0],
        [bottom, 0.0],
        [top, depth],
        [right, depth],
        [right, under],
        [left, under],
    ]
    across = feet_inches(rounded(answer["top_width"], 1.0, "up"))
    shapes: list[Shape] = [
        polygon(ground, "earth", "cut"),
        polygon([[edge, depth], [edge + heap / 2, high], [edge + heap, depth]], "earth", "outline"),
        leader(edge + heap / 2, (depth + high) / 2, "spoil", "above"),
    ]
    if answer["ladders"] > 0:
        shapes.extend(ladder(depth, bottom, top))
        shapes.append(leader(-top, depth + 18.0, "ladder, 3 ft above the edge", "above"))
    shapes.append(leader((bottom + top) / 2, depth / 2, "wall: " + answer["slope"], "right"))
    shapes.append(dimension(-bottom, 0.0, -top, depth, feet_inches(depth), "left"))
    shapes.append(dimension(-bottom, 0.0, bottom, 0.0, feet_inches(values["width"]), "below"))
    shapes.append(dimension(top, depth, edge, depth, feet_inches(answer["spoil_from_edge"]), "below"))
    shapes.append(dimension(-top, depth, top, depth, across, "below"))
    return sheet("Trench in section", words(values, answer), shapes)


def ladder(depth: float, bottom: float, top: float) -> list[Shape]:
    """The ladder and its rungs: on the left wall, or leaning in the trench as far as its bottom allows."""
    run = max((top - bottom) / depth, min(0.25, max(0.0, 2 * bottom - 2 * RAIL) / depth))
    foot = run * depth - top
    rise = depth + 36.0
    thick = RAIL * sqrt(1 + run * run)
    head = foot - run * rise
    rails = [[foot, 0.0], [head, rise], [head + thick, rise], [foot + thick, 0.0]]
    shapes: list[Shape] = [polygon(rails, "paper", "outline")]
    up = RUNG
    while up < rise:
        at = foot - run * up
        shapes.append(line(at, up, at + thick, up, "fine"))
        up = up + RUNG
    return shapes


def words(values: dict[str, Any], answer: Answer) -> str:
    """The drawing in words."""
    ways = "No ladder is asked for at this depth."
    if answer["ladders"] > 0:
        ways = f"Ladders, ramps or steps: {decimal(answer['ladders'], 0)}, standing 3 ft above the edge."
    wide = feet_inches(rounded(answer["top_width"], 1.0, "up"))
    return (
        f"Section: the trench is {feet_inches(values['depth'])} deep, {feet_inches(values['width'])} wide at the "
        f"bottom and {wide} at the top. Its walls are {answer['slope']}. Spoil lies on one side, "
        f"{feet_inches(answer['spoil_from_edge'])} from the edge. {ways}"
    )
