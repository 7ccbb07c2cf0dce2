"""A pad from above with its joints."""

from __future__ import annotations

from math import floor
from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import dimension, label, leader, line, rectangle, sheet
from calculators.writing import decimal, feet_inches, inches

NEAR = 0.015
"""Of the pad's longer side: joints nearer together than that would run into one black, and only a few are drawn."""
FEW = 3


def drawn_joints(count: float, apart: float, longer: float) -> list[int]:
    """The joints to draw of so many panels: all of them, or the first and the last few.

    >>> [drawn_joints(4, 48.0, 192.0), drawn_joints(100, 12.0, 1200.0)]
    [[1, 2, 3], [1, 2, 3, 97, 98, 99]]
    """
    return [i for i in range(1, floor(count)) if apart > longer * NEAR or i <= FEW or i >= count - FEW]


def joint_spacing_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is a corner of the pad, x along its length. Each joint is a line at its place."""
    length = values["length"]
    width = values["width"]
    along = answer["panels_along"]
    across = answer["panels_across"]
    panel_length = answer["panel_length"]
    panel_width = answer["panel_width"]
    shapes = [rectangle(0.0, 0.0, length, width, "none", "cut")]
    for i in drawn_joints(along, panel_length, max(length, width)):
        shapes.append(line(i * panel_length, 0.0, i * panel_length, width, "outline"))
    for i in drawn_joints(across, panel_width, max(length, width)):
        shapes.append(line(0.0, i * panel_width, length, i * panel_width, "outline"))
    if along > 1:
        shapes.append(dimension(0.0, width, panel_length, width, feet_inches(panel_length), "above"))
    if across > 1:
        shapes.append(dimension(0.0, width - panel_width, 0.0, width, feet_inches(panel_width), "left"))
    shapes.append(dimension(0.0, 0.0, length, 0.0, feet_inches(length), "below"))
    shapes.append(dimension(length, 0.0, length, width, feet_inches(width), "right"))
    shapes.append(label(panel_length / 2, width - panel_width / 2, "panel", panel_length * 0.9, "above"))
    joint = f"joint, {inches(answer['joint_depth'])} deep"
    if along > 1:
        shapes.append(leader(panel_length, width / 2, joint, "above"))
    elif across > 1:
        shapes.append(leader(length * 0.6, panel_width, joint, "above"))
    panels = f"{decimal(along, 0)} x {decimal(across, 0)} panels"
    alt = (
        f"A pad of {feet_inches(length)} by {feet_inches(width)} in {panels} of {feet_inches(panel_length)} by "
        f"{feet_inches(panel_width)}; joints at most {feet_inches(answer['spacing'])} apart, "
        f"{inches(answer['joint_depth'])} deep: {answer['verdict']}."
    )
    return sheet("Joints of the pad", alt, shapes)
