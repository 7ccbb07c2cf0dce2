"""Rooms and slabs as people describe them, and their area, way round and bounds.

A plan is one shape or several, parted by `;` or a line's end. Each may have a name and be taken off:

- `14' x 12'` is a rectangle.
- `corners 0,0 14',0 14',12' 0,12'` names the corners in turn, along the page and down it. A corner is written without
  spaces (`14'6",0`); a bare 0 needs no unit.
- `walls 14' right 12' right 14' right 12'` walks along the walls. A turn is square, or says its degrees
  (`left 45 10'`). The end must meet the start within 1/2 in for each 10 ft walked; the last wall then takes up
  the rest.
- `kitchen: 14' x 12'; less 3' x 2'` has a name, and a part taken off.

Every length has a unit, but for 0. Points are in inches, x along the page and y down it.
"""

from __future__ import annotations

from math import cos, pi, sin, sqrt
from typing import Any

from calculators.polygons import area_sq_ft as area_sq_ft
from calculators.polygons import bounds as bounds
from calculators.polygons import fault
from calculators.polygons import perimeter_in as perimeter_in
from calculators.reading import opening, read
from calculators.scanning import DIGITS, digits_end, fraction_at, plain, unreadable
from calculators.writing import decimal, feet_inches, inches

Points = list[list[float]]
Plan = list[dict[str, Any]]

CLOSES_WITHIN = 0.5 / 120
"""The gap allowed where walked walls meet, in inches for each inch walked: 1/2 in in 10 ft (common practice)."""

HOW = "write 14' x 12', corners 0,0 14',0 14',12' 0,12' or walls 14' right 12' right 14' right 12'"


def length_of(written: str, shape: str) -> float:
    """A length with its unit; only 0 may do without."""
    text = written.strip()
    head = opening(text)
    if not head["there"]:
        unreadable(shape, "is not a shape: " + HOW)
    number: float = head["number"]
    if head["words"] == "" and number != 0:
        unreadable(text, "has no unit: write " + text + "' or " + text + " in")
    return read(text, "length", "in")


def wall_of(text: str, shape: str) -> float:
    """A length of more than nothing."""
    length = length_of(text, shape)
    if length <= 0:
        unreadable(text.strip(), "is no length of a side: it must be more than 0")
    return length


def rectangle(text: str, shape: str) -> Points:
    """The corners of a rectangle written as `14' x 12'`."""
    sides = text.replace(" by ", "x").split("x")
    if len(sides) != 2:
        unreadable(shape, "is not a shape: " + HOW)
    along = wall_of(sides[0], shape)
    down = wall_of(sides[1], shape)
    return [[0.0, 0.0], [along, 0.0], [along, down], [0.0, down]]


def words_of(text: str) -> list[str]:
    """The words of a text, parted by spaces."""
    words = []
    for word in text.split(" "):
        if word != "":
            words.append(word)
    return words


def corners(text: str, shape: str) -> Points:
    """The corners written as `0,0 14',0 14',12' 0,12'`."""
    points = []
    for word in words_of(text):
        pair = word.split(",")
        if len(pair) != 2 or pair[0] == "" or pair[1] == "":
            unreadable(shape, "has a corner '" + word + "': write each corner without spaces, as 14'6\",0")
        points.append([length_of(pair[0], shape), length_of(pair[1], shape)])
    return points


def is_digits(text: str) -> bool:
    """Whether a text is digits alone."""
    return len(text) > 0 and digits_end(text, 0) == len(text)


def turn_in(words: list[str], shape: str) -> tuple[float, int]:
    """The degrees of a turn at the start of the words behind `left` or `right`, and how many words they are.

    A whole number is a turn when a length follows it: `45 10'`; but `12 1/2 in` is a length.
    """
    if len(words) < 2 or not is_digits(words[0]):
        return (90.0, 0)
    count = 1
    if words[1] == "deg":
        count = 2
    elif words[1][0] not in DIGITS or fraction_at(words[1], 0)[1] > 0:
        return (90.0, 0)
    degrees = float(words[0])
    if degrees < 15 or degrees > 165:
        unreadable(shape, "has a turn of " + words[0] + " degrees: a turn is from 15 to 165")
    return (degrees, count)


def step_to(point: list[float], heading: float, length: float) -> list[float]:
    """The point that lies a length away; headings of whole right angles are exact."""
    while heading < 0:
        heading = heading + 360
    while heading >= 360:
        heading = heading - 360
    along = cos(heading * pi / 180)
    down = sin(heading * pi / 180)
    if heading == 0 or heading == 180:
        down = 0.0
    if heading == 90 or heading == 270:
        along = 0.0
    return [point[0] + along * length, point[1] + down * length]


def walls(text: str, shape: str) -> Points:
    """The corners walked along walls written as `14' right 12' right 14' right 12'`."""
    points = [[0.0, 0.0]]
    heading = 0.0
    walked = 0.0
    turn = 0.0
    current: list[str] = []
    words = words_of(text)
    if len(words) > 0 and words[len(words) - 1] not in ["left", "right"]:
        words.append("right")
    for word in words:
        if word != "left" and word != "right":
            current.append(word)
            continue
        used = 0
        if turn != 0:
            degrees, used = turn_in(current, shape)
            heading = heading + turn * degrees
        if len(current) == used:
            unreadable(shape, "has a turn without a wall: " + HOW)
        length = wall_of(" ".join(current[used : len(current)]), shape)
        points.append(step_to(points[len(points) - 1], heading, length))
        walked = walked + length
        turn = -1.0 if word == "left" else 1.0
        current = []
    return closed(points, walked, shape)


def closed(points: Points, walked: float, shape: str) -> Points:
    """Walked corners whose end meets the start, without the end, moved so that the smallest x and y are 0."""
    along = points[len(points) - 1][0]
    down = points[len(points) - 1][1]
    gap = sqrt(along * along + down * down)
    if gap > walked * CLOSES_WITHIN:
        way = " (" + feet_inches(abs(along)) + " along and " + feet_inches(abs(down)) + " across)"
        end = "does not close: after " + feet_inches(walked) + " of walls the end is " + feet_inches(gap)
        allowed = inches(walked * CLOSES_WITHIN, 1 / 64)
        unreadable(shape, end + " from the start" + way + ", and " + allowed + " is allowed; measure again")
    low = bounds(points)
    moved = []
    for point in points[0 : len(points) - 1]:
        moved.append([point[0] - low[0], point[1] - low[1]])
    return moved


def read_shape(written: str) -> dict[str, Any]:
    """One shape with its name, whether it is taken off, and its corners in inches."""
    name = ""
    text = plain(written)
    colon = written.find(":")
    if colon >= 0:
        name = written[0:colon].strip()
        text = plain(written[colon + 1 : len(written)])
    less = False
    if name.lower().startswith("less "):
        less = True
        name = name[5 : len(name)].strip()
    if text.startswith("less "):
        less = True
        text = text[5 : len(text)].strip()
    shape = written.strip()
    if text.startswith("corners "):
        points = corners(text[8 : len(text)], shape)
    elif text.startswith("walls "):
        points = walls(text[6 : len(text)], shape)
    else:
        points = rectangle(text, shape)
    wrong = fault(points)
    if wrong != "":
        unreadable(shape, wrong)
    return {"name": name, "less": less, "points": points}


def read_plan(text: str) -> Plan:
    """A written plan as a list of shapes: `name`, `less` (taken off) and `points` in inches.

    >>> read_plan("kitchen: 14' x 12'; less 3' x 2'")[1]
    {'name': '', 'less': True, 'points': [[0.0, 0.0], [36.0, 0.0], [36.0, 24.0], [0.0, 24.0]]}
    """
    plan = []
    for piece in text.replace("\r", "").replace("\n", ";").split(";"):
        if piece.strip() != "":
            plan.append(read_shape(piece))
    if len(plan) == 0:
        unreadable(text, "is no plan: " + HOW)
    area = plan_area_sq_ft(plan)
    if area <= 0:
        unreadable(text, "takes off more than is there: " + decimal(area, 1) + " sq ft are left")
    return plan


def plan_area_sq_ft(plan: Plan) -> float:
    """The area of a plan in square feet: its shapes less those taken off.

    >>> plan_area_sq_ft(read_plan("kitchen: 14' x 12'; less 3' x 2'"))
    162.0
    """
    area = 0.0
    for shape in plan:
        area = area - area_sq_ft(shape["points"]) if shape["less"] else area + area_sq_ft(shape["points"])
    return area
