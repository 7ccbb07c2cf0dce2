"""Racking a room on paper: every row from wall to wall, before a bundle is opened.

The pile is either counted or drawn by lot. The search lays row after row so that no joint stands near one of the next
row, none lines up with one two rows away, none climbs like stairs, and next to nothing falls to the saw. Runs when the
book is built, not on the page.
"""

from __future__ import annotations

from typing import Annotated, Any, TypedDict

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, output_rows
from calculators.declaring import Guidance, Help, calculator, choice, count, length, percent, plan, rows
from calculators.flooring.floor_inputs import FaceWidth
from calculators.flooring.rack_room_drawing import rack_room_drawing
from calculators.flooring.racking.pile import SIXTEENTHS
from calculators.flooring.racking.plan import Pile, Racked, rack, rules_of, turned
from calculators.flooring.racking.report import closest, cut_list, row_list
from calculators.writing import feet_inches, inches


class CountedBoards(TypedDict):
    """Boards of one length."""

    length: Annotated[float, length("Length", "from 6 to 192 in")]
    count: Annotated[float, count("Boards", "from 1 to 5000")]


@calculator(
    title="Racking plan of a room",
    summary="Every row of a strip floor from wall to wall: the plan with its joints, the cut list, and the waste.",
    outputs=(
        Output("rows", "Rows", "count", "rows", step=1),
        Output("laid", "Length of all rows", "length", "ft-in", step=1 / 16),
        Output("boards_used", "Boards used", "count", "boards", step=1),
        Output("boards_left", "Boards left whole", "count", "boards", step=1),
        Output("used", "Length of the boards used", "length", "ft-in", step=1 / 16),
        Output(
            "least_possible", "Least that any layout uses", "length", "ft-in", step=1 / 16, help="The rows themselves."
        ),
        Output("wasted", "To the saw and left as offcuts", "length", "ft-in", step=1 / 16),
        Output("waste", "Waste over the least possible", "percent", "%", step=0.01),
        Output("left", "Length of the boards left whole", "length", "ft-in", step=1 / 16),
        Output("cuts", "Cut pieces", "count", "pieces", step=1),
        Output("closest", "Nearest joints in neighbouring rows", "length", "in", step=1 / 16),
        Output("last_row", "Width of the last row", "length", "in", step=1 / 16),
        output_rows(
            "cut_list",
            "Cut list",
            Output("row", "Row", "count", step=1),
            Output("board", "Board", "length", "in", step=1 / 16),
            Output("cut", "Cut to", "length", "in", step=1 / 16),
            Output("place", "Where", "text"),
            Output("sawn", "Sawn", "text"),
        ),
        output_rows(
            "row_list",
            "Rows from the starting wall, boards from left to right",
            Output("row", "Row", "count", step=1),
            Output("length", "Length", "length", "ft-in", step=1 / 16),
            Output("pieces", "Boards, in", "text"),
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
def rack_room(
    room: Annotated[
        list[dict[str, Any]],
        plan("Room"),
        Help("Wall to wall. Several shapes are placed with corners; where they touch, rows run through."),
    ],
    along: Annotated[
        str,
        choice(
            "Boards run",
            {"long": "the long way of the room", "across": "across the plan", "down": "down the plan"},
            default="long",
        ),
    ],
    pile: Annotated[list[dict[str, float]], rows("Counted pile; none to draw one by lot", CountedBoards, default="")],
    average_length: Annotated[float, length("Average board length", "33 in, from 10 to 120 in, usually 24 to 60 in")],
    shortest: Annotated[float, length("Shortest board", "9 in, from 6 to 96 in")],
    longest: Annotated[float, length("Longest board", "84 in, from 12 to 192 in")],
    spare: Annotated[float, percent("Boards beyond the rows", "10 %, from 0 to 100 %, usually 5 to 20 %")],
    seed: Annotated[float, count("Number that the lot starts from", "1, from 0 to 1000000")],
    face_width: FaceWidth,
    gap: Annotated[float, length("Gap at each wall", "1/4 in, from 0 to 1-1/2 in, usually 1/4 to 3/4 in")],
    least_row: Annotated[float, length("Least first or last row", "1 in, from 1/4 to 8 in")],
    end_joint: Annotated[
        float,
        length("End joints apart, in neighbouring rows", "6 in, from 1 to 24 in, usually 6 to 18 in"),
        Guidance("at least 6 in", "the oak flooring manual"),
    ],
    in_line: Annotated[float, length("Joints count as in line within", "1 in, from 0 to 4 in, usually 1/2 to 2 in")],
    stair: Annotated[float, length("Shifts up to this can make a stair", "18 in, from 0 to 36 in")],
    least_piece: Annotated[float, length("Shortest piece that is laid", "6 in, from 2 to 24 in")],
    kerf: Annotated[float, length("What a cut takes", "1/8 in, from 0 to 1/4 in")],
) -> Answer:
    """Every row of a room from this pile, with the cut list and the waste. Lengths in inches.

    A lawful floor: a joint is at least ``end_joint`` from those of the next rows; no joint lies within ``in_line`` of
    one two rows away; no four rows climb by shifts of up to ``stair`` that differ by less than ``in_line``; no piece is
    shorter than ``least_piece``, save where a whole run is; a sawn end stands at a wall, never in the field.

    Waste is the length of the boards that were opened and cut, less that of the rows: no layout can need less than the
    rows themselves. Limits: 1,500 sq ft; boards of one width. Lengths are taken to 1/16 in.

    >>> plan = [{"name": "", "less": False, "points": [[0, 0], [144, 0], [144, 48], [0, 48]]}]
    >>> answer = rack_room(room=plan, spare=20)
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
