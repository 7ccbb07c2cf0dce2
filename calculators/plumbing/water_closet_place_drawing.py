"""A water closet from above: the distances of the flange's centre, and what the code asks for."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, arc_points, break_line, circle, dimension, label, line, polygon, rectangle, sheet
from calculators.plumbing.checks import FRONT, side_limit
from calculators.writing import tape

WALL = 4.5
BOWL = 7.0
"""Half of a bowl's width."""
TANK = 9.0
TANK_DEEP = 8.0
BEHIND = 0.5
"""Between tank and wall at the bowl's own rough-in."""
FLANGE = 3.5
FAR = 54.0
"""What stands further away is drawn this far, behind a break."""


def water_closet_place_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the centre of the flange; the back wall is above, the clear floor below. Walls stand as finished."""
    left = values["left"]
    right = values["right"]
    if values["left_is"] == "wall":
        left = left - values["side_to_add"]
    if values["right_is"] == "wall":
        right = right - values["side_to_add"]
    back = answer["finished_rough_in"]
    nose = values["nose"]
    front = min(values["front"], nose + FAR)
    asked = FRONT[values["code"]]
    shapes: list[Shape] = []
    at_left = min(left, FAR)
    at_right = min(right, FAR)
    shapes.append(rectangle(-at_left - WALL, back, at_left + at_right + 2 * WALL, WALL, "wood", "cut"))
    low = -max(front, nose + asked)
    beside(shapes, -1.0, left, values["left_is"], low, back)
    beside(shapes, 1.0, right, values["right_is"], low, back)
    if values["front"] > front:
        shapes.append(break_line(-at_left, -front, at_right, -front))
    else:
        shapes.append(line(-at_left, -front, at_right, -front, "cut"))
    tank = values["bowl_rough_in"] - BEHIND
    shapes.append(rectangle(-TANK, tank - TANK_DEEP, 2 * TANK, TANK_DEEP, "paper", "outline"))
    outline = arc_points(0.0, -nose + 10.0, BOWL, 10.0, 180.0, 360.0)
    outline.append([BOWL - 1.5, tank - TANK_DEEP])
    outline.append([1.5 - BOWL, tank - TANK_DEEP])
    shapes.append(polygon(outline, "paper", "outline"))
    shapes.append(circle(0.0, 0.0, FLANGE, "none", "hidden"))
    shapes.append(line(0.0, -nose - 2.0, 0.0, back, "centre"))
    shapes.append(line(-at_left, 0.0, at_right, 0.0, "centre"))
    shapes.append(line(-BOWL - 3.0, -nose - asked, BOWL + 3.0, -nose - asked, "limit"))
    shapes.append(dimension(-at_left, low, 0.0, 0.0, tape(left), "below"))
    shapes.append(dimension(0.0, 0.0, at_right, low, tape(right), "below"))
    shapes.append(dimension(at_right, back, 0.0, 0.0, tape(back), "right"))
    shapes.append(dimension(0.0, -nose, at_right, -front, "clear " + tape(answer["front_clear"]), "right"))
    shapes.append(dimension(-BOWL, -nose, -BOWL - 3.0, -nose - asked, "at least " + tape(asked), "left"))
    shapes.append(label(0.0, -nose + 9.0, "bowl"))
    alt = (
        f"From above: the flange's centre is {tape(left)} from the {values['left_is']} at its left, {tape(right)} "
        f"from the {values['right_is']} at its right and {tape(back)} from the finished wall behind. In front of the "
        f"bowl {tape(answer['front_clear'])} are clear; at least {tape(asked)} are asked for. Heavy dashes "
        f"show the least distances. The place {answer['result']}."
    )
    return sheet("Place of the water closet", alt, shapes)


def beside(shapes: list[Shape], side: float, away: float, what: str, low: float, back: float) -> None:
    """The wall or the next fixture at one side, and the least distance to it."""
    least = side_limit(what)
    if what == "fixture" and away <= FAR:
        shapes.append(circle(side * away, 0.0, FLANGE, "none", "hidden"))
        shapes.append(line(side * away, low, side * away, back, "centre"))
    elif away > FAR:
        shapes.append(break_line(side * FAR, low, side * FAR, back))
    else:
        x = min(side * away, side * (away + WALL))
        shapes.append(rectangle(x, low, WALL, back - low, "wood", "cut"))
    shapes.append(line(side * least, -8.0, side * least, 8.0, "limit"))
