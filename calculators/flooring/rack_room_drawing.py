"""The racking plan of a room to scale: the walls, the rows with every joint, and the sawn pieces at the walls."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, dimension, leader, line, polygon, rectangle, sheet
from calculators.flooring.racking.plan import turned
from calculators.polygons import bounds
from calculators.writing import feet_inches, inches


def rack_room_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """The plan with the starting wall below, so that row 1 is the lowest."""
    plan = turned(values["room"], values["along"])
    left, top, right, bottom = bounds([point for shape in plan for point in shape["points"]])
    shapes: list[Shape] = []
    for shape in plan:
        if not shape["less"]:
            shapes.append(polygon(shape["points"], "none", "cut"))
    for run in answer["row_list"]:
        end = run["start"] + run["length"]
        high = run["bottom"] - run["top"]
        places = [run["start"], *run["joints"], end]
        if run["sawn"][0]:
            shapes.append(rectangle(places[0], run["top"], places[1] - places[0], high, "concrete", "nothing"))
        if run["sawn"][1] and len(places) > 2:
            shapes.append(rectangle(places[-2], run["top"], end - places[-2], high, "concrete", "nothing"))
        shapes.append(line(run["start"], run["bottom"], end, run["bottom"], "fine"))
    for run in answer["row_list"]:
        for joint in run["joints"]:
            shapes.append(line(joint, run["top"], joint, run["bottom"], "outline"))
    for shape in plan:
        if shape["less"]:
            shapes.append(polygon(shape["points"], "paper", "cut"))
    first = answer["row_list"][0]
    shapes.append(leader(first["start"] + 6, (first["top"] + first["bottom"]) / 2, "row 1", "left"))
    shapes.append(dimension(left, top, right, top, feet_inches(right - left), "below"))
    shapes.append(dimension(right, top, right, bottom, feet_inches(bottom - top), "right"))
    rows = len({run["row"] for run in answer["row_list"]})
    joints = sum(len(run["joints"]) for run in answer["row_list"])
    alt = (
        f"Plan of a floor {feet_inches(right - left)} along the boards and {feet_inches(bottom - top)} across them: "
        f"{rows} rows with {joints} joints, none nearer than {inches(answer['closest'])} to one of the next row. Sawn "
        "pieces, drawn dark, stand at the walls alone."
    )
    return sheet("Racking plan", alt, shapes)
