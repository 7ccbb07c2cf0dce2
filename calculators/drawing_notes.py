"""What is written around a drawing: dimension lines in rows, leaders' texts in rows or in a column.

Each function puts its marks into what is placed already and moves its edges, so that nothing meets anything.
"""

from __future__ import annotations

from typing import Any

from calculators.drawing_text import LINE, SIZE, Placed, path, round_mark, stroke, text_width, wrapped, written

ROW = 17.5
"""From one dimension line to the next, with its text between."""
CLEAR = 8.0
"""From the outline to what stands around it."""
COLUMN = 92.0
"""Width of the column of leaders' texts."""
BETWEEN = 4.0


def meets(taken: list[list[float]], row: int, start: float, end: float) -> bool:
    """Whether something of that row stands between start and end."""
    found = False
    for each in taken:
        if each[0] == row and start < each[2] - 0.5 and each[1] < end - 0.5:
            found = True
    return found


def free_row(taken: list[list[float]], start: float, end: float) -> int:
    """The first row with nothing between start and end."""
    row = 0
    while meets(taken, row, start, end):
        row = row + 1
    return row


def place_dimensions(placed: Placed, dimensions: list[dict[str, Any]], side: str, wide: float, high: float) -> None:
    """Dimension lines of one side in rows, the first ones nearest. A text too long for its line stands beyond it.

    ``u`` runs along the lines (down, for those that measure up), ``v`` away from the outline.
    """
    upright = side == "left" or side == "right"
    axis = 0
    across = 1
    middle = wide / 2
    if upright:
        axis = 1
        across = 0
        middle = high / 2
    first = -CLEAR
    step = -ROW
    if side == "below":
        first = high + CLEAR + SIZE
        step = ROW
    if side == "right":
        first = wide + CLEAR + SIZE
        step = ROW
    taken: list[list[float]] = []
    for each in dimensions:
        start: list[float] = each["points"][0]
        end: list[float] = each["points"][1]
        if start[axis] > end[axis]:
            start, end = end, start
        u1 = start[axis]
        u2 = end[axis]
        long = text_width(each["text"])
        text_at = (u1 + u2) / 2
        if long + 6 > u2 - u1:
            text_at = u2 + 5 + long / 2 if text_at < middle else u1 - 5 - long / 2
        reach1 = min(u1, text_at - long / 2 - 3)
        reach2 = max(u2, text_at + long / 2 + 3)
        row = free_row(taken, reach1, reach2)
        taken.append([row, reach1, reach2])
        v = first + row * step
        away = -3.0 if step < 0 else 3.0
        for corner in [start, end]:
            if abs(v - corner[across]) > 6:
                dimension_stroke(placed, upright, corner[axis], corner[across] + away, corner[axis], v + away, "fine")
        if reach1 < u1:
            dimension_stroke(placed, upright, reach1, v, u2 + 3, v, "fine")
        elif reach2 > u2:
            dimension_stroke(placed, upright, u1 - 3, v, reach2, v, "fine")
        else:
            dimension_stroke(placed, upright, u1 - 3, v, u2 + 3, v, "fine")
        for u in [u1, u2]:
            dimension_stroke(placed, upright, u - 3, v + 3, u + 3, v - 3, "tick")
        if upright:
            placed["marks"].append(written(v - 3, text_at, each["text"], "middle", True))
            placed["top"] = min(placed["top"], reach1 - 5)
            placed["bottom"] = max(placed["bottom"], reach2 + 5)
            placed["left"] = min(placed["left"], v - 3 - SIZE)
            placed["right"] = max(placed["right"], v + 4)
        else:
            placed["marks"].append(written(text_at, v - 3, each["text"], "middle", False))
            placed["left"] = min(placed["left"], reach1 - 5)
            placed["right"] = max(placed["right"], reach2 + 5)
            placed["top"] = min(placed["top"], v - 3 - SIZE)
            placed["bottom"] = max(placed["bottom"], v + 4)


def dimension_stroke(placed: Placed, upright: bool, u1: float, v1: float, u2: float, v2: float, look: str) -> None:
    """A line by its place along and away from the outline."""
    if upright:
        placed["marks"].append(stroke(v1, u1, v2, u2, look))
    else:
        placed["marks"].append(stroke(u1, v1, u2, v2, look))


def in_order(items: list[dict[str, Any]], name: str) -> list[dict[str, Any]]:
    """The items from the least to the most of a figure; equal ones keep their order."""
    found: list[dict[str, Any]] = []
    for item in items:
        at = len(found)
        while at > 0 and found[at - 1][name] > item[name] + 0.01:
            at = at - 1
        found.insert(at, item)
    return found


def place_flags(placed: Placed, leaders: list[dict[str, Any]], side: str, wide: float) -> None:
    """Leaders' texts in rows above or below, each beside the upright line that points at its place.

    From the right to the left, in the nearest row where no line runs through a text.
    """
    edge = placed["top"] - 2
    away = -1.0
    if side == "below":
        edge = placed["bottom"] + 2
        away = 1.0
    taken: list[list[float]] = []
    ordered = in_order(leaders, "x")
    for i in range(len(ordered)):
        each = ordered[len(ordered) - 1 - i]
        long = text_width(each["text"]) + 4
        anchor = "start"
        start = each["x"]
        if start + long > wide + 20 and start - long > -20:
            start = each["x"] - long
            anchor = "end"
        row = 0
        while row < len(ordered) and not flag_fits(taken, row, start, start + long, each["x"]):
            row = row + 1
        taken.append([row, start, start + long, each["x"]])
        near = edge + away * row * (LINE + 1)
        far = near + away * LINE
        text_at = each["x"] - 4 if anchor == "end" else each["x"] + 4
        placed["marks"].append(stroke(each["x"], each["y"], each["x"], far, "fine"))
        placed["marks"].append(round_mark(each["x"], each["y"], 1.8, "dot", "solid"))
        placed["marks"].append(written(text_at, max(near, far) - 3, each["text"], anchor, False))
        placed["left"] = min(placed["left"], start)
        placed["right"] = max(placed["right"], start + long)
        placed["top"] = min(placed["top"], far)
        placed["bottom"] = max(placed["bottom"], far)


def flag_fits(taken: list[list[float]], row: int, start: float, end: float, x: float) -> bool:
    """Whether a text from start to end with its line at x crosses no text or line of the others. Rows count outwards.

    >>> flag_fits([[0, 50.0, 90.0, 50.0]], 0, 10.0, 40.0, 10.0), flag_fits([[0, 50.0, 90.0, 50.0]], 1, 60.0, 99.0, 60.0)
    (True, False)
    """
    if meets(taken, row, start - 3, end + 3):
        return False
    for each in taken:
        if each[0] < row and each[1] - 2 < x < each[2] + 2:
            return False
        if each[0] > row and start - 2 < each[3] < end + 2:
            return False
    return True


def place_column(placed: Placed, leaders: list[dict[str, Any]], side: str) -> None:
    """Leaders' texts one under the other beside the drawing, as near to the height of their places as they can.

    Of several at one height the nearest comes first, so that the lines to the others pass below it.
    """
    if len(leaders) == 0:
        return
    across = in_order(leaders, "x")
    if side == "right":
        across = [across[len(across) - 1 - i] for i in range(len(across))]
    ordered = in_order(across, "y")
    tops: list[float] = []
    reach = placed["top"]
    total = -BETWEEN
    for each in ordered:
        each["lines"] = wrapped(each["text"], COLUMN)
        total = total + len(each["lines"]) * LINE + BETWEEN
        top = max(each["y"] - len(each["lines"]) * LINE / 2, reach)
        tops.append(top)
        reach = top + len(each["lines"]) * LINE + BETWEEN
    limit = max(placed["bottom"], placed["top"] + total)
    for i in range(len(ordered)):
        at = len(ordered) - 1 - i
        high = len(ordered[at]["lines"]) * LINE
        tops[at] = min(tops[at], limit - high)
        limit = tops[at] - BETWEEN
    edge = placed["right"] + 8
    away = 1.0
    anchor = "start"
    if side == "left":
        edge = placed["left"] - 8
        away = -1.0
        anchor = "end"
    for i in range(len(ordered)):
        each = ordered[i]
        level = tops[i] + LINE / 2
        bend = [edge - away * 6, level]
        placed["marks"].append(path([[each["x"], each["y"]], bend, [edge - away * 2, level]], False, "fine", "none"))
        placed["marks"].append(round_mark(each["x"], each["y"], 1.8, "dot", "solid"))
        for j in range(len(each["lines"])):
            text = each["lines"][j]
            placed["marks"].append(written(edge, tops[i] + LINE * j + SIZE * 0.85, text, anchor, False))
            placed["left"] = min(placed["left"], edge - text_width(text))
            placed["right"] = max(placed["right"], edge + text_width(text))
        placed["bottom"] = max(placed["bottom"], tops[i] + LINE * len(each["lines"]))
