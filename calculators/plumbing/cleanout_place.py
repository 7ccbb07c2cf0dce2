"""Whether a cleanout is large enough and has room in front, and how many a run of drain wants by its length.

A cleanout that is too small or walled in is found on the night when the drain is full. Each code family has its own
room in front; the size and the distance along the pipe are alike.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output
from calculators.declaring import Help, calculator, length
from calculators.plumbing.drain_fall import CodeFamily, DrainSize
from calculators.writing import NOISE, TAPE, decimal, tape, whole

LARGEST_OPENING = 4.0
APART = 1200.0
"""100 ft along the pipe: IPC 708.1.1 and 708.1.2; UPC 707.4."""
CLAUSE = {"ipc": "IPC 708.1.9", "irc": "IRC P3005.2", "upc": "UPC 707.9"}


def least_front_for(pipe: float, code: str) -> float:
    """The least clear distance in inches, square to the face of the opening; ``pipe`` is the size in inches.

    Sources: IPC 708.1.9 (18 in up to 6 in, 36 in from 8 in); IRC P3005.2, from memory (18 in); UPC 707.9 (18 in up to
    2 in, 24 in beyond).

    >>> [least_front_for(3, "ipc"), least_front_for(8, "ipc"), least_front_for(2, "upc"), least_front_for(3, "upc")]
    [18.0, 36.0, 18.0, 24.0]
    """
    if code == "upc":
        return 18.0 if pipe <= 2 + NOISE else 24.0
    if code == "ipc" and pipe >= 8 - NOISE:
        return 36.0
    return 18.0


def least_opening_for(pipe: float) -> float:
    """The least size of the opening: the pipe's own up to 4 in, then 4 in. IPC 708.1.5 (number from memory).

    >>> [least_opening_for(3), least_opening_for(4), least_opening_for(6)]
    [3, 4, 4.0]
    """
    return min(pipe, LARGEST_OPENING)


def cleanouts_by_length(run: float) -> int:
    """How many along a run of so many inches, so that none is further than 100 ft from the next; at least one.

    >>> [cleanouts_by_length(120), cleanouts_by_length(1200), cleanouts_by_length(1201)]
    [1, 1, 2]
    """
    return max(1, whole(run / APART, "up"))


@calculator(
    title="Cleanouts: size, room and number",
    summary="Whether a cleanout is large enough and has room in front, and how many a run wants by its length.",
    outputs=(
        Output("result", "This cleanout", "text"),
        Output("least_opening", "Opening, at least", "length", "in", step=1 / 4, rounds="up"),
        Output("least_front", "Clear in front, at least", "length", "in", step=1 / 4, rounds="up"),
        Output("short", "Short in front by", "length", "in", step=1 / 4, rounds="up"),
        Output("count", "Cleanouts by the length", "count", step=1, rounds="up"),
        Output("turns", "And one", "text"),
        Output("passes", "It does", "yes-no"),
    ),
    formula=(
        "The opening is as large as the pipe, at most 4 in. The room in front goes by code and size. Number by length: "
        "the run over 100 ft, rounded up, at least one."
    ),
    sources=(
        Citation("ipc", "708.1.1, 708.1.2, 708.1.4, 708.1.5, 708.1.9"),
        Citation("irc", "P3005.2 (numbers from memory)"),
        Citation("upc", "707.4, 707.9"),
        COMMON_PRACTICE,
    ),
    example={"run": "120 ft", "pipe": "3 in", "opening": "3 in", "front": "20 in", "code": "upc"},
    other_names=("clean-out spacing", "rodding eye", "cleanout clearance", "sewer cleanout"),
    cannot_decide=(
        "Where each one goes, and what may stand in for one (a toilet, a trap): the plumber of record and the "
        "inspector. Cities have distances of their own. A stopped drain is opened by a plumber."
    ),
)
def cleanout_place(
    run: Annotated[float, length("Length along the pipe", "40 ft, from 1 to 1000 ft")],
    pipe: DrainSize,
    opening: Annotated[float, length("Size of the opening", "3 in, from 1 to 15 in")],
    front: Annotated[
        float,
        length("Clear in front", "24 in, from 0 to 20 ft"),
        Help("Square to the face of the plug, to what stands there when the house is done."),
    ],
    code: CodeFamily,
) -> Answer:
    """Size, room in front and number by length of the cleanouts of a run.

    Inches; ``pipe`` and ``opening`` are nominal sizes. Both the opening and the room have to reach their least.

    Sources: IPC 708.1.1, 708.1.2, 708.1.5, 708.1.9; IRC P3005.2; UPC 707.4, 707.9.

    >>> answer = cleanout_place(run=1500, pipe=3, opening=3, front=20, code="upc")
    >>> [answer["count"], answer["least_front"], answer["short"], answer["result"]]
    [2, 24.0, 4.0, 'too little room in front']
    """
    least_front = least_front_for(pipe, code)
    least_opening = least_opening_for(pipe)
    count = cleanouts_by_length(run)
    result = "passes"
    short = 0.0
    if front < least_front - TAPE:
        result = "too little room in front"
        short = least_front - front
    if opening < least_opening - TAPE:
        result = "opening too small"
    return {
        "result": result,
        "passes": result == "passes",
        "least_opening": least_opening,
        "least_front": least_front,
        "short": short,
        "count": count,
        "turns": turns_in_words(code),
        "cautions": cautions_for(pipe, opening, front, code),
        "working": [
            f"{CLAUSE[code]}, {decimal(pipe, 2)} in pipe: at least {tape(least_front)} in front; there are "
            f"{tape(front)}",
            f"opening as large as the pipe, 4 in at most: {tape(least_opening)}; it has {tape(opening)}",
            f"by length: {decimal(run / 12, 1)} ft / 100 ft, rounded up = {count}",
        ],
    }


def turns_in_words(code: str) -> str:
    """What the code asks for at turns.

    >>> turns_in_words("upc")
    'where level turns add up to more than 135 degrees'
    """
    if code == "upc":
        return "where level turns add up to more than 135 degrees"
    return "at a level turn of more than 45 degrees; one serves 40 ft"


def cautions_for(pipe: float, opening: float, front: float, code: str) -> list[str]:
    """What to watch at this cleanout."""
    cautions = []
    if opening > pipe + NOISE:
        cautions.append("The opening is larger than the pipe: read both again.")
    if code == "upc" and opening < least_opening_for(pipe) - TAPE:
        cautions.append("The UPC has a table of its own that takes some openings smaller (from memory): ask.")
    if code != "upc" and front < least_front_for(pipe, "upc") - TAPE and front >= least_front_for(pipe, code) - TAPE:
        cautions.append("Where the UPC rules this room is too little.")
    return cautions
