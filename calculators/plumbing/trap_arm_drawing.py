"""A trap arm from the side: the weir at the left, the vent at the right, and how far the arm falls between."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import dimension, leader, line, polygon, sheet
from calculators.drawing_scale import stretch_within
from calculators.writing import decimal, tape

SHARE = 0.5
"""Of the run: so high may the stretched drawing be."""
RISER = 2.0
"""The vent is drawn so many pipe sizes high."""


def trap_arm_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """x is the distance from the weir, y the height above it. Heights are stretched where that fits, and it says so."""
    run = values["run"]
    pipe = values["pipe"]
    fall = answer["fall"]
    stretch = stretch_within(fall + pipe * RISER, SHARE * run)
    slope = decimal(values["slope"] * 12, 3)
    wide = min(pipe, run * 0.2)
    top = pipe * RISER
    shapes = [
        polygon([[0.0, 0.0], [run, -fall], [run, pipe - fall], [0.0, pipe]], "none", "nothing"),
        line(0.0, 0.0, run, -fall, "cut"),
        line(0.0, pipe, run, pipe - fall, "outline"),
        line(0.0, 0.0, 0.0, pipe, "fine"),
        line(run, -fall, run, top, "outline"),
        line(run + wide, -fall, run + wide, top, "outline"),
        line(0.0, 0.0, run, 0.0, "centre"),
        line(0.0, 0.0, run, -pipe, "limit"),
        dimension(run + wide, 0.0, run + wide, -fall, "fall " + tape(fall), "right"),
        dimension(0.0, -fall, run, -fall, "run " + tape(run), "below"),
        leader(0.0, 0.0, "weir of the trap", "below"),
        leader(run + wide / 2.0, top, "vent", "above"),
        leader(run * 0.3, pipe - fall * 0.3, f"{decimal(pipe, 2)} in pipe, {slope} in/ft", "above"),
        leader(run * 0.75, -pipe * 0.75, "most fall: " + tape(pipe), "below"),
    ]
    alt = (
        f"A {decimal(pipe, 2)} in trap arm falls {tape(fall)} over {tape(run)} from the weir of the trap to the "
        f"vent, {slope} in/ft. It may fall at most {tape(pipe)}, its own size. The longest at this slope is "
        f"{tape(answer['longest'])}: this arm {answer['result']}. "
        f"Heights are drawn {decimal(stretch, 0)} times larger."
    )
    return sheet("Trap arm from the side", alt, shapes, stretch)
