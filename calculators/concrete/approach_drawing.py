"""A driveway approach from above, and below it the section from the gutter to the drive, drawn larger."""

from __future__ import annotations

from math import floor
from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Points, Shape, dimension, enlarged, label, leader, line, polygon, polyline, sheet
from calculators.drawing_scale import larger
from calculators.writing import feet_inches, inches
from calculators.writing_units import write

BEYOND = 18.0
"""So much of gutter and drive is drawn."""
GUTTER = 6.0
"""Thickness at which the gutter and the drive are drawn."""


def approach_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the left end of the throat at the curb line; y goes up to the walk. The section stands under the plan."""
    throat = values["throat"]
    depth = values["depth"]
    left = 0.0 if values["side"] == "none" else values["left"]
    right = 0.0 if values["side"] == "none" else values["right"]
    left_back = left if values["side"] == "wing" else 0.0
    right_back = right if values["side"] == "wing" else 0.0
    across = throat + left + right
    outline: Points = [[-left, 0.0], [throat + right, 0.0], [throat + right_back, depth], [-left_back, depth]]
    shapes: list[Shape] = [
        polygon(outline, "none", "cut"),
        line(0.0, 0.0, 0.0, depth, "outline"),
        line(throat, 0.0, throat, depth, "outline"),
        line(-left - BEYOND, 0.0, -left, 0.0, "outline"),
        line(throat + right, 0.0, throat + right + BEYOND, 0.0, "outline"),
        line(-left - BEYOND, depth, throat + right + BEYOND, depth, "outline"),
        dimension(0.0, depth, throat, depth, "throat " + feet_inches(throat), "above"),
        dimension(throat + right_back, depth, throat + right, 0.0, feet_inches(depth), "right"),
        label(throat / 2, depth * 0.6, "rises " + write(values["slope"], "slope", "%", 0.1), throat, "above"),
    ]
    for each in [[-left, 0.0, left], [throat, throat + right, right]]:
        if each[2] > 0:
            shapes.append(dimension(each[0], depth, each[1], depth, feet_inches(each[2]), "above"))
    if left > 0 and right > 0:
        shapes.append(dimension(-left, depth, throat + right, depth, feet_inches(across), "above"))
    times = max(1.0, min(12.0, floor(2 * (across + 2 * BEYOND) / (depth + 2 * BEYOND)) / 2))
    x = throat / 2 - depth / 2 * times
    y = -depth * 0.3 - 16.0 - section_top(values) * times - depth * 0.2
    shapes.append(label(throat / 2, -depth * 0.3 - 8.0, "section, " + larger(times)))
    shapes.extend(enlarged(section(values), x, y, times))
    return sheet("Driveway approach", words(values, across), shapes)


def drive_end(values: dict[str, Any]) -> float:
    """Height of the drive's end over the gutter's edge at the curb line."""
    high: float = values["lip"] + values["slope"] * values["depth"] + values["drive_slope"] * BEYOND
    return high


def section_top(values: dict[str, Any]) -> float:
    """The highest point of the section."""
    high: float = max(values["gutter_slope"] * BEYOND, values["lip"] + values["slope"] * values["depth"])
    return max(high, drive_end(values))


def section(values: dict[str, Any]) -> list[Shape]:
    """Along the throat's middle: x from the curb line, y from the gutter there."""
    depth = values["depth"]
    lip = values["lip"]
    thick = values["thickness"]
    edge = values["edge_thickness"]
    slope = values["slope"]
    flat = values["edge_width"]
    run_out = flat + values["edge_taper"]
    back = lip + slope * depth
    base = values["base_thickness"]
    end = drive_end(values)
    gutter = values["gutter_slope"] * BEYOND
    under: Points = [
        [depth, back - thick],
        [run_out, lip + slope * run_out - thick],
        [flat, lip + slope * flat - edge],
        [0.0, lip - edge],
    ]
    slab = [[0.0, lip], [depth, back], *under]
    below = [
        *under,
        [0.0, lip - edge - base],
        [flat, lip + slope * flat - edge - base],
        [run_out, lip + slope * run_out - thick - base],
        [depth, back - thick - base],
    ]
    shapes: list[Shape] = []
    if base > 0:
        shapes.append(polygon(below, "gravel", "fine"))
        shapes.append(dimension(depth, back - thick, depth, back - thick - base, "base " + inches(base), "right"))
    shapes.append(polygon(slab, "concrete", "cut"))
    shapes.append(polyline([[-BEYOND, gutter], [0.0, 0.0], [0.0, -GUTTER], [-BEYOND, gutter - GUTTER]], "outline"))
    shapes.append(polyline([[depth + BEYOND, end], [depth, back]], "outline"))
    shapes.append(dimension(0.0, lip, 0.0, lip - edge, "edge " + inches(edge), "left"))
    shapes.append(dimension(depth, back, depth, back - thick, "slab " + inches(thick), "right"))
    percent = "gutter " + per_cent(values["gutter_slope"], "falls", "rises")
    shapes.append(leader(-BEYOND * 0.6, gutter * 0.6, percent, "below"))
    shapes.append(leader(0.0, lip, "lip " + inches(lip), "below"))
    percent = "drive " + per_cent(values["drive_slope"], "rises", "falls")
    shapes.append(leader(depth + BEYOND * 0.6, back + (end - back) * 0.6, percent, "below"))
    return shapes


def per_cent(slope: float, more: str, less: str) -> str:
    """A slope that goes two ways, in percent.

    >>> [per_cent(0.02, "falls", "rises"), per_cent(-0.035, "falls", "rises")]
    ['falls 2 %', 'rises 3.5 %']
    """
    goes = less if slope < 0 else more
    return goes + " " + write(abs(slope), "slope", "%", 0.1)


def words(values: dict[str, Any], across: float) -> str:
    """The drawing in words."""
    sides = "no side pieces"
    if values["side"] != "none":
        sides = f"a {values['side']} of {feet_inches(values['left'])} left and {feet_inches(values['right'])} right"
    slope = write(values["slope"], "slope", "%", 0.1)
    gutter = per_cent(values["gutter_slope"], "falls", "rises")
    drive = per_cent(values["drive_slope"], "rises", "falls")
    return (
        f"From above: an approach with a throat of {feet_inches(values['throat'])}, {sides}, "
        f"{feet_inches(values['depth'])} deep, {feet_inches(across)} at the curb. In section: a slab of "
        f"{inches(values['thickness'])}, {inches(values['edge_thickness'])} at the curb, "
        f"on {inches(values['base_thickness'])} of base; it begins {inches(values['lip'])} above the gutter and rises "
        f"{slope}. The gutter {gutter} to it, and the drive {drive} beyond."
    )
