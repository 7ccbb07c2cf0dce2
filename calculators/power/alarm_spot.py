"""Whether a smoke alarm may hang in this spot: kitchen, bathroom, moving air, dead corners."""

from __future__ import annotations

from typing import Annotated, Any

from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, output_rows
from calculators.declaring import Help, calculator, choice
from calculators.distances import VERDICT, against, distance, failing, limit_in_words, outcome, verdict
from calculators.power.alarm_spot_drawing import CORNER, DOWN, PEAK, alarm_spot_drawing
from calculators.writing import TAPE, tape

SENSORS = {
    "photoelectric": "photoelectric",
    "ionization-silenced": "ionization, with a silencing button",
    "ionization": "ionization",
}
COOKING = {"photoelectric": 72.0, "ionization-silenced": 120.0, "ionization": 240.0}
"""Least distance to a built-in cooking appliance, inches: single facts of IRC R314.3.1."""

COOKING_WANTED = 120.0
"""NFPA 72 keeps this from every alarm that is not listed for nearer, unless no other place is left. Inches."""

BATH = 36.0
AIR = 36.0
DOOR = 252.0

COOKING_RULE = "IRC R314.3.1"
BATH_RULE = "IRC R314.3"
FIRE_CODE = "NFPA 72 ch. 29"
MAKER = "makers' sheets"


def row(what: str, measured: float, least: float, most: float, rule: str) -> dict[str, Any]:
    """One distance against its limit, inches; a most of 0 is no upper limit.

    >>> [row("wall", 4, 4, 0, "")["passes"], row("peak", 37, 0, 36, "")["passes"], row("top", 6, 4, 12, "")["limit"]]
    [True, False, '4 in to 12 in']
    """
    passes = against(measured, least, most) == "passes"
    limit = limit_in_words(least, most)
    return {"what": what, "measured": measured, "limit": limit, "passes": passes, "rule": rule}


@calculator(
    title="Spot for a smoke alarm",
    summary="Distances of one spot for a smoke alarm against the usual limits: pass or fail, row by row.",
    outputs=(
        Output("verdict", "This spot", "text"),
        *VERDICT,
        Output("cooking_least", "This alarm from cooking, least", "length", "in", step=1, rounds="up"),
        output_rows(
            "distances",
            "Distances",
            Output("what", "To", "text"),
            Output("measured", "Measured", "length", "in", step=1 / 16, rounds="tape"),
            Output("limit", "Limit", "text"),
            Output("passes", "Passes", "yes-no"),
            Output("rule", "Rule", "text"),
        ),
    ),
    formula="Each distance is at least its limit; the way to a door, a wall's band and a peak have a most as well.",
    sources=(
        Citation("irc", "R314.3, R314.3.1, as they are quoted"),
        Citation("nfpa-72", "chapter 29, as fire departments and makers quote it; the peak's 4 in from memory"),
        COMMON_PRACTICE,
    ),
    example={"cooking": "90 in", "bath": "30 in", "register": "60 in", "fan": "120 in", "door": "60 in"},
    other_names=("smoke detector distance", "nuisance alarm", "dead air space", "alarm near kitchen", "alarm height"),
    cannot_decide=(
        "Which edition the place has adopted. The building department and the fire marshal decide, and an alarm that a "
        "room must have is not left out for a distance: then ask. The maker's sheet wins where it asks for more."
    ),
    drawing=alarm_spot_drawing,
)
def alarm_spot(
    mount: Annotated[
        str,
        choice(
            "It hangs on",
            {"ceiling": "a flat ceiling", "wall": "a wall", "slope": "a sloped or peaked ceiling"},
            default="ceiling",
        ),
        Help("A slope is steeper than 1 in 8."),
    ],
    sensor: Annotated[str, choice("Alarm", SENSORS, default="photoelectric")],
    cooking: Annotated[
        float, distance("To the nearest cooking appliance", "20 ft"), Help("Built in: range, oven, cooktop.")
    ],
    bath: Annotated[float, distance("To the door of a bathroom", "60 in"), Help("One that has a tub or a shower.")],
    register: Annotated[float, distance("To a grille that blows", "60 in")],
    fan: Annotated[float, distance("To the tip of a fan's blade", "120 in")],
    door: Annotated[
        float,
        distance("Way to the furthest sleeping room's door", "60 in"),
        Help("0 where it serves no sleeping area."),
    ],
    edge: Annotated[float, distance("On a ceiling: to the nearest wall", "12 in")],
    down: Annotated[float, distance("On a wall: its top below the ceiling", "6 in")],
    peak_across: Annotated[float, distance("Under a slope: across to the peak", "24 in")],
    peak_down: Annotated[float, distance("Under a slope: down from the peak", "6 in")],
) -> Answer:
    """Each distance of one spot against its limit. Lengths in inches, measured across the room.

    ``door`` is along the way to the furthest sleeping room; under a slope ``peak_across`` is the level distance.

    Source: IRC R314.3.1 (6, 10 and 20 ft), R314.3 (3 ft from a bathroom); NFPA 72 chapter 29 (10 ft, 36 in, 21 ft,
    12 in, peak); 4 in from a corner as makers' sheets give it.

    >>> answer = alarm_spot(sensor="ionization", cooking=150, bath=30)
    >>> [answer["passes"], answer["verdict"]]
    [False, 'fails: cooking appliance, bathroom door']
    """
    rows = [
        row("cooking appliance", cooking, COOKING[sensor], 0, COOKING_RULE),
        row("bathroom door", bath, BATH, 0, BATH_RULE),
        row("grille that blows", register, AIR, 0, FIRE_CODE),
        row("tip of a fan's blade", fan, AIR, 0, FIRE_CODE),
        row("way to the sleeping room's door", door, 0, DOOR, FIRE_CODE),
    ]
    if mount == "ceiling":
        rows.append(row("nearest wall", edge, CORNER, 0, MAKER))
    if mount == "wall":
        rows.append(row("top of the alarm to the ceiling", down, CORNER, DOWN, FIRE_CODE))
    if mount == "slope":
        rows.append(row("across to the peak", peak_across, 0, PEAK, FIRE_CODE))
        rows.append(row("down from the peak", peak_down, CORNER, 0, FIRE_CODE))
    faults = failing(rows)
    cautions = ["The alarm's own sheet comes with it and wins where it asks for more."]
    if cooking < COOKING_WANTED - TAPE and cooking >= COOKING[sensor] - TAPE:
        cautions.append(
            f"Nearer than {tape(COOKING_WANTED)} to cooking only where no other place is left, and with an alarm "
            "that is listed for it (NFPA 72). One that goes off at every breakfast is taken down."
        )
    if mount == "wall":
        cautions.append("An inside wall: an outside one that is cold keeps smoke away from the alarm.")
    return {
        "verdict": verdict(faults, "passes"),
        "passes": len(faults) == 0,
        "faults": len(faults),
        "distances": rows,
        "cooking_least": COOKING[sensor],
        "cautions": cautions,
        "working": [
            f"{each['what']}: {tape(each['measured'])}, {each['limit']} ({each['rule']}): {outcome(each)}"
            for each in rows
        ],
    }
