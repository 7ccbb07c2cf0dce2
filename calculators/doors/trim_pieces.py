"""The pieces of trim round openings and rooms, and the sticks that they take. Lengths in inches."""

from __future__ import annotations

from math import sqrt
from typing import Any

from calculators.declaration import refuse
from calculators.writing import NOISE, feet_inches, whole


def longest_wall(points: list[list[float]]) -> float:
    """The longest side of an outline, in inches.

    >>> longest_wall([[0, 0], [240, 0], [240, 192], [0, 192]])
    240.0
    """
    longest = 0.0
    before = points[len(points) - 1]
    for point in points:
        along = point[0] - before[0]
        across = point[1] - before[1]
        longest = max(longest, sqrt(along * along + across * across))
        before = point
    return longest


def sticks_for(pieces: list[dict[str, Any]], stock: float, kerf: float) -> int:
    """How many sticks the pieces take, longest first, each from the first stick that still has it. Inches.

    The saw takes ``kerf`` between two pieces. The least number of sticks may be one or two under this where there are
    many.

    >>> sticks_for([{"length": 83.0, "count": 4}, {"length": 35.0, "count": 2}], 168, 0.125)
    3
    """
    longest_first: list[dict[str, Any]] = []
    for piece in pieces:
        length: float = piece["length"]
        longest_first.insert(len([one for one in longest_first if one["length"] >= length]), piece)
    left: list[float] = []
    for piece in longest_first:
        need = piece["length"] + kerf
        wanted = whole(piece["count"], "nearest")
        for at in range(len(left)):
            taken = min(wanted, whole(left[at] / need, "down"))
            left[at] = left[at] - taken * need
            wanted = wanted - taken
        a_stick = max(1, whole((stock + kerf) / need, "down"))
        while wanted > 0:
            taken = min(wanted, a_stick)
            left.append(stock + kerf - taken * need)
            wanted = wanted - taken
    return len(left)


def pieces_of(opening: dict[str, Any], set_back: float, horn: float, stool: bool) -> list[dict[str, Any]]:
    """The pieces round one opening with counts and lengths, long points where they are mitred. Inches.

    ``set_back`` is the reveal and the width of the casing together: so far the casing reaches past the jamb.

    >>> door = {"name": "Bath", "kind": "door", "width": 30, "height": 80, "sides": 2, "count": 1}
    >>> [[piece["piece"], piece["count"], piece["length"]] for piece in pieces_of(door, 2.4375, 0.75, True)]
    [['Bath: leg', 4, 82.4375], ['Bath: head', 2, 34.875]]
    """
    name = opening["name"].strip() or opening["kind"]
    times = opening["count"] * opening["sides"]
    across = opening["width"] + 2 * set_back
    leg = opening["height"] + set_back
    if opening["kind"] == "window" and not stool:
        return [
            {"piece": f"{name}: leg", "count": 2 * times, "length": leg + set_back, "stock": "casing"},
            {"piece": f"{name}: head and bottom", "count": 2 * times, "length": across, "stock": "casing"},
        ]
    pieces = [
        {"piece": f"{name}: leg", "count": 2 * times, "length": leg, "stock": "casing"},
        {"piece": f"{name}: head", "count": times, "length": across, "stock": "casing"},
    ]
    if opening["kind"] == "window":
        pieces.append({"piece": f"{name}: apron", "count": times, "length": across, "stock": "casing"})
        pieces.append({"piece": f"{name}: stool", "count": times, "length": across + 2 * horn, "stock": "stool"})
    return pieces


def run_of(pieces: list[dict[str, Any]]) -> float:
    """The length of all pieces together, in inches."""
    return sum((piece["count"] * piece["length"] for piece in pieces), 0.0)


def refuse_longer(pieces: list[dict[str, Any]], stock: float) -> None:
    """Refuse a piece of casing that no stick gives. Inches."""
    for piece in pieces:
        if piece["length"] > stock + NOISE:
            refuse(
                "casing_stock",
                f"'{piece['piece']}' is {feet_inches(piece['length'])} long and does not come out of a stick of"
                f" {feet_inches(stock)}",
            )


def base_of(walls: float, without: float, left: float) -> float:
    """The base that is left of the walls, refused where what goes without base is more. Inches."""
    if left < -NOISE:
        refuse(
            "openings",
            f"openings and wall without base come to {feet_inches(without)}, and there are only"
            f" {feet_inches(walls)} of walls",
        )
    return max(0.0, left)
