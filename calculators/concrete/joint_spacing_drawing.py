"""A pad from above with its joints."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import dimension, label, line, rectangle, sheet
from calculators.writing import decimal, feet_inches, inches


def joint_spacing_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is a corner of the pad, x along its length. Each joint is a line at its place."""
    length = values["length"]
    width = values["width"]
    along = answer["panels_along"]
    across = answer["panels_across"]
    panel_length = answer["panel_length"]
    panel_width = answer["panel_width"]
    shapes = [rectangle(0.0, 0.0, length, width, "none", "cut")]
    for i in range(1, along):
        shapes.append(line(i * panel_length, 0.0, i * panel_length, width, "outline"))
    for i in range(1, across):
        shapes.append(line(0.0, i * panel_width, length, i * panel_width, "outline"))
    if along > 1:
        shapes.append(dimension(0.0, width, panel_length, width, feet_inches(panel_length), "above"))
    if across > 1:
        shapes.append(dimension(0.0, width - panel_width, 0.0, width, feet_inches(panel_width), "left"))
    shapes.append(dimension(0.0, 0.0, length, 0.0, feet_inches(length), "below"))
    shapes.append(dimension(length, 0.0, length, width, feet_inches(width), "right"))
    shapes.append(label(panel_length / 2, width - panel_width / 2, "panel", panel_length * 0.9, "above"))
    panels = f"{decimal(along, 0)} x {decimal(across, 0)} panels"
    alt = (
        f"A pad of {feet_inches(length)} by {feet_inches(width)} in {panels} of {feet_inches(panel_length)} by "
        f"{feet_inches(panel_width)}; joints at most {feet_inches(answer['spacing'])} apart, "
        f"{inches(answer['joint_depth'])} deep: {answer['verdict']}."
    )
    return sheet("Joints of the pad", alt, shapes)
