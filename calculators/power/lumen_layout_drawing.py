"""The lights of a room in plan."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, circle, dimension, rectangle, sheet
from calculators.writing import feet_inches


def lumen_layout_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """The room with its lights; the first spacing and the distance from the wall are dimensioned both ways."""
    long = values["length"]
    wide = values["width"]
    step = answer["spacing_along"]
    rise = answer["spacing_across"]
    shapes: list[Shape] = [rectangle(0.0, 0.0, long, wide, "paper", "cut")]
    for i in range(answer["along"]):
        for j in range(answer["across"]):
            shapes.append(circle((i + 0.5) * step, (j + 0.5) * rise, min(3.0, step / 4, rise / 4), "air", "outline"))
    shapes.append(dimension(0.0, 0.0, step / 2, rise / 2, feet_inches(step / 2, 0.5), "below"))
    if answer["along"] > 1:
        shapes.append(dimension(step / 2, rise / 2, step * 1.5, rise / 2, feet_inches(step, 0.5), "below"))
    shapes.append(dimension(0.0, 0.0, long, 0.0, feet_inches(long), "below"))
    shapes.append(dimension(0.0, 0.0, step / 2, rise / 2, feet_inches(rise / 2, 0.5), "left"))
    if answer["across"] > 1:
        shapes.append(dimension(step / 2, rise / 2, step / 2, rise * 1.5, feet_inches(rise, 0.5), "left"))
    shapes.append(dimension(0.0, 0.0, 0.0, wide, feet_inches(wide), "left"))
    count = answer["count"]
    alt = (
        f"A room of {feet_inches(long)} x {feet_inches(wide)} in plan with {count} lights, {answer['along']} by "
        f"{answer['across']}, {feet_inches(step, 0.5)} and {feet_inches(rise, 0.5)} apart, "
        f"{feet_inches(step / 2, 0.5)} and {feet_inches(rise / 2, 0.5)} from the walls."
    )
    return sheet("Lights in plan", alt, shapes)
