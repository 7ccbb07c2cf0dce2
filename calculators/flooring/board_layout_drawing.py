"""A strip floor from above: the start line, the rows, the first and the last one."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, label, leader, line, polygon, sheet
from calculators.writing import decimal, feet_inches, inches

NEAR = 0.01
"""Of the room's longer side: rows narrower than that would run into one black, and only a few are drawn."""
FEW_ROWS = 6


def board_layout_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the near corner at the wall where the floor starts; x runs along the rows, to the far end."""
    length = values["room_length"]
    gap = values["gap"]
    face = values["face_width"]
    near = values["width_near"]
    far = values["width_far"]
    if far == 0:
        far = near
    rows = answer["rows"]
    full = answer["full_rows"]
    start_near = answer["line_near"]
    start_far = answer["line_far"]
    end_near = start_near + full * face
    end_far = start_far + full * face
    x1 = gap
    x2 = length - gap
    shapes: list[Shape] = [
        polygon([[0.0, 0.0], [length, 0.0], [length, far], [0.0, near]], "none", "cut"),
        polygon([[x1, gap], [x2, gap], [x2, start_far], [x1, start_near]], "wood", "outline"),
        polygon([[x1, end_near], [x2, end_far], [x2, far - gap], [x1, near - gap]], "wood", "outline"),
    ]
    for i in range(1, full):
        if face > NEAR * max(length, near) or i <= FEW_ROWS or i >= full - FEW_ROWS:
            shapes.append(line(x1, start_near + i * face, x2, start_far + i * face, "fine"))
    shapes.append(line(0.0, start_near, length, start_far, "limit"))
    shapes.append(dimension(0.0, gap, 0.0, start_near, "first " + inches(answer["first_near"]), "left"))
    shapes.append(dimension(0.0, end_near, 0.0, near - gap, "last " + inches(answer["last_near"]), "left"))
    shapes.append(dimension(0.0, 0.0, 0.0, near, feet_inches(near), "left"))
    shapes.append(dimension(length, gap, length, start_far, "first " + inches(answer["first_far"]), "right"))
    shapes.append(dimension(length, end_far, length, far - gap, "last " + inches(answer["last_far"]), "right"))
    shapes.append(dimension(length, 0.0, length, far, feet_inches(far), "right"))
    shapes.append(dimension(0.0, 0.0, length, 0.0, feet_inches(length), "below"))
    shapes.append(leader(length * 0.3, start_near + (start_far - start_near) * 0.3, "start line", "below"))
    shapes.append(
        label(length / 2, (near + far) / 4, f"{decimal(full, 0)} full rows of {inches(face)}", length, "above")
    )
    alt = (
        f"A floor of {decimal(rows, 0)} rows, {feet_inches(length)} long. The room is {feet_inches(near)} wide at the "
        f"near end and {feet_inches(far)} at the far end. The first row is {inches(answer['first_near'])} near and "
        f"{inches(answer['first_far'])} far, then {decimal(full, 0)} rows of {inches(face)}, and the last row "
        f"{inches(answer['last_near'])} near and {inches(answer['last_far'])} far. The start line is "
        f"{inches(start_near)} from the wall near and {inches(start_far)} far; gaps of {inches(gap)} at the walls."
    )
    return sheet("First and last row", alt, shapes)
