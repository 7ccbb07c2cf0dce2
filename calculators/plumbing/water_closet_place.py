"""Whether a bowl may stand where the flange is: sides, front and back, by code family.

Every reading is taken from one point, the centre of the flange, to the four sides. What is still to be added to the
walls (board, tile) is taken off before a reading is compared, because the codes measure to finished surfaces.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, refuse
from calculators.declaring import Guidance, Help, calculator, choice, length
from calculators.plumbing.checks import CHECKS, FRONT, check, result_of, side_limit
from calculators.plumbing.water_closet_place_drawing import water_closet_place_drawing
from calculators.writing import TAPE, tape

STOCK_BOWLS = [14.0, 12.0, 10.0]

CLAUSE = {"ipc-irc": "IPC 405.3.1, IRC R307.1", "upc": "UPC 402.5", "ada": "IPC 405.3.1"}
ADA_NEAR = 16.0
ADA_FAR = 18.0
ADA_WIDE = 60.0
ADA_DEEP = 56.0


def finished(reading: float, side_is: str, to_add: float) -> float:
    """A side reading when the wall is finished; the centre of a fixture does not move. Inches."""
    return reading - to_add if side_is == "wall" else reading


def bowl_for(rough: float, short_by: float, long_by: float) -> str:
    """The stock bowl for a finished rough-in; a bowl may be short of its own by a little, and long by more. Inches.

    >>> [bowl_for(12, 0.25, 1), bowl_for(11.5, 0.25, 1), bowl_for(9.5, 0.25, 1)]
    ['12 in bowl', '10 in bowl, with 1-1/2 in more than its own behind the tank', 'none: move the flange']
    """
    for bowl in STOCK_BOWLS:
        if rough >= bowl - short_by - TAPE:
            if rough <= bowl + long_by + TAPE:
                return f"{tape(bowl)} bowl"
            return f"{tape(bowl)} bowl, with {tape(rough - bowl)} more than its own behind the tank"
    return "none: move the flange"


def side_shift(left: float, left_least: float, right: float, right_least: float) -> float:
    """How far the flange has to move to suit both sides, plus to the right; 0 where it need not or cannot. Inches.

    >>> [side_shift(14, 15, 20, 15), side_shift(20, 15, 14, 15), side_shift(14, 15, 15, 15)]
    [1, -1, 0.0]
    """
    if left + right < left_least + right_least - TAPE:
        return 0.0
    if left < left_least:
        return left_least - left
    if right < right_least:
        return right - right_least
    return 0.0


def ada_shift(left: float, right: float, from_left: bool) -> float:
    """How far the flange has to move to stand 16 to 18 in from the wall beside it, plus to the right. Inches."""
    near = left if from_left else right
    move = 0.0
    if near < ADA_NEAR:
        move = ADA_NEAR - near
    if near > ADA_FAR:
        move = ADA_FAR - near
    return move if from_left else -move


def ada_beside_left(left: float, left_is: str, right: float, right_is: str) -> bool:
    """Whether the wall beside an accessible closet is the left one: the only wall, or the nearer of two."""
    return left_is == "wall" and (right_is != "wall" or left <= right)


def ada_rows(left: float, right: float, back: float, front: float, from_left: bool) -> list[dict[str, object]]:
    """The rows for an accessible closet. Inches, finished."""
    near = left if from_left else right
    return [
        check("centre to the wall beside", near, ADA_NEAR, ADA_FAR, "2010 ADA 604.2"),
        check("clear width, side to side", left + right, ADA_WIDE, 0, "2010 ADA 604.3.1"),
        check("clear depth from the back wall", back + front, ADA_DEEP, 0, "2010 ADA 604.3.1"),
    ]


SIDES = {"wall": "wall, tub, vanity: to its face", "fixture": "another fixture: centre to centre"}


@calculator(
    title="Room for the bowl",
    summary="Sides, front and rough-in from the flange's centre, against the code and the bowl.",
    outputs=(
        Output("result", "This place", "text"),
        CHECKS,
        Output("front_clear", "Clear in front of the bowl", "length", "in", step=1 / 16, rounds="tape"),
        Output("finished_rough_in", "Rough-in when the wall is finished", "length", "in", step=1 / 16, rounds="tape"),
        Output("bowl", "Bowl that fits the rough-in", "text"),
        Output("shift", "Move the flange sideways", "length", "in", step=1 / 16, ways=("to the right", "to the left")),
        Output(
            "shift_back",
            "Move the flange, from or to the wall",
            "length",
            "in",
            step=1 / 16,
            ways=("away from the wall", "to the wall"),
        ),
    ),
    formula=(
        "Clear distance = reading from the flange's centre - what is still to be added to that wall. "
        "Front = reading - bowl ahead of the flange's centre. Each is compared with the code's limit."
    ),
    sources=(
        Citation("ipc", "405.3.1"),
        Citation("irc", "R307.1, P2705.1"),
        Citation("upc", "402.5"),
        Citation("ada-2010", "604.2, 604.3.1"),
        COMMON_PRACTICE,
    ),
    example={
        "code": "upc",
        "left": "14-1/2 in",
        "right": "18 in",
        "front": "42 in",
        "rough_in": "12-1/2 in",
        "back_to_add": "1/2 in",
    },
    other_names=("toilet clearance", "rough-in", "toilet distance to wall", "bathroom layout"),
    cannot_decide="Which code is adopted, and how it is amended here: the building department says.",
    drawing=water_closet_place_drawing,
)
def water_closet_place(
    code: Annotated[
        str,
        choice(
            "Code family",
            {"ipc-irc": "IPC or IRC", "upc": "UPC", "ada": "accessible, 2010 ADA Standards with IPC"},
            default="ipc-irc",
        ),
        Help("The building department says which one it has adopted."),
    ],
    left: Annotated[
        float,
        length("Left, from the flange's centre", "18 in, from 1 in to 20 ft"),
        Help("Left and right as you face the back wall."),
    ],
    left_is: Annotated[str, choice("On the left stands", SIDES, default="wall")],
    right: Annotated[float, length("Right, from the flange's centre", "18 in, from 1 in to 20 ft")],
    right_is: Annotated[str, choice("On the right stands", SIDES, default="wall")],
    side_to_add: Annotated[float, length("Still to add to each side wall", "0, from 0 to 6 in")],
    front: Annotated[
        float,
        length("Front, from the flange's centre", "42 in, from 1 in to 20 ft"),
        Help("To the wall, fixture or door's swing that faces the bowl."),
    ],
    nose: Annotated[
        float,
        length("Bowl ahead of the flange's centre", "18 in, from 10 to 30 in, usually 15 to 20 in"),
        Help("From the bowl's drawing: overall depth from the wall, less its rough-in."),
    ],
    rough_in: Annotated[float, length("Back wall to the flange's centre", "12 in, from 4 to 36 in")],
    back_to_add: Annotated[
        float,
        length("Still to add to the back wall", "0, from 0 to 6 in"),
        Help("Board, tile and thinset. Baseboard counts only where the tank would touch it."),
    ],
    bowl_rough_in: Annotated[float, length("Rough-in of the bowl", "12 in, from 8 to 16 in, usually 10 to 14 in")],
    short_by: Annotated[
        float,
        length("Rough-in may be short by", "1/4 in, from 0 to 2 in"),
        Guidance("at most 1/4 in", "common practice"),
    ],
    long_by: Annotated[
        float, length("Rough-in may be long by", "1 in, from 0 to 4 in"), Guidance("at most 1 in", "common practice")
    ],
) -> Answer:
    """Each distance from the centre of the flange, its limit and clause, and what has to move. All lengths in inches.

    Readings are from the flange's centre as the walls stand; what will still be put on them is taken off. ``nose``
    is how far the bowl reaches forward of the flange's centre.

    Sources: 15 in to a wall or obstruction and 30 in between fixtures, IPC 405.3.1 and UPC 402.5; front 21 in by
    IPC 405.3.1 and IRC R307.1, 24 in by UPC 402.5; 16 to 18 in, 60 in and 56 in by the 2010 ADA Standards 604.2 and
    604.3.1. Bowls of 10, 12 and 14 in are common practice.

    >>> answer = water_closet_place(code="upc", left=14.5, front=41)
    >>> [answer["result"], answer["shift"], answer["front_clear"]]
    ['does not pass', 0.5, 23.0]
    """
    from_left = ada_beside_left(left, left_is, right, right_is)
    if code == "ada" and left_is != "wall" and right_is != "wall":
        refuse("left_is", "An accessible closet stands beside a wall (2010 ADA 604.2): set one side to wall.")
    left_clear = finished(left, left_is, side_to_add)
    right_clear = finished(right, right_is, side_to_add)
    back = rough_in - back_to_add
    front_clear = front - nose
    clause = CLAUSE[code]
    rows = [
        check(f"left to {left_is}", left_clear, side_limit(left_is), 0, clause),
        check(f"right to {right_is}", right_clear, side_limit(right_is), 0, clause),
        check("front of the bowl", front_clear, FRONT[code], 0, clause),
        check("rough-in for this bowl", back, bowl_rough_in - short_by, bowl_rough_in + long_by, "the bowl's drawing"),
    ]
    shift = side_shift(left_clear, side_limit(left_is), right_clear, side_limit(right_is))
    if code == "ada":
        for row in ada_rows(left_clear, right_clear, back, front, from_left):
            rows.append(row)
        shift = ada_shift(left_clear, right_clear, from_left)
    shift_back = 0.0
    if back < bowl_rough_in - short_by - TAPE or back > bowl_rough_in + long_by + TAPE:
        shift_back = bowl_rough_in - back
    return {
        "result": result_of(rows),
        "checks": rows,
        "front_clear": front_clear,
        "finished_rough_in": back,
        "bowl": bowl_for(back, short_by, long_by),
        "shift": shift,
        "shift_back": shift_back,
        "cautions": cautions_for(code, left_clear, left_is, right_clear, right_is),
        "working": [
            f"rough-in: {tape(rough_in)} less {tape(back_to_add)} still to add to the wall = {tape(back)}",
            f"left: {tape(left)} becomes {tape(left_clear)}; right: {tape(right)} becomes {tape(right_clear)}",
            f"front: {tape(front)} less {tape(nose)} of bowl ahead of the flange = {tape(front_clear)}",
        ],
    }


def cautions_for(code: str, left: float, left_is: str, right: float, right_is: str) -> list[str]:
    """What to watch in the place of a closet. Inches, finished."""
    cautions = []
    needed = side_limit(left_is) + side_limit(right_is)
    if left + right < needed - TAPE:
        cautions.append(f"The place is {tape(needed - left - right)} too narrow: moving the flange does not mend it.")
    if code == "ada":
        cautions.append("ADA 604 has more: seat height, grab bars, doors. Dwellings have exceptions. Ask.")
    return cautions
