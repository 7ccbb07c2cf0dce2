"""Where a strip floor starts, so that neither the first nor the last row is a sliver.

The room is measured across the rows at both ends. A room that is wider at one end leaves a taper, which goes into the
last row, or half into the first and half into the last.
"""

from __future__ import annotations

from math import ceil
from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, refuse
from calculators.declaring import Help, calculator, length
from calculators.flooring.board_layout_drawing import board_layout_drawing
from calculators.flooring.floor_inputs import FaceWidth
from calculators.writing import feet_inches, inches

LEAST_ROOM = 24.0
"""Inches across: room for more than two rows of the widest board."""
ROW_NOISE = 0.000001
"""Rows: what lies this near a whole number of rows is that number."""
ACROSS = "Measured across the rows, wall to wall."
GLUE_UNDER = 1.0
"""Inches: a row ripped narrower cannot be blind-nailed; it is glued to its neighbour and face-nailed."""


@calculator(
    title="Strip floor: first and last row",
    summary="Where the start line goes, and how wide the first and the last row come out at each end.",
    outputs=(
        Output("rows", "Rows in all", "count", "rows", step=1),
        Output("full_rows", "Full rows between first and last", "count", "rows", step=1),
        Output("row_length", "Length of a row between the gaps", "length", "ft-in", step=1 / 16),
        Output("first_near", "First row, near end", "length", "in", step=1 / 16),
        Output("first_far", "First row, far end", "length", "in", step=1 / 16),
        Output("last_near", "Last row, near end", "length", "in", step=1 / 16),
        Output("last_far", "Last row, far end", "length", "in", step=1 / 16),
        Output("shift_near", "Start line moved to the wall, near end", "length", "in", step=1 / 16),
        Output("shift_far", "Start line moved to the wall, far end", "length", "in", step=1 / 16),
        Output("line_near", "Start line from the wall, near end", "length", "in", step=1 / 16),
        Output("line_far", "Start line from the wall, far end", "length", "in", step=1 / 16),
        Output("out_of_parallel", "Out of parallel over the length", "length", "in", step=1 / 16),
        Output("out_of_parallel_10_ft", "Out of parallel in 10 ft", "length", "in", step=1 / 16),
        Output("split", "Split the taper between first and last row", "yes-no"),
    ),
    formula=(
        "Width between the gaps = full rows x face width + first row + last row, at each end.\n\n"
        "As many full rows are laid as leave more than one and at most two face widths for the first and the last row. "
        "The first keeps its full face if the last comes out wide enough; otherwise the two share what is left. "
        "A taper over the limit is shared by halves."
    ),
    sources=(Citation("army-carpentry", "finish flooring: lay the floor"), COMMON_PRACTICE, CREW_RULE),
    example={"width_near": "12' 0\"", "width_far": "12' 0-3/4\"", "room_length": "16'", "face_width": "2-1/4 in"},
    other_names=("starter row", "balancing the rows", "out of parallel", "rip width of the last row"),
    cannot_decide="Which wall people see first, and where a doorway wants a full board: the lead decides on site.",
    drawing=board_layout_drawing,
)
def board_layout(
    width_near: Annotated[
        float, length("Room width, near end", "from 2 to 100 ft, usually 3 to 20 ft", "ft-in"), Help(ACROSS)
    ],
    width_far: Annotated[
        float, length("Room width, far end; 0 if the same", "0, from 0 to 100 ft", "ft-in"), Help(ACROSS)
    ],
    room_length: Annotated[float, length("Room length along the rows", "12 ft, from 2 to 200 ft", "ft-in")],
    gap: Annotated[float, length("Expansion gap at each wall", "1/4 in, from 0 to 1-1/2 in, usually 1/4 to 3/4 in")],
    face_width: FaceWidth,
    least_width: Annotated[float, length("Least first or last row", "1 in, from 1/4 to 8 in")],
    most_taper: Annotated[float, length("Most taper left in one row", "1/2 in, from 0 to 2 in")],
) -> Answer:
    """Rows, the width of the first and the last at each end, and where the start line is struck.

    All in inches. The two ends may differ by less than one face width. A first row of the full face is kept
    whenever the last row comes out wide enough.

    A room 12 ft wide, strips of 2-1/4 in, a quarter inch at each wall: 143-1/2 in of floor is 63 rows and 1-3/4 in.

    >>> answer = board_layout(width_near=144, room_length=192)
    >>> answer["rows"], answer["full_rows"], answer["first_near"], answer["last_near"], answer["shift_near"]
    (64, 62, 2.25, 1.75, 0.0)

    Source: arithmetic. Sharing the remainder between the first and the last row is common practice.
    """
    far = width_near if width_far == 0 else width_far
    if far < LEAST_ROOM:
        refuse(
            "width_far",
            f"{inches(far)} at the far end is under {inches(LEAST_ROOM)}: give 0 if both ends measure the same",
        )
    taper = abs(far - width_near)
    if taper >= face_width:
        refuse(
            "width_far",
            f"the two ends differ by {inches(taper)}, a whole board of {inches(face_width)} or more: measure again, or "
            "lay a border along the crooked wall and measure to that",
        )
    if least_width > face_width:
        refuse("least_width", f"the least row of {inches(least_width)} is wider than the board, {inches(face_width)}")

    wide = max(far, width_near) - 2 * gap
    full = ceil((wide - 2 * face_width) / face_width - ROW_NOISE)
    rest = wide - full * face_width
    split = choose_split(rest, taper, face_width, least_width, most_taper)
    first = first_width(rest, taper, face_width, least_width, split)
    last = rest - first
    first_taper = taper / 2 if split else 0.0
    first_narrow = first - first_taper
    last_narrow = last - (taper - first_taper)
    far_is_wide = far >= width_near
    first_near = first_narrow if far_is_wide else first
    last_near = last_narrow if far_is_wide else last
    first_far = first if far_is_wide else first_narrow
    last_far = last if far_is_wide else last_narrow
    narrowest = min(first_narrow, last_narrow)
    working = [
        f"between the gaps: {feet_inches(width_near - 2 * gap)} near, {feet_inches(far - 2 * gap)} far",
        f"{full} full rows of {inches(face_width)} = {feet_inches(full * face_width)}",
        f"{inches(rest)} is left for the first and the last row at the wider end",
        f"first row {inches(first_near)} near and {inches(first_far)} far",
        f"last row {inches(last_near)} near and {inches(last_far)} far",
    ]
    return {
        "rows": full + 2,
        "full_rows": full,
        "row_length": room_length - 2 * gap,
        "first_near": first_near,
        "first_far": first_far,
        "last_near": last_near,
        "last_far": last_far,
        "shift_near": face_width - first_near,
        "shift_far": face_width - first_far,
        "line_near": gap + first_near,
        "line_far": gap + first_far,
        "out_of_parallel": taper,
        "out_of_parallel_10_ft": taper * 120 / room_length,
        "split": split,
        "cautions": layout_cautions(narrowest, taper, least_width, most_taper, split),
        "working": working,
    }


def first_width(rest: float, taper: float, face_width: float, least_width: float, split: bool) -> float:
    """Width of the first row at the wider end: half the rest when the taper is split, else full or balanced.

    >>> first_width(4.0, 0.0, 2.25, 1.0, False), first_width(2.5, 0.0, 2.25, 1.0, False)
    (2.25, 1.25)
    """
    if split:
        return rest / 2
    if rest - face_width - taper >= least_width:
        return face_width
    return max((rest - taper) / 2, rest - face_width)


def narrowest_of(rest: float, taper: float, face_width: float, least_width: float, split: bool) -> float:
    """The narrowest place of the first and the last row in that way of laying."""
    first = first_width(rest, taper, face_width, least_width, split)
    return first - taper / 2 if split else min(first, rest - first - taper)


def choose_split(rest: float, taper: float, face_width: float, least_width: float, most_taper: float) -> bool:
    """Whether half of the taper goes into the first row.

    It does when one row would carry more than ``most_taper``, or when only so no row is narrower than the least.
    """
    together = narrowest_of(rest, taper, face_width, least_width, False)
    shared = narrowest_of(rest, taper, face_width, least_width, True)
    if taper > most_taper and (shared >= least_width or shared >= together):
        return True
    return together < least_width and shared > together + ROW_NOISE


def layout_cautions(narrowest: float, taper: float, least_width: float, most_taper: float, split: bool) -> list[str]:
    """What to watch: slivers, the taper."""
    cautions = []
    if narrowest < least_width - ROW_NOISE:
        cautions.append(
            f"The narrowest place is {inches(narrowest)}, under the {inches(least_width)} that you accept, and no "
            "start line gives more: take another width of strip, or lay a border."
        )
    if narrowest < GLUE_UNDER:
        cautions.append(
            f"A row of {inches(narrowest)} has no room for the nailer: glue it to its neighbour, drill, and face-nail."
        )
    if taper > most_taper and split:
        cautions.append(
            f"The walls are {inches(taper)} out of parallel: half is ripped off the first row and half off the last. "
            "Strike the start line at both ends; do not follow the wall."
        )
    if taper > most_taper and not split:
        cautions.append(
            f"The walls are {inches(taper)} out of parallel and the last row carries all of it: put it where a cabinet "
            "or furniture hides it."
        )
    return cautions
