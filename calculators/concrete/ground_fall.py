"""Ground that falls away from a house: the drop to build and to find, and the fall of a swale."""

from __future__ import annotations

from typing import Annotated

from calculators.concrete.ground_fall_drawing import STRIP, ground_fall_drawing
from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output
from calculators.declaring import Guidance, Law, calculator, length, slope, yes_no
from calculators.writing import TAPE, feet_inches, inches, tape
from calculators.writing_units import write

CODE = "IRC R401.3"


@calculator(
    title="Fall of the ground from a house",
    summary="How far the ground drops along a wall, with the room there is, and how far a swale falls.",
    outputs=(
        Output("drop_wanted", "Drop over the strip, at least", "length", "in", step=1 / 8, rounds="up"),
        Output("drop_fresh", "Drop to build in fresh ground", "length", "in", step=1 / 8, rounds="up"),
        Output("slope", "Slope over the strip", "slope", "%", step=0.1, rounds="up"),
        Output("way", "Where the water goes", "text"),
        Output("swale_drop", "Drop of the swale, end to end", "length", "in", step=1 / 8, rounds="up"),
        Output("verdict", "The drop that was read", "text"),
    ),
    formula=(
        "With 10 ft of room: the drop. With less room: slope x room. On paving: fall x 10 ft, or the "
        "room.\n\n"
        "Fresh = that + what the ground settles. Swale = length x fall."
    ),
    sources=(Citation("irc", "R401.3 and its exception"), COMMON_PRACTICE, CREW_RULE),
    example={"room": "5'", "swale": "40'"},
    other_names=("grading", "slope away from foundation", "yard slope", "swale", "drainage around a house"),
    cannot_decide=(
        "Where the water may go: the city's drainage plan and the neighbour's line rule. How much ground settles is a "
        "guess; deep backfill and clay settle more. The adopted code and the inspector decide."
    ),
    drawing=ground_fall_drawing,
)
def ground_fall(
    room: Annotated[
        float,
        length("Room from the wall to what stands in the way", "10 ft, from 1 to 200 ft, usually 2 to 50 ft", "ft-in"),
    ],
    drop: Annotated[
        float,
        length("Drop over the first 10 ft, at least", "6 in, from 6 to 36 in, usually 6 to 12 in"),
        Law("at least 6 in", CODE),
    ],
    short_slope: Annotated[
        float,
        slope("Slope where there is less room, at least", "5 %, from 5 to 30 %, usually 5 to 10 %"),
        Law("at least 5 %", CODE),
    ],
    paved: Annotated[bool, yes_no("The strip is paved", default="no")],
    paved_fall: Annotated[
        float, slope("Fall of paving, at least", "2 %, from 2 to 10 %, usually 2 to 3 %"), Law("at least 2 %", CODE)
    ],
    settles: Annotated[float, length("Fresh ground settles at the wall", "1 in, from 0 to 12 in, usually 1/2 to 3 in")],
    reading: Annotated[
        float,
        length(
            "Ground at the end of the strip, against that at the wall",
            "7 in lower than at the wall, from 60 in higher than at the wall to 120 in lower than at the wall",
            "in",
            ways=("lower than at the wall", "higher than at the wall"),
        ),
    ],
    swale: Annotated[float, length("Length of the swale", "40 ft, from 1 to 500 ft, usually 5 to 200 ft", "ft-in")],
    swale_fall: Annotated[
        float,
        slope("Fall of the swale", "2 %, from 0.1 to 20 %, usually 2 to 5 %"),
        Guidance("at least 2 %", CODE + " within 10 ft of a house"),
    ],
) -> Answer:
    """The drop of the ground over the strip along a wall.

    Lengths in inches, slopes as ratios. With less than 10 ft of room the ground keeps ``short_slope`` over the
    room.

    >>> answer = ground_fall(room=60)
    >>> [answer["drop_wanted"], answer["drop_fresh"], answer["swale_drop"], answer["verdict"]]
    [3.0, 4.0, 9.6, 'passes']
    """
    strip = min(room, STRIP)
    wanted = drop
    way = "falls off freely"
    if room < STRIP:
        wanted = short_slope * strip
        way = "to a swale or a drain"
    if paved:
        wanted = paved_fall * strip
    fresh = wanted if paved else wanted + settles
    short = wanted - reading
    verdict = "passes"
    cautions: list[str] = []
    if short > TAPE:
        verdict = f"short by {tape(short)}"
    elif reading < fresh - TAPE:
        cautions.append(
            f"It passes today. Fresh ground settles about {inches(settles)} at the wall; build {inches(fresh)}."
        )
    if room < STRIP and not paved:
        cautions.append(
            f"Less room than {feet_inches(STRIP)}: at the end of the slope a swale or a drain takes the water along."
        )
    per_cent = write(wanted / strip, "slope", "%", 0.1)
    working = [
        f"Over {feet_inches(strip)} the ground drops {inches(wanted)} at least, {per_cent}.",
        f"Fresh: {inches(wanted)} + {inches(fresh - wanted)} that it settles = {inches(fresh)}.",
        f"Swale: {feet_inches(swale)} x {write(swale_fall, 'slope', '%', 0.1)} = {inches(swale * swale_fall)}.",
    ]
    return {
        "drop_wanted": wanted,
        "drop_fresh": fresh,
        "slope": wanted / strip,
        "way": way,
        "swale_drop": swale * swale_fall,
        "verdict": verdict,
        "cautions": cautions,
        "working": working,
    }
