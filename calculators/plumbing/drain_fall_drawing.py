"""A drain seen from the side: its inverts, its fall, and the least fall that its size asks for."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import dimension, leader, line, polygon, sheet
from calculators.drawing_scale import stretch_within
from calculators.ways import with_way
from calculators.writing import decimal, feet_inches, inches

SHARE = 0.4
"""Of the run: so high may the stretched drawing be."""

MARK_WAYS = ("above the mark", "below the mark")


def from_mark(height: float) -> str:
    """A height above or below the mark. Inches.

    >>> [from_mark(2), from_mark(-18), from_mark(0)]
    ['2 in above the mark', '18 in below the mark', '0 in']
    """
    return with_way(MARK_WAYS, height, inches(abs(height)))


def drain_fall_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """x is the distance from the upper end, y the height from the mark. Heights are stretched, and it says so."""
    run = values["run"]
    pipe = values["pipe"]
    upper = values["upper_invert"]
    lower = answer["lower_invert"]
    least = upper - answer["least_fall"]
    stretch = stretch_within(upper + pipe - min(lower, least), SHARE * run)
    slope = decimal(values["slope"] * 12, 3)
    shapes = [
        polygon([[0.0, upper], [run, lower], [run, lower + pipe], [0.0, upper + pipe]], "none", "nothing"),
        line(0.0, upper, run, lower, "cut"),
        line(0.0, upper + pipe, run, lower + pipe, "outline"),
        line(0.0, upper, 0.0, upper + pipe, "fine"),
        line(run, lower, run, lower + pipe, "fine"),
        line(0.0, upper, run, upper, "centre"),
        line(0.0, upper, run, least, "limit"),
        dimension(run, upper, run, lower, "fall " + inches(answer["fall"]), "right"),
        dimension(0.0, min(lower, least), run, min(lower, least), "run " + feet_inches(run), "below"),
        leader(0.0, upper, "invert " + from_mark(upper), "below"),
        leader(run, lower, "invert " + from_mark(lower), "below"),
        leader(run * 0.3, upper - answer["fall"] * 0.3 + pipe, f"{decimal(pipe, 2)} in pipe, {slope} in/ft", "above"),
        leader(run * 0.75, upper - answer["least_fall"] * 0.75, "least: " + inches(answer["least_fall"]), "below"),
    ]
    alt = (
        f"A {decimal(pipe, 2)} in drain falls {inches(answer['fall'])} over {feet_inches(run)}, {slope} in/ft: from an "
        f"invert {from_mark(upper)} to {from_mark(lower)}. The least for its size is {inches(answer['least_fall'])} "
        f"over this run: {answer['result']}. Heights are drawn {decimal(stretch, 0)} times larger."
    )
    return sheet("Fall of the drain", alt, shapes, stretch)
