"""What to order for a strip floor, and how long it takes: bundles, fasteners, underlayment, filler, finish, hours.

Published rules used here, with their sources: the fastener schedule by width and thickness (wood flooring
installation guidelines, revised 2019), the mill's counted width and end-matching allowance in board feet (oak flooring
association and old estimating handbooks). All else is area divided by what a pack covers, and what a pack covers is
an input.
"""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, refuse
from calculators.declaring import Guidance, Help, area, calculator, count, length, percent, plan, time
from calculators.flooring.floor_area import floor_area
from calculators.flooring.floor_inputs import CUBIC_FEET_A_GALLON, FaceWidth, HoursADay, Layout, MeasuredArea
from calculators.shapes import perimeter_in
from calculators.writing import decimal, inches

PLANK_FROM = 3.0
"""Inches of face: narrower is strip, from here on it is plank."""
WIDE_OVER = 5.0
"""Inches of face: wider is wide plank, which is glued as well as nailed."""
COUNTED_MORE = 0.75
"""Inches of width that the mill counts beside the face: what the saw and the tongue took."""
END_MATCHING = 5.0
"""Percent that the mill adds for tongue and groove at the ends."""
LENGTHS = "By grade: clear about 42 in, select 39, No. 1 common 33, No. 2 common 27."


def schedule_of(face_width: float, thickness: float) -> dict[str, float]:
    """Spacing of blind fasteners and distance from board ends, least and most, in inches, for solid flooring.

    >>> schedule_of(2.25, 0.75)["most"], schedule_of(3.25, 0.75)["most"], schedule_of(2, 0.375)["most"]
    (10.0, 8.0, 4.0)
    """
    if thickness <= 0.5:
        return {"least": 3.0, "most": 4.0, "end_least": 1.0, "end_most": 2.0}
    if thickness < 0.75 or face_width >= PLANK_FROM:
        return {"least": 6.0, "most": 8.0, "end_least": 1.0, "end_most": 3.0}
    return {"least": 8.0, "most": 10.0, "end_least": 1.0, "end_most": 3.0}


def fasteners_a_board(length: float, spacing: float, end: float) -> float:
    """Average fasteners in one board of random lengths about this one, all in inches; never under 2.

    A board takes one fastener at each end distance and the rest no wider than the spacing: the space between the two,
    divided by the spacing and rounded up, plus 1. Over random lengths rounding up adds a half on average.

    >>> fasteners_a_board(32, 8, 2), fasteners_a_board(9, 10, 2)
    (5.0, 2.0)
    """
    return max(2.0, (length - 2 * end) / spacing + 1.5)


def counted_thickness(thickness: float) -> float:
    """Inches of thickness that board measure counts: up to 7/8 in counts as 1 in, above as 1-1/4 in.

    >>> counted_thickness(0.75), counted_thickness(1.125)
    (1.0, 1.25)
    """
    return 1.0 if thickness <= 0.875 else 1.25


def board_feet_a_sq_ft(face_width: float, thickness: float) -> float:
    """Board feet, by the mill's count, for one square foot of floor.

    >>> round(board_feet_a_sq_ft(2.25, 0.75), 4)
    1.3833
    """
    counted = (face_width + COUNTED_MORE) / face_width + END_MATCHING / 100
    return counted * counted_thickness(thickness)


@calculator(
    title="Strip floor: what to order",
    summary="Bundles, fasteners, underlayment, filler, finish and hours for these rooms.",
    outputs=(
        Output("net_area", "Floor area", "area", "sq ft", step=0.1),
        Output("ordered_area", "Area to order", "area", "sq ft", step=1, rounds="up"),
        Output("bundles", "Bundles", "count", "bundles", step=1, rounds="up"),
        Output("lineal_feet", "Lineal feet", "length", "ft", step=1, rounds="up"),
        Output("board_feet", "Board feet as the mill counts", "volume", "bd ft", step=1, rounds="up"),
        Output("perimeter", "Walls round the rooms, doorways too", "length", "ft", step=1, rounds="up"),
        Output("schedule", "Fastener schedule", "text"),
        Output("fasteners_field", "Fasteners by spacing alone", "count", "fasteners", step=1, rounds="up"),
        Output("fasteners", "Fasteners, with board ends", "count", "fasteners", step=1, rounds="up"),
        Output("boxes", "Boxes of fasteners", "count", "boxes", step=1, rounds="up"),
        Output("rolls", "Rolls of underlayment", "count", "rolls", step=1, rounds="up"),
        Output("filler", "Filler", "volume", "gal", step=1 / 4, rounds="up"),
        Output("finish", "Finish", "volume", "gal", step=1, rounds="up"),
        Output("labour", "Labour to lay", "time", "h", step=1 / 2, rounds="up"),
        Output("days", "Days to lay", "number", "days", step=1 / 2, rounds="up"),
        Output("finish_labour", "Labour to sand and finish", "time", "h", step=1 / 2, rounds="up"),
        Output("labour_total", "Labour in all", "time", "h", step=1 / 2, rounds="up"),
    ),
    formula=(
        "Area to order = floor area x (1 + waste). Bundles = area to order / what a bundle covers.\n\n"
        "Lineal feet = area x 12 / face width. Board feet = area x ((face + 3/4 in) / face + 5 %).\n\n"
        "Fasteners = boards x ((length - 2 x end distance) / spacing + 1-1/2), at least 2 a board.\n\n"
        "Finish = floor area x coats / coverage. Days = hours / (people x hours a day)."
    ),
    sources=(
        Citation("wood-floor-installation-guidelines", "fastener schedule, revised 2019"),
        Citation("oak-flooring-manual", "board-foot allowance; end joints"),
        Citation("building-trades-pocketbook", "carpentry, estimating quantities, flooring"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"rooms": "front room: 20' x 16'; hall: 12' x 4'; less 5' x 2'", "face_width": "2-1/4 in"},
    other_names=("flooring estimate", "hardwood take-off", "bundles for a floor", "floor order"),
    cannot_decide=(
        "The maker's instructions come first: they set the fastener, the spacing and the coverage of filler and finish."
    ),
)
def strip_floor_take_off(
    rooms: Annotated[
        list[dict[str, Any]], plan("Rooms", default=""), Help("Wall to wall, closets too; less what is not floored.")
    ],
    measured_area: MeasuredArea,
    face_width: FaceWidth,
    thickness: Annotated[float, length("Thickness", "3/4 in, from 5/16 to 1-1/8 in")],
    layout: Layout,
    waste: Annotated[float, percent("Cutting waste, straight", "10 %, from 0 to 50 %, usually 5 to 10 %")],
    waste_diagonal: Annotated[float, percent("Cutting waste, diagonal", "15 %, from 0 to 50 %, usually 15 to 20 %")],
    bundle_coverage: Annotated[
        float, area("Floor that a bundle covers (its tag)", "20 sq ft, from 1 to 100 sq ft, usually 15 to 30 sq ft")
    ],
    average_length: Annotated[
        float, length("Average board length", "33 in, from 6 to 192 in, usually 24 to 60 in"), Help(LENGTHS)
    ],
    end_joint: Annotated[
        float,
        length("End joints apart, in neighbouring rows", "6 in, from 1 to 36 in, usually 6 to 18 in"),
        Guidance("at least 6 in", "the oak flooring manual"),
    ],
    nail_spacing: Annotated[
        float,
        length("Fastener spacing", "8 in, from 2 to 16 in"),
        Guidance("at most 10 in", "the installation guidelines for solid 3/4 in strip"),
    ],
    nail_end: Annotated[float, length("Fastener from the board end", "2 in, from 1/2 to 6 in")],
    fasteners_per_box: Annotated[float, count("Fasteners in a box", "1000, from 50 to 20000")],
    roll_area: Annotated[float, area("Underlayment in a roll", "432 sq ft, from 50 to 2000 sq ft")],
    roll_width: Annotated[float, length("Width of the roll", "36 in, from 12 to 144 in")],
    lap: Annotated[float, length("Lap of the underlayment", "4 in, from 0 to 24 in, usually 3 to 6 in")],
    filler_coverage: Annotated[float, area("A gallon of filler covers", "200 sq ft, from 20 to 2000 sq ft")],
    coats: Annotated[float, count("Coats of finish", "3, from 1 to 8, usually 2 to 4")],
    finish_coverage: Annotated[
        float, area("A gallon of finish covers", "500 sq ft, from 50 to 2000 sq ft, usually 400 to 600 sq ft")
    ],
    labour_per_100: Annotated[float, time("Labour to lay 100 sq ft", "6.25 h, from 0.5 to 100 h, usually 3 to 12 h")],
    finish_labour_per_100: Annotated[float, time("Labour to sand and finish 100 sq ft", "3.5 h, from 0 to 100 h")],
    people: Annotated[float, count("People", "2, from 1 to 12")],
    hours_a_day: HoursADay,
) -> Answer:
    """Materials and labour for a nailed strip floor.

    Lengths in inches, areas in square feet. For solid flooring of 1 to 8 in face, nailed to a wood subfloor.

    >>> room = {"name": "front room", "less": False, "points": [[0, 0], [240, 0], [240, 480], [0, 480]]}
    >>> answer = strip_floor_take_off(rooms=[room])
    >>> answer["net_area"], answer["ordered_area"], answer["bundles"], answer["labour"]
    (800.0, 880.0, 44.0, 50.0)

    Source: area and division; the schedule and the board-foot allowance as the functions above say.
    """
    working: list[str] = []
    area = floor_area(rooms, measured_area, working)
    perimeter = sum((perimeter_in(room["points"]) for room in rooms if not room["less"]), 0.0)
    if lap >= roll_width:
        refuse("lap", f"a lap of {inches(lap)} leaves nothing of a roll {inches(roll_width)} wide")

    extra = waste_diagonal if layout == "diagonal" else waste
    ordered = area * (1 + extra / 100)
    bundles = ordered / bundle_coverage
    working.append(f"{decimal(area, 1)} sq ft and {decimal(extra, 1)} % waste: {decimal(ordered, 1)} sq ft to order")
    working.append(f"{decimal(ordered, 1)} / {decimal(bundle_coverage, 1)} sq ft a bundle = {decimal(bundles, 2)}")
    lineal = ordered * 144 / face_width
    working.append(f"12 / {decimal(face_width, 3)} = {decimal(12 / face_width, 3)} lineal ft a sq ft")
    board_feet = ordered * board_feet_a_sq_ft(face_width, thickness)
    working.append(
        f"counted {inches(face_width + COUNTED_MORE)} wide for {inches(face_width)} of face, and 5 % for end matching: "
        f"{decimal(board_feet_a_sq_ft(face_width, thickness), 4)} board feet a sq ft"
    )

    laid = area * 144 / face_width
    boards = laid / average_length
    each = fasteners_a_board(average_length, nail_spacing, nail_end)
    fasteners = boards * each
    working.append(
        f"{decimal(boards, 0)} boards averaging {inches(average_length)}, {decimal(each, 2)} fasteners each at "
        f"{inches(nail_spacing)}: {decimal(fasteners, 0)}"
    )
    rolls = area / (roll_area * (roll_width - lap) / roll_width)
    working.append(
        f"a roll of {decimal(roll_area, 0)} sq ft, {inches(roll_width)} wide, lapped {inches(lap)}, covers "
        f"{decimal(roll_area * (roll_width - lap) / roll_width, 0)} sq ft"
    )
    finish = area * coats / finish_coverage
    working.append(f"{decimal(coats, 0)} coats, {decimal(finish_coverage, 0)} sq ft a gallon: {decimal(finish, 2)} gal")
    labour = area / 100 * labour_per_100
    finish_labour = area / 100 * finish_labour_per_100
    days = labour / (people * hours_a_day)
    working.append(
        f"{decimal(area, 1)} / 100 x {decimal(labour_per_100, 2)} h = {decimal(labour, 1)} h of laying; "
        f"{decimal(people, 0)} people, {decimal(hours_a_day, 1)} h a day: {decimal(days, 2)} days"
    )
    schedule = schedule_of(face_width, thickness)
    return {
        "net_area": area,
        "ordered_area": ordered,
        "bundles": bundles,
        "lineal_feet": lineal,
        "board_feet": board_feet / 12,
        "perimeter": perimeter,
        "schedule": schedule_in_words(schedule),
        "fasteners_field": laid / nail_spacing,
        "fasteners": fasteners,
        "boxes": fasteners / fasteners_per_box,
        "rolls": rolls,
        "filler": area / filler_coverage * CUBIC_FEET_A_GALLON,
        "finish": finish * CUBIC_FEET_A_GALLON,
        "labour": labour,
        "days": days,
        "finish_labour": finish_labour,
        "labour_total": labour + finish_labour,
        "cautions": take_off_cautions(face_width, average_length, end_joint, nail_spacing, nail_end, schedule),
        "working": working,
    }


def schedule_in_words(schedule: dict[str, float]) -> str:
    """The fastener schedule as one line."""
    least = decimal(schedule["least"], 0)
    end_least = decimal(schedule["end_least"], 0)
    return f"{least} to {inches(schedule['most'])} apart, {end_least} to {inches(schedule['end_most'])} from each end"


def take_off_cautions(
    face_width: float,
    average_length: float,
    end_joint: float,
    nail_spacing: float,
    nail_end: float,
    schedule: dict[str, float],
) -> list[str]:
    """What to watch: the schedule, the stagger, wide plank."""
    cautions = []
    if nail_spacing > schedule["most"]:
        cautions.append(
            f"Fasteners {inches(nail_spacing)} apart are too few for this size: the schedule is "
            f"{schedule_in_words(schedule)}."
        )
    if nail_spacing < schedule["least"]:
        cautions.append(
            f"Fasteners {inches(nail_spacing)} apart are closer than the schedule, {schedule_in_words(schedule)}: "
            "watch for split tongues."
        )
    if nail_end < schedule["end_least"] or nail_end > schedule["end_most"]:
        cautions.append(f"{inches(nail_end)} from the board ends is off the schedule: {schedule_in_words(schedule)}.")
    if average_length < 3 * end_joint:
        cautions.append(
            f"Boards averaging {inches(average_length)} leave little room for end joints {inches(end_joint)} apart: "
            "order a longer grade, or expect more cutting."
        )
    if face_width > WIDE_OVER:
        cautions.append(f"Over {inches(WIDE_OVER)} of face the board is glued as well; adhesive is not counted here.")
    return cautions
