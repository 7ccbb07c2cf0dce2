"""Trim for rooms and openings: base, shoe, casing, stools and aprons, in feet, in cut lengths and in whole sticks."""

from __future__ import annotations

from math import sqrt
from typing import Any

from calculators.declaration import (
    COMMON_PRACTICE,
    CREW_RULE,
    Answer,
    Calculator,
    Choice,
    Citation,
    Input,
    Output,
    refuse,
)
from calculators.doors.trim_take_off_drawing import trim_take_off_drawing
from calculators.shapes import perimeter_in
from calculators.writing import NOISE, decimal, feet_inches, inches, whole

FOOT = 12.0


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


def longest_first(pieces: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The pieces by length, the longest first; of the same length, as they came."""
    order: list[dict[str, Any]] = []
    for piece in pieces:
        longer = []
        shorter = []
        length: float = piece["length"]
        for other in order:
            if other["length"] >= length:
                longer.append(other)
            else:
                shorter.append(other)
        longer.append(piece)
        for other in shorter:
            longer.append(other)
        order = longer
    return order


def sticks_for(pieces: list[dict[str, Any]], stock: float, kerf: float) -> int:
    """How many sticks the pieces take, longest first, each from the first stick that still has it. Inches.

    The saw takes ``kerf`` between two pieces. The least number of sticks may be one or two under this where there are
    many.

    >>> sticks_for([{"length": 83.0, "count": 4}, {"length": 35.0, "count": 2}], 168, 0.125)
    3
    """
    left: list[float] = []
    for piece in longest_first(pieces):
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
    name = opening["name"].strip()
    if name == "":
        name = opening["kind"]
    times = opening["count"] * opening["sides"]
    across = opening["width"] + 2 * set_back
    leg = opening["height"] + set_back
    if opening["kind"] == "door":
        return [
            {"piece": f"{name}: leg", "count": 2 * times, "length": leg, "stock": "casing"},
            {"piece": f"{name}: head", "count": times, "length": across, "stock": "casing"},
        ]
    if stool:
        return [
            {"piece": f"{name}: leg", "count": 2 * times, "length": leg, "stock": "casing"},
            {"piece": f"{name}: head", "count": times, "length": across, "stock": "casing"},
            {"piece": f"{name}: apron", "count": times, "length": across, "stock": "casing"},
            {"piece": f"{name}: stool", "count": times, "length": across + 2 * horn, "stock": "stool"},
        ]
    return [
        {"piece": f"{name}: leg", "count": 2 * times, "length": leg + set_back, "stock": "casing"},
        {"piece": f"{name}: head and bottom", "count": 2 * times, "length": across, "stock": "casing"},
    ]


def trim_take_off(
    rooms: list[dict[str, Any]],
    walls: float,
    openings: list[dict[str, Any]],
    no_base: float,
    shoe_more: float,
    casing_width: float,
    reveal: float,
    window_trim: str,
    horn: float,
    waste: float,
    casing_spare: float,
    base_stock: float,
    shoe_stock: float,
    casing_stock: float,
    kerf: float,
) -> Answer:
    """Base, shoe and casing for these rooms and openings.

    Lengths in inches, waste in percent. Base runs along every wall, less the openings that reach the floor with their
    casings on each counted side, less ``no_base``. Casing is counted by pieces, long point to long point, and fitted
    into whole sticks.

    >>> room = {"name": "den", "less": False, "points": [[0, 0], [144, 0], [144, 120], [0, 120]]}
    >>> door = {"name": "", "kind": "door", "width": 30, "height": 80, "sides": 1, "count": 1}
    >>> found = trim_take_off(
    ...     [room], 0, [door], 0, 0, 2.25, 0.1875, "stool", 0.75, 10, 10, 192, 192, 168, 0.125
    ... )
    >>> found["walls"], found["openings_off"], found["base"], found["casing_fitted"]
    (528.0, 34.875, 493.125, 2)

    Source: perimeters and sums; the geometry of a mitred frame. Set-back of the casing: common practice.
    """
    total = walls
    longest = 0.0
    working = []
    cautions = []
    for room in rooms:
        name = room["name"]
        if name == "":
            name = "room"
        if room["less"]:
            cautions.append(
                f"'less {name}' takes nothing off the walls: where no base runs, put that length into 'Wall without"
                " base'."
            )
        else:
            around = perimeter_in(room["points"])
            total = total + around
            longest = max(longest, longest_wall(room["points"]))
            working.append(f"round {name}: {feet_inches(around)}")
    if total <= 0 and len(openings) == 0:
        refuse("rooms", "there is nothing to trim: give rooms, a length of wall, or openings")

    set_back = reveal + casing_width
    off = 0.0
    sides = 0
    pieces: list[dict[str, Any]] = []
    for opening in openings:
        times = opening["count"] * opening["sides"]
        sides = sides + times
        if opening["kind"] == "door":
            off = off + times * (opening["width"] + 2 * set_back)
        for piece in pieces_of(opening, set_back, horn, window_trim == "stool"):
            pieces.append(piece)
    working.append(
        f"casing {inches(casing_width)} wide, set back {inches(reveal)}: it reaches {inches(set_back)} past the jamb"
    )
    base = 0.0
    if total > 0:
        base = total - off - no_base
        if base < -NOISE:
            refuse(
                "openings",
                f"openings and wall without base come to {feet_inches(off + no_base)}, and there are only"
                f" {feet_inches(total)} of walls",
            )
        base = max(0.0, base)
        working.append(
            f"base: walls {feet_inches(total)}, less doors with casings {feet_inches(off)}, less"
            f" {feet_inches(no_base)} = {feet_inches(base)}"
        )
    shoe = base + shoe_more
    extra = 1 + waste / 100
    working.append(f"base to order: {feet_inches(base)} and {decimal(waste, 1)} % = {feet_inches(base * extra)}")

    cased: list[dict[str, Any]] = []
    casing = 0.0
    stool = 0.0
    for piece in pieces:
        if piece["stock"] == "casing":
            if piece["length"] > casing_stock + NOISE:
                refuse(
                    "casing_stock",
                    f"'{piece['piece']}' is {feet_inches(piece['length'])} long and does not come out of a stick of"
                    f" {feet_inches(casing_stock)}",
                )
            cased.append(piece)
            casing = casing + piece["count"] * piece["length"]
        else:
            stool = stool + piece["count"] * piece["length"]
    fitted = sticks_for(cased, casing_stock, kerf)
    working.append(
        f"casing: {feet_inches(casing)} in pieces, fitted longest first into {fitted} sticks of"
        f" {feet_inches(casing_stock)}, and {decimal(casing_spare, 1)} % spare"
    )
    if longest > base_stock:
        cautions.append(
            f"The longest wall, {feet_inches(longest)}, is longer than a stick of base, {feet_inches(base_stock)}: plan"
            " a scarf over a stud."
        )
    if casing_width < reveal:
        cautions.append("The reveal is wider than the casing.")
    return {
        "walls": total,
        "openings_off": off,
        "base": base,
        "base_order": base * extra,
        "base_sticks": base * extra / base_stock,
        "shoe": shoe,
        "shoe_order": shoe * extra,
        "shoe_sticks": shoe * extra / shoe_stock,
        "sides": sides,
        "casing": casing,
        "casing_fitted": fitted,
        "casing_sticks": fitted * (1 + casing_spare / 100),
        "stool": stool,
        "stool_order": stool * (1 + casing_spare / 100),
        "pieces": pieces,
        "cautions": cautions,
        "working": working,
    }


CALCULATOR = Calculator(
    name="trim-take-off",
    title="Trim: what to order and cut",
    trade="doors",
    summary="Base, shoe and casing for these rooms and openings, in feet, in sticks, and as a list of pieces to cut.",
    function=trim_take_off,
    inputs=(
        Input("rooms", "Rooms", "plan", default=[], help="Each room as one outline, so that no inner line is counted."),
        Input("walls", "Wall already measured, beside the rooms", "length", "ft", 0.0, 0.0, 60000.0, instead="rooms"),
        Input(
            "openings",
            "Openings",
            "rows",
            default=[],
            columns=(
                Input("name", "Opening", "text", default=""),
                Input(
                    "kind",
                    "Kind",
                    "choice",
                    default="door",
                    choices=(Choice("door", "Door or cased opening"), Choice("window", "Window")),
                ),
                Input("width", "Width between the jambs", "length", "in", 30.0, 6.0, 240.0, (18.0, 120.0)),
                Input(
                    "height",
                    "Height to the head jamb",
                    "length",
                    "in",
                    80.0,
                    6.0,
                    160.0,
                    (24.0, 96.0),
                    help="From the finished floor; at a window from the stool, or from jamb to jamb.",
                ),
                Input("sides", "Sides cased", "count", "", 2.0, 1.0, 2.0),
                Input("count", "How many", "count", "", 1.0, 1.0, 40.0),
            ),
        ),
        Input(
            "no_base",
            "Wall without base",
            "length",
            "ft",
            0.0,
            0.0,
            60000.0,
            help="Cabinets, tubs, hearths, wide openings.",
        ),
        Input(
            "shoe_more",
            "Shoe where no base is",
            "length",
            "ft",
            0.0,
            0.0,
            60000.0,
            help="Along toe kicks and hearths.",
        ),
        Input("casing_width", "Width of the casing", "length", "in", 2.25, 0.5, 12.0, (2.0, 5.5)),
        Input("reveal", "Casing set back from the jamb's edge", "length", "in", 0.1875, 0.0, 1.0, (0.125, 0.3125)),
        Input(
            "window_trim",
            "Windows",
            "choice",
            default="stool",
            choices=(Choice("stool", "Stool and apron"), Choice("frame", "Casing on four sides")),
        ),
        Input("horn", "Stool past the casing, each end", "length", "in", 0.75, 0.0, 4.0, (0.5, 1.25)),
        Input("waste", "Waste of base and shoe", "percent", "%", 10.0, 0.0, 50.0, (5.0, 15.0)),
        Input("casing_spare", "Spare of casing, beside the fitted sticks", "percent", "%", 10.0, 0.0, 50.0),
        Input("base_stock", "Stick of base", "length", "ft", 192.0, 48.0, 288.0),
        Input("shoe_stock", "Stick of shoe", "length", "ft", 192.0, 48.0, 288.0),
        Input("casing_stock", "Stick of casing", "length", "ft", 168.0, 48.0, 288.0),
        Input("kerf", "Saw kerf", "length", "in", 0.125, 0.0, 0.5),
    ),
    outputs=(
        Output("walls", "Round the rooms", "length", "ft", 0.1),
        Output("openings_off", "Doors with their casings", "length", "ft", 0.1),
        Output("base", "Base, as it runs", "length", "ft", 1.0, "up"),
        Output("base_order", "Base to order", "length", "ft", 1.0, "up"),
        Output("base_sticks", "Sticks of base", "count", "sticks", 1.0, "up"),
        Output("shoe", "Shoe, as it runs", "length", "ft", 1.0, "up"),
        Output("shoe_order", "Shoe to order", "length", "ft", 1.0, "up"),
        Output("shoe_sticks", "Sticks of shoe", "count", "sticks", 1.0, "up"),
        Output("sides", "Sides to case", "count", "sides", 1.0),
        Output("casing", "Casing, in pieces", "length", "ft", 1.0, "up"),
        Output("casing_fitted", "Sticks of casing that the pieces take", "count", "sticks", 1.0, "up"),
        Output("casing_sticks", "Sticks of casing to order", "count", "sticks", 1.0, "up"),
        Output("stool", "Stool, in pieces", "length", "ft", 1.0, "up"),
        Output("stool_order", "Stool to order", "length", "ft", 1.0, "up"),
        Output(
            "pieces",
            "To cut",
            "rows",
            columns=(
                Output("piece", "Piece", "text"),
                Output("count", "Count", "count", step=1),
                Output("length", "Long point to long point", "length", "in", 0.0625, "up"),
                Output("stock", "Out of", "text"),
            ),
        ),
    ),
    formula=(
        "Base = round the rooms - sum over sides of doors (width + 2 x (reveal + casing)) - wall without base. Shoe = "
        "base + shoe where no base is. To order: x (1 + waste).\n\n"
        "Door: leg = height + reveal + casing; head = width + 2 x (reveal + casing), at the long points. Window with a "
        "stool: the same, the apron as long as the head, the stool two horns longer. Casing on four sides: leg = "
        "height + 2 x (reveal + casing).\n\n"
        "Sticks of casing: pieces longest first, each out of the first stick that still has it, a kerf at each cut."
    ),
    sources=(
        Citation("bin-packing-bound", "first fit by length: at most 11/9 of the least, and 6/9 of a stick"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={
        "rooms": "bedroom: 12' x 11'; hall: 14' x 3' 6\"",
        "openings": [
            {"name": "Bedroom", "kind": "door", "width": "30", "height": "80", "sides": "2", "count": "1"},
            {"name": "Closet", "kind": "door", "width": "48", "height": "80", "sides": "1", "count": "1"},
            {"name": "Window", "kind": "window", "width": "36", "height": "48", "sides": "1", "count": "2"},
        ],
    },
    other_names=("baseboard estimate", "casing estimate", "molding list", "trim cut list", "how much baseboard"),
    cannot_decide=(
        "What is out of square or out of plumb: pieces are cut to the opening as it stands, and this list is what to "
        "order and to rough-cut. The least number of sticks, proved, is the [](calculator:cut-list)'s."
    ),
    drawing=trim_take_off_drawing,
)
