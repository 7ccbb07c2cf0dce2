"""Trim for rooms and openings: base, shoe, casing, stools and aprons, in feet, in cut lengths and in whole sticks."""

from __future__ import annotations

from typing import Annotated, Any, TypedDict

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, output_rows, refuse
from calculators.declaring import Help, calculator, choice, count, length, percent, plan, rows, text
from calculators.doors.trim_pieces import base_of, longest_wall, pieces_of, refuse_longer, run_of, sticks_for
from calculators.doors.trim_take_off_drawing import trim_take_off_drawing
from calculators.shapes import perimeter_in
from calculators.writing import decimal, feet_inches, inches


class TrimOpening(TypedDict):
    """A door or a window that is cased."""

    name: Annotated[str, text("Opening", default="")]
    kind: Annotated[str, choice("Kind", {"door": "Door or cased opening", "window": "Window"}, default="door")]
    width: Annotated[float, length("Width between the jambs", "30 in, from 6 in to 20 ft, usually 18 to 120 in")]
    height: Annotated[
        float,
        length("Height to the head jamb", "80 in, from 6 to 160 in, usually 24 to 96 in"),
        Help("From the finished floor; at a window from the stool, or from jamb to jamb."),
    ]
    sides: Annotated[float, count("Sides cased", "2, from 1 to 2")]
    count: Annotated[float, count("How many", "1, from 1 to 40")]


@calculator(
    title="Trim: what to order and cut",
    summary="Base, shoe and casing for these rooms and openings, in feet, in sticks, and as a list of pieces to cut.",
    outputs=(
        Output("walls", "Round the rooms", "length", "ft", step=0.1),
        Output("openings_off", "Doors with their casings", "length", "ft", step=0.1),
        Output("base", "Base, as it runs", "length", "ft", step=1, rounds="up"),
        Output("base_order", "Base to order", "length", "ft", step=1, rounds="up"),
        Output("base_sticks", "Sticks of base", "count", "sticks", step=1, rounds="up"),
        Output("shoe", "Shoe, as it runs", "length", "ft", step=1, rounds="up"),
        Output("shoe_order", "Shoe to order", "length", "ft", step=1, rounds="up"),
        Output("shoe_sticks", "Sticks of shoe", "count", "sticks", step=1, rounds="up"),
        Output("sides", "Sides to case", "count", "sides", step=1),
        Output("casing", "Casing, in pieces", "length", "ft", step=1, rounds="up"),
        Output("casing_fitted", "Sticks of casing that the pieces take", "count", "sticks", step=1, rounds="up"),
        Output("casing_sticks", "Sticks of casing to order", "count", "sticks", step=1, rounds="up"),
        Output("stool", "Stool, in pieces", "length", "ft", step=1, rounds="up"),
        Output("stool_order", "Stool to order", "length", "ft", step=1, rounds="up"),
        output_rows(
            "pieces",
            "To cut",
            Output("piece", "Piece", "text"),
            Output("count", "Count", "count", step=1),
            Output("length", "Long point to long point", "length", "in", step=1 / 16, rounds="up"),
            Output("stock", "Out of", "text"),
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
def trim_take_off(
    rooms: Annotated[
        list[dict[str, Any]],
        plan("Rooms", default=""),
        Help("Each room as one outline, so that no inner line is counted."),
    ],
    walls: Annotated[float, length("Wall already measured, beside the rooms", "0, from 0 to 5000 ft", instead="rooms")],
    openings: Annotated[list[dict[str, Any]], rows("Openings", TrimOpening, default="")],
    no_base: Annotated[
        float, length("Wall without base", "0, from 0 to 5000 ft"), Help("Cabinets, tubs, hearths, wide openings.")
    ],
    shoe_more: Annotated[
        float, length("Shoe where no base is", "0, from 0 to 5000 ft"), Help("Along toe kicks and hearths.")
    ],
    casing_width: Annotated[float, length("Width of the casing", "2-1/4 in, from 1/2 to 12 in, usually 2 to 5-1/2 in")],
    reveal: Annotated[
        float, length("Casing set back from the jamb's edge", "3/16 in, from 0 to 1 in, usually 1/8 to 5/16 in")
    ],
    window_trim: Annotated[
        str, choice("Windows", {"stool": "Stool and apron", "frame": "Casing on four sides"}, default="stool")
    ],
    horn: Annotated[
        float, length("Stool past the casing, each end", "3/4 in, from 0 to 4 in, usually 1/2 to 1-1/4 in")
    ],
    waste: Annotated[float, percent("Waste of base and shoe", "10 %, from 0 to 50 %, usually 5 to 15 %")],
    casing_spare: Annotated[float, percent("Spare of casing, beside the fitted sticks", "10 %, from 0 to 50 %")],
    base_stock: Annotated[float, length("Stick of base", "16 ft, from 4 to 24 ft")],
    shoe_stock: Annotated[float, length("Stick of shoe", "16 ft, from 4 to 24 ft")],
    casing_stock: Annotated[float, length("Stick of casing", "14 ft, from 4 to 24 ft")],
    kerf: Annotated[float, length("Saw kerf", "1/8 in, from 0 to 1/2 in")],
) -> Answer:
    """Base, shoe and casing for these rooms and openings.

    Lengths in inches, waste in percent. Base runs along every wall, less the openings that reach the floor with their
    casings on each counted side, less ``no_base``. Casing is counted by pieces, long point to long point, and fitted
    into whole sticks.

    >>> room = {"name": "den", "less": False, "points": [[0, 0], [144, 0], [144, 120], [0, 120]]}
    >>> door = {"name": "", "kind": "door", "width": 30, "height": 80, "sides": 1, "count": 1}
    >>> found = trim_take_off(rooms=[room], openings=[door])
    >>> found["walls"], found["openings_off"], found["base"], found["casing_fitted"]
    (528.0, 34.875, 493.125, 2)

    Source: perimeters and sums; the geometry of a mitred frame. Set-back of the casing: common practice.
    """
    total = walls
    longest = 0.0
    working = []
    cautions = []
    for room in rooms:
        name = room["name"] or "room"
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
        pieces.extend(pieces_of(opening, set_back, horn, window_trim == "stool"))
    working.append(
        f"casing {inches(casing_width)} wide, set back {inches(reveal)}: it reaches {inches(set_back)} past the jamb"
    )
    base = 0.0
    if total > 0:
        base = base_of(total, off + no_base, total - off - no_base)
        working.append(
            f"base: walls {feet_inches(total)}, less doors with casings {feet_inches(off)}, less"
            f" {feet_inches(no_base)} = {feet_inches(base)}"
        )
    shoe = base + shoe_more
    extra = 1 + waste / 100
    working.append(f"base to order: {feet_inches(base)} and {decimal(waste, 1)} % = {feet_inches(base * extra)}")

    cased = [piece for piece in pieces if piece["stock"] == "casing"]
    refuse_longer(cased, casing_stock)
    casing = run_of(cased)
    stool = run_of([piece for piece in pieces if piece["stock"] != "casing"])
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
