"""How many smoke and carbon monoxide alarms a dwelling needs, and where."""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import CREW_RULE, Answer, Citation, Output, output_rows, refuse
from calculators.declaring import Help, calculator, count, yes_no
from calculators.writing import decimal

SMOKE = "IRC R314.3"
GAS = "IRC R315"
EVERY_LEVEL = "NFPA 72; this crew's rule"


def n(count: float) -> str:
    """A count as text, also where it came as a number with a point.

    >>> [n(2), n(3.0)]
    ['2', '3']
    """
    return decimal(count, 0)


def place(where: str, smoke: int, co: int, rule: str) -> dict[str, Any]:
    """One line of the list.

    >>> place("in each sleeping room", 3, 0, "")["smoke"]
    3
    """
    return {"where": where, "smoke": smoke, "co": co, "rule": rule}


@calculator(
    title="How many alarms, and where",
    summary="Smoke and carbon monoxide alarms of a dwelling, counted place by place.",
    outputs=(
        Output("smoke", "Places with a smoke alarm", "count", "each", step=1),
        Output("co", "Places with a CO alarm", "count", "each", step=1),
        Output("both", "Devices, smoke and CO in one", "count", "each", step=1),
        Output("smoke_only", "Devices, smoke alone", "count", "each", step=1),
        Output("co_only", "Devices, CO alone", "count", "each", step=1),
        Output("devices", "Devices in all", "count", "each", step=1),
        output_rows(
            "places",
            "Places",
            Output("where", "Where", "text"),
            Output("smoke", "Smoke", "count", step=1),
            Output("co", "CO", "count", step=1),
            Output("rule", "Rule", "text"),
        ),
    ),
    formula=(
        "Smoke = sleeping rooms + sleeping areas + levels without a sleeping area. CO, where anything burns fuel or a "
        "garage is attached = sleeping areas + sleeping rooms with a burner; by NFPA 72 also each further level."
    ),
    sources=(
        Citation("irc", "R314.3; R315.2 and R315.3, as they are quoted"),
        Citation("nfpa-72", "chapter 29; carbon monoxide on each level, from memory"),
        CREW_RULE,
    ),
    example={
        "storeys": "2",
        "basement": "yes",
        "attic": "no",
        "sleeping_rooms": "3",
        "sleeping_areas": "1",
        "sleeping_levels": "1",
    },
    other_names=("smoke detectors", "CO detectors", "carbon monoxide alarm count", "R314", "R315"),
    cannot_decide=(
        "Which edition the place has adopted and what its state adds. The building department and the fire marshal "
        "decide. A licensed electrician does the wiring or answers for it."
    ),
)
def alarm_places(
    storeys: Annotated[int, count("Storeys above the ground", "1, from 1 to 4")],
    basement: Annotated[bool, yes_no("Basement", default="no")],
    attic: Annotated[bool, yes_no("Attic that is lived in", default="no")],
    sleeping_rooms: Annotated[
        int, count("Sleeping rooms", "2, from 1 to 12"), Help("By use, not by the name on the plan.")
    ],
    sleeping_areas: Annotated[
        int, count("Separate sleeping areas", "1, from 1 to 12"), Help("Groups of sleeping rooms off one hall.")
    ],
    sleeping_levels: Annotated[int, count("Levels that have a sleeping area", "1, from 1 to 6")],
    split_levels: Annotated[
        int, count("Split levels that need none", "0, from 0 to 3"), Help("Less than a storey down, no door between.")
    ],
    fuel: Annotated[
        bool, yes_no("Anything that burns fuel", default="yes"), Help("Furnace, heater, range, fireplace.")
    ],
    garage: Annotated[bool, yes_no("Attached garage", default="no")],
    fuel_rooms: Annotated[
        int, count("Sleeping rooms with a burner", "0, from 0 to 12"), Help("In the room or in its own bathroom.")
    ],
    co_each_level: Annotated[bool, yes_no("CO alarm on each level too", default="yes")],
    combined: Annotated[bool, yes_no("Both in one device", default="yes")],
) -> Answer:
    """Count the alarms of one dwelling: in each sleeping room, outside each sleeping area, on each further level.

    ``storeys`` above the ground, ``attic`` one that is lived in. ``sleeping_areas`` are groups of sleeping rooms that
    open to one hall; ``sleeping_levels`` are the levels that have such a hall, so that its alarm counts for the level.
    ``split_levels`` are levels less than a storey below one that has an alarm, with no door between. ``fuel_rooms``
    are sleeping rooms with a fuel-burning appliance inside or in their own bathroom.

    Source: IRC R314.3, R315.2, R315.3. A carbon monoxide alarm on each further level: NFPA 72.

    >>> answer = alarm_places(storeys=2, basement=True, sleeping_rooms=3)
    >>> [answer["smoke"], answer["co"], answer["devices"]]
    [6.0, 3.0, 6.0]
    """
    levels = storeys
    if basement:
        levels += 1
    if attic:
        levels += 1
    if sleeping_areas > sleeping_rooms:
        refuse(
            "sleeping_areas", f"There are {n(sleeping_areas)} sleeping areas for {n(sleeping_rooms)} sleeping rooms."
        )
    if sleeping_levels > sleeping_areas:
        refuse("sleeping_levels", f"{n(sleeping_levels)} levels cannot share {n(sleeping_areas)} sleeping areas.")
    served = sleeping_levels + split_levels
    if served > levels:
        refuse("sleeping_levels", f"{n(served)} levels are given, and the dwelling has {n(levels)}.")
    if fuel_rooms > sleeping_rooms:
        refuse("fuel_rooms", f"{n(fuel_rooms)} such rooms are given, and there are {n(sleeping_rooms)} sleeping rooms.")
    further = levels - served
    needs_co = fuel or garage or fuel_rooms > 0
    co_area = 0
    co_room = 0
    co_level = 0
    if needs_co:
        co_area = sleeping_areas
        co_room = fuel_rooms
        if co_each_level:
            co_level = further
    smoke = sleeping_rooms + sleeping_areas + further
    co = co_area + co_room + co_level
    rows = [
        place("in each sleeping room", sleeping_rooms, co_room, f"{SMOKE}; {GAS} beside a burner"),
        place("in the hall outside each sleeping area", sleeping_areas, co_area, f"{SMOKE}; {GAS}"),
    ]
    if further > 0:
        rows.append(place("on each further level", further, co_level, f"{SMOKE}; {EVERY_LEVEL}"))
    both = co if combined else 0
    cautions = ["More is allowed. A long hall, a door across it or a bed behind a shut door wants one more."]
    if needs_co and not co_each_level:
        cautions.append(
            "Many states and NFPA 72 want a carbon monoxide alarm on each level: ask before you leave it out."
        )
    if not needs_co:
        cautions.append(
            "Without a burner or an attached garage the model code asks for no carbon monoxide alarm. The place may."
        )
    if fuel_rooms > 0:
        cautions.append("A burner in a sleeping room or its bathroom: ask the fitter whether it may be there at all.")
    if basement:
        cautions.append("In the basement the alarm hangs at the ceiling near the foot of the stairs.")
    return {
        "smoke": smoke,
        "co": co,
        "both": both,
        "smoke_only": smoke - both,
        "co_only": co - both,
        "devices": smoke + co - both,
        "places": rows,
        "cautions": cautions,
        "working": [
            f"levels: {n(levels)}, of which {n(sleeping_levels)} have a hall, {n(split_levels)} need none",
            f"smoke: {n(sleeping_rooms)} rooms + {n(sleeping_areas)} areas + {n(further)} further levels = {n(smoke)}",
            f"carbon monoxide: {n(co_area)} areas + {n(co_room)} rooms + {n(co_level)} further levels = {n(co)}",
        ],
    }
