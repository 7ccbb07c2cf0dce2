"""A run of base cabinets from the front: cabinets, openings and fillers, to scale."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, label, line, polyline, rectangle, sheet
from calculators.writing import feet_inches, inches

HIGH = 34.5
KICK = 4.0
WALL_HIGH = 48.0
END = 6.0


def cabinet_run_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the floor at the left end of the wall; the cabinets are seen from the room."""
    wall = values["wall"]
    shapes: list[Shape] = []
    said: list[str] = []
    last = 0.0
    for row in answer["run"]:
        at = row["start"]
        wide = row["width"]
        last = at + wide
        said.append(f"{row['place']} {row['name']} {inches(wide)}")
        if row["kind"] == "filler":
            shapes.append(rectangle(at, 0.0, wide, HIGH, "wood", "outline"))
        elif row["kind"] == "opening":
            shapes.append(rectangle(at, 0.0, wide, HIGH, "none", "hidden"))
        else:
            shapes.append(rectangle(at, KICK, wide, HIGH - KICK, "paper", "outline"))
            shapes.append(line(at, 0.0, at, KICK, "fine"))
            shapes.append(line(at + wide, 0.0, at + wide, KICK, "fine"))
        if row["kind"] != "filler":
            shapes.append(label(at + wide / 2, HIGH / 2, f"{row['place']}", wide))
        shapes.append(dimension(at, 0.0, last, 0.0, inches(wide), "below"))
    shapes.append(line(0.0, 0.0, wall, 0.0, "cut"))
    if values["left"] == "wall":
        shapes.append(polyline([[0.0, 0.0], [0.0, WALL_HIGH]], "cut"))
    if values["right"] == "wall":
        shapes.append(polyline([[wall, 0.0], [wall, WALL_HIGH]], "cut"))
    shapes.append(dimension(0.0, 0.0, wall, 0.0, feet_inches(wall), "below"))
    alt = f"A wall {feet_inches(wall)} long from the front, from left to right, by place: {', '.join(said)}."
    return sheet("Cabinets along the wall", alt, shapes)
