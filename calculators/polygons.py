"""Area, way round and bounds of a polygon of points in inches, and what can be wrong with one."""

from __future__ import annotations

from math import sqrt

Points = list[list[float]]


def area_sq_ft(points: Points) -> float:
    """The area in square feet, by the surveyor's cross products; the direction of the corners does not matter.

    >>> area_sq_ft([[0, 0], [168, 0], [168, 144], [0, 144]])
    168.0
    """
    twice = 0.0
    last = points[len(points) - 1]
    for point in points:
        twice = twice + last[0] * point[1] - point[0] * last[1]
        last = point
    return abs(twice) / 288


def perimeter_in(points: Points) -> float:
    """The way round in inches.

    >>> perimeter_in([[0, 0], [168, 0], [168, 144], [0, 144]])
    624.0
    """
    way = 0.0
    last = points[len(points) - 1]
    for point in points:
        along = point[0] - last[0]
        down = point[1] - last[1]
        way = way + sqrt(along * along + down * down)
        last = point
    return way


def bounds(points: Points) -> tuple[float, float, float, float]:
    """The smallest x and y and the largest x and y.

    >>> bounds([[0, 0], [168, 0], [168, 144]])
    (0, 0, 168, 144)
    """
    left, top = points[0][0], points[0][1]
    right, bottom = left, top
    for point in points:
        left = min(left, point[0])
        top = min(top, point[1])
        right = max(right, point[0])
        bottom = max(bottom, point[1])
    return (left, top, right, bottom)


def side_of(start: list[float], end: list[float], point: list[float]) -> float:
    """Above 0 on the one side of a line, below 0 on the other, 0 on it."""
    return (end[0] - start[0]) * (point[1] - start[1]) - (end[1] - start[1]) * (point[0] - start[0])


def is_between(start: list[float], end: list[float], point: list[float]) -> bool:
    """Whether a point that is on a line lies between the two ends."""
    across = min(start[0], end[0]) <= point[0] <= max(start[0], end[0])
    return across and min(start[1], end[1]) <= point[1] <= max(start[1], end[1])


def meet(a: list[float], b: list[float], c: list[float], d: list[float]) -> bool:
    """Whether the sides a-b and c-d cross or touch."""
    with_c = side_of(a, b, c)
    with_d = side_of(a, b, d)
    with_a = side_of(c, d, a)
    with_b = side_of(c, d, b)
    if with_c * with_d < 0 and with_a * with_b < 0:
        return True
    if with_c == 0 and is_between(a, b, c):
        return True
    if with_d == 0 and is_between(a, b, d):
        return True
    if with_a == 0 and is_between(c, d, a):
        return True
    return with_b == 0 and is_between(c, d, b)


def folds_back(before: list[float], corner: list[float], after: list[float]) -> bool:
    """Whether the side after a corner runs back over the side before it."""
    ahead = (corner[0] - before[0]) * (after[0] - corner[0]) + (corner[1] - before[1]) * (after[1] - corner[1])
    return side_of(before, corner, after) == 0 and ahead < 0


def following(points: Points, at: int) -> list[float]:
    """The corner after one; after the last comes the first."""
    return points[at + 1] if at + 1 < len(points) else points[at + 1 - len(points)]


def fault(points: Points) -> str:
    """What keeps the points from being a shape with an inside; nothing for a sound one.

    >>> fault([[0, 0], [12, 12], [12, 0], [0, 12]])
    'crosses itself: side 1 meets side 3'
    """
    count = len(points)
    if count < 3:
        return "has fewer than three corners"
    for i in range(count):
        after = following(points, i)
        if points[i][0] == after[0] and points[i][1] == after[1]:
            return "has the same corner twice running"
    for i in range(count):
        start = points[i]
        end = following(points, i)
        if folds_back(start, end, following(points, i + 1)):
            return "runs back over itself at side " + str(i + 1)
        for j in range(i + 2, count):
            if (i > 0 or j < count - 1) and meet(start, end, points[j], following(points, j)):
                return "crosses itself: side " + str(i + 1) + " meets side " + str(j + 1)
    return ""
