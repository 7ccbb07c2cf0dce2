"""Racking a room on paper: every row from wall to wall, before a bundle is opened.

The pile is either counted or drawn by lot. The search lays row after row so that no joint stands near one of the next
row, none lines up with one two rows away, none climbs like stairs, and next to nothing falls to the saw. Runs when the
book is built, not on the page.
"""

from __future__ import annotations

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
    Rule,
)
from calculators.flooring.rack_room_drawing import rack_room_drawing
from calculators.flooring.racking.pile import SIXTEENTHS
from calculators.flooring.racking.plan import Pile, Racked, rack, rules_of, turned
from calculators.flooring.racking.report import closest, cut_list, row_list
from calculators.writing import feet_inches, inches


def rack_room(
    room: list[dict[str, Any]],
    along: str,
    pile: list[dict[str, float]],
    average_length: float,
    shortest: float,
    longest: float,
    spare: float,
    seed: float,
    face_width: float,
    gap: float,
    least_row: float,
    end_joint: float,
    in_line: float,
    stair: float,
    least_piece: float,
    kerf: float,
) -> Answer:
    """Every row of a room from this pile, with the cut list and the waste. Lengths in inches.

    A lawful floor: a joint is at least ``end_joint`` from those of the next rows; no joint lies within ``in_line`` of
    one two rows away; no four rows climb by shifts of up to ``stair`` that differ by less than ``in_line``; no piece is
    shorter than ``least_piece``, save where a whole run is; a sawn end stands at a wall, never in the field.

    Waste is the length of the boards that were opened and cut, less that of the rows: no layout can need less than the
    rows themselves. Limits: 1,500 sq ft; boards of one width. Lengths are taken to 1/16 in.

    >>> plan = [{"name": "", "less": False, "points": [[0, 0], [144, 0], [144, 48], [0, 48]]}]
    >>> answer = rack_room(plan, "long", [], 33, 9, 84, 20, 1, 2.25, 0.25, 1, 6, 1, 18, 6, 0.125)
    >>> answer["rows"], answer["closest"] >= 6, answer["waste"] < 5
    (22, True, True)

    Source: end joints, oak flooring association; H joints and stair steps are common practice.
    """
    asked = Pile(pile, average_length, shortest, longest, spare, int(seed))
    rules = rules_of(end_joint, in_line, stair, least_piece, kerf)
    racked = rack(turned(room, along), gap, face_width, least_row, rules, asked)
    layout = racked.layout
    lineal = racked.lineal
    used = layout.used(racked.boards)
    used_length = sum(board.length for board in used)
    cuts = cut_list(layout)
    last = racked.bands[-1]
    return {
        "rows": len(racked.bands),
        "laid": lineal / SIXTEENTHS,
        "least_possible": lineal / SIXTEENTHS,
        "used": used_length / SIXTEENTHS,
        "waste": (used_length - lineal) / lineal * 100,
        "wasted": (used_length - lineal) / SIXTEENTHS,
        "boards_used": len(used),
        "boards_left": len(layout.left),
        "left": sum(board.length for board in layout.left) / SIXTEENTHS,
        "cuts": len(cuts),
        "closest": closest(layout) / SIXTEENTHS,
        "last_row": last.bottom - last.top,
        "row_list": row_list(layout, racked.bands),
        "cut_list": cuts,
        "cautions": _cautions(racked, least_row),
        "working": _working(racked, asked, used_length),
    }


def _cautions(racked: Racked, least_row: float) -> list[str]:
    """What to watch: slivers, a short pile, offcuts without a place."""
    cautions = []
    narrowest = min(band.bottom - band.top for band in (racked.bands[0], racked.bands[-1]))
    if narrowest < least_row - 0.001:
        cautions.append(
            f"A row comes out {inches(narrowest)} wide, under {inches(least_row)}: work out the start line."
        )
    if len(racked.layout.left) < 10:
        cautions.append("Few boards are left to choose from: a board that is culled on site changes the plan.")
    if len(racked.layout.offcuts) > 0:
        lengths = ", ".join(inches(piece.laid / SIXTEENTHS) for piece in racked.layout.offcuts)
        cautions.append(f"Offcuts that were kept and found no place: {lengths}.")
    return cautions


def _working(racked: Racked, pile: Pile, used: int) -> list[str]:
    """The arithmetic in words."""
    whole = sum(board.length for board in racked.boards)
    source = "counted" if len(pile.counted) > 0 else f"drawn by lot about {inches(pile.average)}, seed {pile.seed}"
    wasted = feet_inches((used - racked.lineal) / SIXTEENTHS)
    return [
        f"{len(racked.bands)} rows in {len(racked.runs)} runs: {feet_inches(racked.lineal / SIXTEENTHS)} of boards",
        f"the pile, {source}: {len(racked.boards)} boards, {feet_inches(whole / SIXTEENTHS)}",
        f"boards used: {feet_inches(used / SIXTEENTHS)}; less the rows: {wasted} to the saw and left as offcuts",
        "no layout needs less than the rows themselves, so the waste cannot be under 0",
    ]


ON_THE_BOARDS = (
    Input("length", "Length", "length", "in", None, 6.0, 192.0),
    Input("count", "Boards", "count", "", None, 1.0, 5000.0),
)

CALCULATOR = Calculator(
    name="rack-room",
    title="Racking plan of a room",
    trade="flooring",
    summary="Every row of a strip floor from wall to wall: the plan with its joints, the cut list, and the waste.",
    function=rack_room,
    inputs=(
        Input(
            "room",
            "Room",
            "plan",
            help="Wall to wall. Several shapes are placed with corners; where they touch, rows run through.",
        ),
        Input(
            "along",
            "Boards run",
            "choice",
            default="long",
            choices=(
                Choice("long", "the long way of the room"),
                Choice("across", "across the plan"),
                Choice("down", "down the plan"),
            ),
        ),
        Input("pile", "Counted pile; none to draw one by lot", "rows", default=[], columns=ON_THE_BOARDS),
        Input("average_length", "Average board length", "length", "in", 33.0, 10.0, 120.0, (24.0, 60.0)),
        Input("shortest", "Shortest board", "length", "in", 9.0, 6.0, 96.0),
        Input("longest", "Longest board", "length", "in", 84.0, 12.0, 192.0),
        Input("spare", "Boards beyond the rows", "percent", "%", 10.0, 0.0, 100.0, (5.0, 20.0)),
        Input("seed", "Number that the lot starts from", "count", "", 1.0, 0.0, 1000000.0),
        Input("face_width", "Face width of the strip", "length", "in", 2.25, 1.0, 8.0, (1.5, 5.0)),
        Input("gap", "Gap at each wall", "length", "in", 0.25, 0.0, 1.5, (0.25, 0.75)),
        Input("least_row", "Least first or last row", "length", "in", 1.0, 0.25, 8.0),
        Input(
            "end_joint",
            "End joints apart, in neighbouring rows",
            "length",
            "in",
            6.0,
            1.0,
            24.0,
            (6.0, 18.0),
            Rule("least", 6, "the oak flooring manual", "guidance"),
        ),
        Input("in_line", "Joints count as in line within", "length", "in", 1.0, 0.0, 4.0, (0.5, 2.0)),
        Input("stair", "Shifts up to this can make a stair", "length", "in", 18.0, 0.0, 36.0),
        Input("least_piece", "Shortest piece that is laid", "length", "in", 6.0, 2.0, 24.0),
        Input("kerf", "What a cut takes", "length", "in", 0.125, 0.0, 0.25),
    ),
    outputs=(
        Output("rows", "Rows", "count", "rows", 1.0),
        Output("laid", "Length of all rows", "length", "ft-in", 0.0625),
        Output("boards_used", "Boards used", "count", "boards", 1.0),
        Output("boards_left", "Boards left whole", "count", "boards", 1.0),
        Output("used", "Length of the boards used", "length", "ft-in", 0.0625),
        Output("least_possible", "Least that any layout uses", "length", "ft-in", 0.0625, help="The rows themselves."),
        Output("wasted", "To the saw and left as offcuts", "length", "ft-in", 0.0625),
        Output("waste", "Waste over the least possible", "percent", "%", 0.01),
        Output("left", "Length of the boards left whole", "length", "ft-in", 0.0625),
        Output("cuts", "Cut pieces", "count", "pieces", 1.0),
        Output("closest", "Nearest joints in neighbouring rows", "length", "in", 0.0625),
        Output("last_row", "Width of the last row", "length", "in", 0.0625),
        Output(
            "cut_list",
            "Cut list",
            "rows",
            columns=(
                Output("row", "Row", "count", "", 1.0),
                Output("board", "Board", "length", "in", 0.0625),
                Output("cut", "Cut to", "length", "in", 0.0625),
                Output("place", "Where", "text"),
                Output("sawn", "Sawn", "text"),
            ),
        ),
        Output(
            "row_list",
            "Rows from the starting wall, boards from left to right",
            "rows",
            columns=(
                Output("row", "Row", "count", "", 1.0),
                Output("length", "Length", "length", "ft-in", 0.0625),
                Output("pieces", "Boards, in", "text"),
            ),
        ),
    ),
    formula=(
        "A row is lawful when each of its joints is far enough from those of the row before, is not in line with one "
        "two rows back, and does not carry on a climb of the last three rows. A sawn end stands at a wall.\n\n"
        "For each row a few beginnings are carried on board by board. Where two open boards fill the rest without a "
        "cut they are taken; else one is cut, and what falls off may start a later row. Rows shorter than the longest "
        "board are cut from one chain of boards: what is left of a board starts the next row. They are laid in an "
        "order in which their joints are lawful.\n\n"
        "Waste = length of the boards used - length of the rows. A drawn pile has boards of "
        "shortest + (longest - shortest) x u^k, u drawn by lot, k such that they average as asked."
    ),
    sources=(
        Citation("oak-flooring-manual", "end joints of adjacent runs; average lengths of the grades"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"room": "front room: 20' x 15'"},
    other_names=("racking", "board layout plan", "stagger plan", "cut list of a floor", "loose lay"),
    cannot_decide=(
        "Colour, grain and faults of the boards: the racker looks, and swaps boards of like length. The lead signs the "
        "racked rows before a fastener is driven."
    ),
    on_site=False,
    drawing=rack_room_drawing,
)
