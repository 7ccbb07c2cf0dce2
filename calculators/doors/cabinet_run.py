"""Cabinets along a wall: which widths that are sold, the openings for appliances, the filler that is left."""

from __future__ import annotations

from typing import Annotated, Any, TypedDict

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Output, output_rows, refuse
from calculators.declaring import Help, calculator, choice, length, rows, text
from calculators.doors.cabinet_run_drawing import cabinet_run_drawing
from calculators.writing import NOISE, TAPE, feet_inches, inches, tape, whole

WALL = "wall"


def chosen_widths(room: float, count: int, step: float) -> list[float]:
    """Widths in steps for so many cabinets that fill the room as far as they can, the wide ones first. Inches.

    >>> [chosen_widths(75, 2, 3.0), chosen_widths(80, 2, 3.0), chosen_widths(7, 1, 3.0), chosen_widths(75, 2, 1.5)]
    [[39.0, 36.0], [39.0, 39.0], [6.0], [37.5, 37.5]]
    """
    steps = whole(room / step, "down")
    each = whole(steps / count, "down")
    more = steps - each * count
    return [each * step + step if at < more else each * step for at in range(count)]


def read_pieces(pieces: list[dict[str, Any]]) -> None:
    """Refuse a list without pieces, and an opening without a width."""
    if len(pieces) == 0:
        refuse("pieces", "The list has no cabinet: give at least one.")
    if len(pieces) > 20:
        refuse("pieces", "More than 20 pieces in one run: give each wall a run of its own.")
    for piece in pieces:
        if piece["kind"] == "opening" and piece["width"] <= 0:
            refuse("pieces", f"The opening '{piece['name']}' has no width: the appliance's sheet gives it.")


def placed(
    pieces: list[dict[str, Any]], chosen: list[float], filler_left: float, filler_right: float
) -> list[dict[str, Any]]:
    """The pieces from left to right with their places, fillers among them; those without a width take the chosen ones.

    >>> placed([{"name": "Base", "kind": "cabinet", "width": 0.0}], [30.0], 2.0, 0.0)[1]["start"]
    2.0
    """
    filler = {"name": "Filler", "kind": "filler"}
    parts: list[dict[str, Any]] = []
    if filler_left > NOISE:
        parts.append({**filler, "width": filler_left})
    used = 0
    for piece in pieces:
        width = piece["width"]
        if width <= 0:
            width = chosen[used]
            used = used + 1
        parts.append({"name": piece["name"], "kind": piece["kind"], "width": width})
    if filler_right > NOISE:
        parts.append({**filler, "width": filler_right})
    run: list[dict[str, Any]] = []
    start = 0.0
    for part in parts:
        run.append({"place": len(run) + 1, **part, "start": start})
        start = start + part["width"]
    return run


ENDS = {"wall": "wall", "open": "open end"}


class RunPiece(TypedDict):
    """A cabinet, an appliance or an opening of the run."""

    name: Annotated[str, text("Piece")]
    kind: Annotated[
        str, choice("What it is", {"cabinet": "Cabinet", "opening": "Opening for an appliance"}, default="cabinet")
    ]
    width: Annotated[float, length("Width", "0, from 0 to 96 in, usually 0 to 48 in"), Help("0: to be chosen.")]


@calculator(
    title="Cabinets along a wall",
    summary="Which widths of cabinets fill a wall, where each begins, and the fillers left at the ends.",
    outputs=(
        Output("fits", "Fits", "yes-no"),
        output_rows(
            "run",
            "From the left",
            Output("place", "Place", "count", step=1),
            Output("name", "Piece", "text"),
            Output("width", "Width", "length", "in", step=1 / 16),
            Output("start", "Begins at", "length", "in", step=1 / 16),
        ),
        Output("filler_left", "Filler at the left", "length", "in", step=1 / 16, rounds="down"),
        Output("filler_right", "Filler at the right", "length", "in", step=1 / 16, rounds="down"),
        Output("cabinets", "Cabinets", "count", "each", step=1),
        Output("openings", "Openings for appliances", "count", "each", step=1),
        Output("taken", "Cabinets and openings together", "length", "ft-in", step=1 / 16),
    ),
    formula=(
        "Room = wall - what has a width - the least filler at each end that meets a wall. Steps = room / step of the "
        "widths, rounded down, shared among the cabinets to choose, the first ones wider. What is left goes into the "
        "fillers, half to each end that meets a wall."
    ),
    sources=(COMMON_PRACTICE, CREW_RULE),
    example={
        "wall": "12' 4\"",
        "pieces": [
            {"name": "Drawers", "kind": "cabinet", "width": "0 in"},
            {"name": "Dishwasher", "kind": "opening", "width": "24 in"},
            {"name": "Sink base", "kind": "cabinet", "width": "33 in"},
            {"name": "Base", "kind": "cabinet", "width": "0 in"},
            {"name": "Range", "kind": "opening", "width": "30 in"},
            {"name": "End base", "kind": "cabinet", "width": "0 in"},
        ],
    },
    other_names=("kitchen layout", "cabinet layout", "base cabinets", "filler", "cabinet widths"),
    cannot_decide=(
        "What the appliances need at their sides and behind: their sheets say. Room for doors that open in a corner, "
        "where outlets, water and the vent are, and what an accessible kitchen asks for, by the code of the place."
    ),
    drawing=cabinet_run_drawing,
)
def cabinet_run(
    pieces: Annotated[
        list[dict[str, Any]],
        rows("From left to right", RunPiece),
        Help("An opening takes the width that the appliance's sheet asks for."),
    ],
    wall: Annotated[
        float,
        length("Length of the wall", "10 ft, from 1 to 40 ft, usually 4 to 20 ft", "ft-in"),
        Help("The least of three readings."),
    ],
    left: Annotated[str, choice("At the left end", ENDS, default="wall")],
    right: Annotated[str, choice("At the right end", ENDS, default="wall")],
    filler_least: Annotated[float, length("Least filler at a wall", "1 in, from 0 to 6 in, usually 3/4 to 3 in")],
    filler_most: Annotated[float, length("Most filler at a wall", "3 in, from 1/2 to 12 in, usually 2 to 6 in")],
    narrowest: Annotated[float, length("Narrowest cabinet", "9 in, from 3 to 24 in, usually 9 to 15 in")],
    widest: Annotated[float, length("Widest cabinet to choose", "36 in, from 12 to 60 in, usually 30 to 48 in")],
    step: Annotated[float, length("Widths of cabinets come in steps of", "3 in, from 1/2 to 12 in, usually 1 to 6 in")],
) -> Answer:
    """Widths of the cabinets of one wall, and where each begins. Inches.

    ``pieces`` stand from left to right; a cabinet of width 0 is to be chosen. The cabinets to choose share the room
    in steps of ``step``, the wider ones first; what is left goes into the fillers, half to each.

    Source: arithmetic; widths in steps of 3 in are common practice.

    >>> sink = {"name": "Sink", "kind": "cabinet", "width": 33.0}
    >>> gap = {"name": "Dishwasher", "kind": "opening", "width": 24.0}
    >>> new = {"name": "Base", "kind": "cabinet", "width": 0.0}
    >>> answer = cabinet_run(pieces=[new, gap, sink, new], wall=124.0)
    >>> [[row["name"], row["width"], row["start"]] for row in answer["run"]][0:2]
    [['Filler', 2.0, 0.0], ['Base', 33.0, 2.0]]
    >>> [answer["filler_left"], answer["filler_right"], answer["cabinets"]]
    [2.0, 2.0, 3]
    """
    read_pieces(pieces)
    if filler_least > filler_most:
        refuse("filler_least", f"{inches(filler_least)} is more than the most, {inches(filler_most)}.")
    fixed: float = sum((piece["width"] for piece in pieces), 0.0)
    count = len([piece for piece in pieces if piece["width"] <= 0])
    walls = len([end for end in [left, right] if end == WALL])
    room = wall - fixed - walls * filler_least
    if room < -NOISE:
        refuse(
            "wall",
            f"What has a width takes {feet_inches(fixed)} and the fillers {inches(walls * filler_least)}: the wall is "
            f"{feet_inches(wall)}.",
        )
    widths: list[float] = []
    if count > 0:
        widths = chosen_widths(room, count, step)
        if widths[count - 1] < narrowest - TAPE:
            refuse(
                "pieces",
                f"{inches(room)} is left for {count} to choose; the least is {inches(narrowest)}: take one out.",
            )
    taken = sum(widths, fixed)
    rest = wall - taken
    filler_left = rest / max(1, walls) if left == WALL else 0.0
    filler_right = rest / max(1, walls) if right == WALL else 0.0
    cabinets = len([piece for piece in pieces if piece["kind"] == "cabinet"])
    ends = max(filler_left, filler_right)
    open_end = rest if walls == 0 else 0.0
    cautions: list[str] = []
    if count > 0 and widths[0] > widest + TAPE:
        cautions.append(f"A cabinet {tape(widths[0])} wide is over {inches(widest)}: put one more into the list.")
    elif ends > filler_most + TAPE:
        cautions.append(f"A filler of {tape(ends)}: the most is {inches(filler_most)}. Move it, or add a cabinet.")
    if open_end > NOISE:
        cautions.append(f"Both ends are open: the run is {inches(open_end)} shorter than its place.")
    return {
        "run": placed(pieces, widths, filler_left, filler_right),
        "filler_left": filler_left,
        "filler_right": filler_right,
        "cabinets": cabinets,
        "openings": len(pieces) - cabinets,
        "taken": taken,
        "fits": len(cautions) == 0,
        "cautions": cautions,
        "working": [
            f"with a width: {feet_inches(fixed)}; fillers at least: {walls} x {inches(filler_least)}",
            f"room for {count} to choose: {feet_inches(wall)} - {feet_inches(fixed)} - {inches(walls * filler_least)}"
            f" = {feet_inches(room)}",
            f"in all {feet_inches(taken)}; left for fillers: {inches(rest)}",
        ],
    }
