"""Floor finish: what to buy for the coats, and how long the place is shut."""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Output, output_rows
from calculators.declaring import Help, area, calculator, count, percent, plan, time, volume
from calculators.flooring.floor_area import floor_area
from calculators.flooring.floor_inputs import CUBIC_FEET_A_GALLON, HoursADay, MeasuredArea
from calculators.writing import NOISE, decimal, whole

DAY = 24.0


def next_start(earliest: float, work: float, hours_a_day: float) -> float:
    """The hour at which a coat that may begin from `earliest` on can begin and still end in the working day.

    Hours count from the start of work on the first day; working days are alike. Work that fills more than a day
    begins with a day.

    >>> next_start(24.0, 2.0, 8.0), next_start(5.0, 2.0, 8.0), next_start(7.0, 2.0, 8.0), next_start(13.0, 9.0, 8.0)
    (24.0, 5.0, 24.0, 24.0)
    """
    day = whole(earliest / DAY, "down") * DAY
    if earliest - day < NOISE:
        return earliest
    if earliest - day + work <= hours_a_day + NOISE:
        return earliest
    return day + DAY


@calculator(
    title="Floor finish and the hours shut",
    summary="Finish to buy for the coats, the work of each, and how long the place is closed.",
    outputs=(
        Output("area", "Floor area", "area", "sq ft", step=0.1),
        Output("one_coat", "Finish for one coat", "volume", "gal", step=1 / 4, rounds="up"),
        Output("finish", "Finish in all", "volume", "gal", step=1 / 4, rounds="up"),
        Output("containers", "Containers", "count", "containers", step=1, rounds="up"),
        Output("pads", "Applicator pads", "count", "each", step=1, rounds="up"),
        Output("strainers", "Paint strainers", "count", "each", step=1, rounds="up"),
        Output("screens", "Buffer screens", "count", "each", step=1, rounds="up"),
        Output("work_coat", "Work on a coat, these people", "time", "h", step=1 / 2, rounds="up"),
        Output("labour", "Labour of all coats", "time", "h", step=1 / 2, rounds="up"),
        Output("work_days", "Days on which a coat is laid", "count", "days", step=1),
        Output("closed", "Shut, from the end of the first coat", "time", "h", step=1, rounds="up"),
        Output("closed_all", "Shut, from the first stroke", "time", "h", step=1, rounds="up"),
        Output("furniture_from", "Furniture, from the first stroke", "time", "days", step=1 / 2, rounds="up"),
        Output("rugs_from", "Rugs, from the first stroke", "time", "days", step=1 / 2, rounds="up"),
        output_rows(
            "schedule",
            "Coats",
            Output("coat", "Coat", "count", step=1),
            Output("day", "Day", "count", step=1),
            Output("start", "Begins, after the first", "time", "h", step=1 / 2, rounds="up"),
            Output("end", "Ends", "time", "h", step=1 / 2, rounds="up"),
        ),
    ),
    formula=(
        "Finish = area x coats x (1 + what is left) / coverage. Containers = finish / what one holds.\n\n"
        "The next coat begins one wait after this one began, or with the next working day that it fits into: every "
        "coat goes the same way at the same pace, so every place has had its wait.\n\n"
        "Shut, from the end of the first coat = begin of the last coat, counted from the first, + wait until socks."
    ),
    sources=(COMMON_PRACTICE, CREW_RULE),
    example={"rooms": "front room: 20' x 16'; closet: 5' x 2' 6\"; less hearth: 5' x 2'"},
    other_names=("gallons of polyurethane", "floor coats", "days the house is closed", "varnish for a floor"),
    cannot_decide=(
        "The can decides coverage and waits, and a cold or damp house makes every wait longer. Who may be in the house "
        "with the vapour is on its safety data sheet."
    ),
)
def floor_finish(
    rooms: Annotated[
        list[dict[str, Any]], plan("Rooms", default=""), Help("Wall to wall, closets too; less what is not finished.")
    ],
    measured_area: MeasuredArea,
    coats: Annotated[float, count("Coats", "3, from 1 to 8, usually 1 to 4")],
    coverage: Annotated[
        float, area("A gallon covers, one coat", "500 sq ft, from 100 to 1000 sq ft, usually 400 to 600 sq ft")
    ],
    waste: Annotated[float, percent("Left in tray, pad and can", "10 %, from 0 to 50 %, usually 5 to 15 %")],
    container: Annotated[float, volume("A container holds", "1 gal, from 0.01 to 8 cu ft")],
    screen_coverage: Annotated[
        float, area("A buffer screen covers", "500 sq ft, from 50 to 2000 sq ft, usually 300 to 700 sq ft")
    ],
    recoat_wait: Annotated[float, time("Wait between coats", "24 h, from 1 to 240 h, usually 2 to 72 h")],
    walk_wait: Annotated[float, time("Wait until socks on the last coat", "24 h, from 1 to 240 h, usually 4 to 72 h")],
    furniture_wait: Annotated[float, time("Wait for furniture", "4 days, from 0.5 to 30 days")],
    rug_wait: Annotated[float, time("Wait for rugs and covers", "30 days, from 1 to 100 days")],
    labour_per_100: Annotated[
        float,
        time("Labour for one coat of 100 sq ft", "0.33 h, from 0.05 to 5 h, usually 0.15 to 1 h"),
        Help("The scuffing and vacuuming before it counts."),
    ],
    people: Annotated[float, count("People", "2, from 1 to 6")],
    hours_a_day: HoursADay,
) -> Answer:
    """Finish, containers, hours of work and hours shut for the coats of a floor.

    Areas in square feet, waits in hours; ``labour_per_100`` is of all people, with the scuffing before the coat.

    Each coat runs from the far wall to the door at the same pace, so every place waits alike: the next coat begins one
    wait after this one began, or with the next working day that it fits into.

    >>> answer = floor_finish(measured_area=500, labour_per_100=1 / 3, people=1)
    >>> round(answer["finish"] * 1728 / 231, 6), round(answer["containers"], 6), answer["closed"], answer["work_days"]
    (3.3, 3.3, 72.0, 3)

    Source: area / coverage and a sum of waits; the figures are common practice and this crew's.
    """
    working: list[str] = []
    area = floor_area(rooms, measured_area, working)
    more = 1 + waste / 100
    one_coat = area * more / coverage
    gallons = one_coat * coats
    containers = gallons * CUBIC_FEET_A_GALLON / container
    working.append(
        f"{decimal(area, 1)} sq ft / {decimal(coverage, 0)} sq ft a gallon and {decimal(waste, 0)} %: "
        f"{decimal(one_coat, 2)} gal a coat; {decimal(coats, 0)} coats: {decimal(gallons, 2)} gal"
    )
    labour_coat = area / 100 * labour_per_100
    work = labour_coat / people
    working.append(
        f"{decimal(area, 1)} / 100 x {decimal(labour_per_100, 2)} h = {decimal(labour_coat, 2)} h a coat; "
        f"{decimal(people, 0)} people: {decimal(work, 2)} h"
    )
    start = 0.0
    last_day = -1
    work_days = 0
    schedule = []
    for coat in range(1, whole(coats, "nearest") + 1):
        if coat > 1:
            start = next_start(start + recoat_wait, work, hours_a_day)
        day = whole(start / DAY + NOISE, "down")
        if day != last_day:
            work_days = work_days + 1
        last_day = day
        schedule.append({"coat": coat, "day": day + 1, "start": start, "end": start + work})
    closed = start + walk_wait
    working.append(
        f"last coat {decimal(start, 1)} h after the first, and {decimal(walk_wait, 1)} h until socks: "
        f"{decimal(closed, 1)} h; with the laying of the last coat {decimal(closed + work, 1)} h"
    )
    cautions = []
    if work > hours_a_day + NOISE:
        cautions.append(
            f"A coat takes {decimal(work, 1)} h, longer than the working day: more people, or fewer rooms at a time."
        )
    if recoat_wait < work:
        cautions.append("The wait between coats is shorter than the laying of one: the next would begin on wet floor.")
    if walk_wait < recoat_wait:
        cautions.append("Socks before the floor would take its next coat: read the can again.")
    return {
        "area": area,
        "one_coat": one_coat * CUBIC_FEET_A_GALLON,
        "finish": gallons * CUBIC_FEET_A_GALLON,
        "containers": containers,
        "pads": coats,
        "strainers": coats,
        "screens": (coats - 1) * whole(area / screen_coverage, "up"),
        "work_coat": work,
        "labour": labour_coat * coats,
        "work_days": work_days,
        "closed": closed,
        "closed_all": closed + work,
        "furniture_from": start + work + furniture_wait,
        "rugs_from": start + work + rug_wait,
        "schedule": schedule,
        "cautions": cautions,
        "working": working,
    }
