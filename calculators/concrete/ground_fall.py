"""Ground that falls away from a house: the drop to build and to find, and the fall of a swale."""

from __future__ import annotations

from calculators.concrete.ground_fall_drawing import ground_fall_drawing
from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Calculator, Citation, Input, Output, Rule
from calculators.writing import TAPE, feet_inches, inches, tape, write

STRIP = 120.0
"""The 10 ft along the foundation that IRC R401.3 looks at."""
CODE = "IRC R401.3"
NOISE = 1e-9
"""A drop that is short by less than this is not short."""


def ground_fall(
    room: float,
    drop: float,
    short_slope: float,
    paved: bool,
    paved_fall: float,
    settles: float,
    reading: float,
    swale: float,
    swale_fall: float,
) -> Answer:
    """The drop of the ground over the strip along a wall.

    Lengths in inches, slopes as ratios. ``room`` is what lies between the wall and what stands in the way; ``drop`` is
    the fall over the code's strip of 10 ft. With less room the ground keeps ``short_slope`` over the room, and a
    swale or a drain takes the water at its end. Paving wants ``paved_fall`` over the same length.

    >>> answer = ground_fall(60, 6, 0.05, False, 0.02, 1, 7, 480, 0.02)
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
    fresh = wanted + settles
    if paved:
        fresh = wanted
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


CALCULATOR = Calculator(
    name="ground-fall",
    title="Fall of the ground from a house",
    trade="concrete",
    summary="How far the ground drops along a wall, with the room there is, and how far a swale falls.",
    function=ground_fall,
    drawing=ground_fall_drawing,
    inputs=(
        Input("room", "Room from the wall to what stands in the way", "length", "ft-in", 120, 12, 2400, (24, 600)),
        Input("drop", "Drop over the first 10 ft, at least", "length", "in", 6, 6, 36, (6, 12), Rule("least", 6, CODE)),
        Input(
            "short_slope",
            "Slope where there is less room, at least",
            "slope",
            "%",
            0.05,
            0.05,
            0.3,
            (0.05, 0.1),
            Rule("least", 0.05, CODE),
        ),
        Input("paved", "The strip is paved", "yes-no", default=False),
        Input(
            "paved_fall",
            "Fall of paving, at least",
            "slope",
            "%",
            0.02,
            0.02,
            0.1,
            (0.02, 0.03),
            Rule("least", 0.02, CODE),
        ),
        Input("settles", "Fresh ground settles at the wall", "length", "in", 1, 0, 12, (0.5, 3)),
        Input(
            "reading",
            "Ground at the end of the strip, against that at the wall",
            "length",
            "in",
            7,
            -60,
            120,
            ways=("lower than at the wall", "higher than at the wall"),
        ),
        Input("swale", "Length of the swale", "length", "ft-in", 480, 12, 6000, (60, 2400)),
        Input(
            "swale_fall",
            "Fall of the swale",
            "slope",
            "%",
            0.02,
            0.001,
            0.2,
            (0.02, 0.05),
            Rule("least", 0.02, CODE + " within 10 ft of a house", "guidance"),
        ),
    ),
    outputs=(
        Output("drop_wanted", "Drop over the strip, at least", "length", "in", 0.125, "up"),
        Output("drop_fresh", "Drop to build in fresh ground", "length", "in", 0.125, "up"),
        Output("slope", "Slope over the strip", "slope", "%", 0.1, "up"),
        Output("way", "Where the water goes", "text"),
        Output("swale_drop", "Drop of the swale, end to end", "length", "in", 0.125, "up"),
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
)
