"""A tiled room from above: every joint at its place, and the cuts at the walls."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, label, leader, line, rectangle, sheet
from calculators.flooring.tile_layout import balanced, full_at_start, positions
from calculators.writing import decimal, feet_inches, inches, whole

FEW = 8
"""Of rows too narrow to draw, the first and the last so many are drawn."""
NEAR = 0.012
"""Of the room's longer side: tiles narrower than that would run into one black."""
ROOT_TWO = 1.4142135623730951


def drawn(tile: float, longer: float) -> float:
    """How many tiles from each wall are drawn: all, or a few."""
    return 100000.0 if tile > longer * NEAR else float(FEW)


def straight_shapes(values: dict[str, Any]) -> list[Shape]:
    """The tiles of a straight layout: strips of joint are left white between them."""
    length = values["length"]
    width = values["width"]
    joint = values["joint"]
    along = balanced(length, values["tile_length"], joint, values["gap"])
    if values["doorway"] == "full":
        along = full_at_start(length, values["tile_length"], joint, values["gap"])
    across = balanced(width, values["tile_width"], joint, values["gap"])
    longer = max(length, width)
    xs = positions(along, values["tile_length"], joint, drawn(values["tile_length"], longer))
    ys = positions(across, values["tile_width"], joint, drawn(values["tile_width"], longer))
    left = xs[0]
    right = xs[len(xs) - 1]
    low = ys[0]
    high = ys[len(ys) - 1]
    shapes = [rectangle(left, low, right - left, high - low, "none", "outline")]
    for i in range(1, len(xs) - 1):
        shapes.append(line(xs[i], low, xs[i], high, "fine"))
    for i in range(1, len(ys) - 1):
        shapes.append(line(left, ys[i], right, ys[i], "fine"))
    shapes.append(dimension(left, width, xs[1], width, inches(xs[1] - xs[0]), "above"))
    shapes.append(dimension(xs[len(xs) - 2], width, right, width, inches(right - xs[len(xs) - 2]), "above"))
    shapes.append(dimension(0.0, low, 0.0, ys[1], inches(ys[1] - ys[0]), "left"))
    shapes.append(dimension(0.0, ys[len(ys) - 2], 0.0, high, inches(high - ys[len(ys) - 2]), "left"))
    return shapes


def diagonal_shapes(values: dict[str, Any]) -> list[Shape]:
    """Joints at 45 degrees with a corner of four tiles on the middle of the room, within the gap at the walls."""
    gap = values["gap"]
    long = values["length"] - 2 * gap
    wide = values["width"] - 2 * gap
    apart = (values["tile_length"] + values["joint"]) * ROOT_TWO
    across = (values["tile_width"] + values["joint"]) * ROOT_TWO
    shapes = [rectangle(gap, gap, long, wide, "none", "outline")]
    shapes.extend(slanted(long, wide, gap, apart, 1.0))
    shapes.extend(slanted(long, wide, gap, across, -1.0))
    return shapes


def slanted(long: float, wide: float, gap: float, apart: float, up: float) -> list[Shape]:
    """Lines that climb (`up` 1) or fall (-1) by 45 degrees, so far apart along the room, through its middle."""
    found = []
    reach = (long + wide) / 2
    step = apart
    while step < (long + wide) * NEAR:
        step = step * 2
    count = whole(reach / step, "down")
    for i in range(-count, count + 1):
        middle = long / 2 + i * step
        from_x = max(0.0, middle - wide / 2)
        to_x = min(long, middle + wide / 2)
        if to_x - from_x > 0.01:
            low = wide / 2 + (from_x - middle) * up
            high = wide / 2 + (to_x - middle) * up
            found.append(line(gap + from_x, gap + low, gap + to_x, gap + high, "fine"))
    return found


def tile_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is a corner at the doorway's wall; x runs from the doorway to the far wall."""
    length = values["length"]
    width = values["width"]
    shapes: list[Shape] = [rectangle(0.0, 0.0, length, width, "none", "cut")]
    size = f"{inches(values['tile_length'])} x {inches(values['tile_width'])} tile"
    told = (
        f"The tiles at the far wall are {inches(answer['cut_along'])}, those at the two sides "
        f"{inches(answer['cut_across'])}; {decimal(answer['full_along'], 0)} full tiles along and "
        f"{decimal(answer['full_across'], 0)} across."
    )
    if values["layout"] == "diagonal":
        shapes.extend(diagonal_shapes(values))
        told = "Joints run at 45 degrees, and a corner of four tiles stands on the middle of the room."
    else:
        shapes.extend(straight_shapes(values))
        if values["doorway"] == "full":
            told = told + f" The first tile at the doorway is full, {inches(values['tile_length'])}."
    shapes.append(dimension(0.0, 0.0, length, 0.0, feet_inches(length), "below"))
    shapes.append(dimension(length, 0.0, length, width, feet_inches(width), "right"))
    shapes.append(label(length / 2, width / 2, size, 0.0, "below"))
    shapes.append(leader(0.0, width * 0.5, "doorway side", "left"))
    alt = (
        f"A floor of {feet_inches(length)} by {feet_inches(width)} in {size}s with joints of "
        f"{inches(values['joint'])} and a gap of {inches(values['gap'])} at the walls. {told}"
    )
    return sheet("Tile layout", alt, shapes)
