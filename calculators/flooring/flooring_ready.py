"""Whether the boards and the subfloor are dry enough to lay a wood floor, from the readings of a moisture meter.

Three things are compared: the boards with the subfloor, both with the moisture that wood comes to in this house when
people live in it, and the wettest place of the subfloor with what a dry one shows.
"""

from __future__ import annotations

from math import ceil
from typing import Annotated, TypedDict

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, refuse
from calculators.declaring import Help, Law, area, calculator, length, percent, rows, temperature
from calculators.flooring.wood_moisture import moisture_at
from calculators.writing import NOISE, decimal, inches

READY = "ready to lay"
WET_SPOT = "wait: find the water under the wettest place"
WET_SUBFLOOR = "wait: dry the subfloor"
WET_BOARDS = "wait: the boards are wetter than the subfloor"
DAMP_BOARDS = "wait: the boards are damper than the house will be"
DRY_BOARDS = "wait: the boards are drier than the house will be"
DAMP_HOUSE = "wait: house and boards are damper than they will be"

DO = {
    READY: "Write both averages into the log and go on. Read again if more than two days pass or the weather turns.",
    WET_SPOT: "Look for a leak, a wet crawl space or a damp slab beside it. Mend it, dry it, and read the place again.",
    WET_SUBFLOOR: "Keep heating or a dryer going, open no bundle, and read again after three days.",
    WET_BOARDS: "Open no bundle: leave the boards in the heated house, or send them back, and read again after a week.",
    DAMP_BOARDS: "Hold the house at its humidity, stack the boards with air between, and read again after a week.",
    DRY_BOARDS: "Bring the house to its humidity, let the boards stand in it, and read again after a week.",
    DAMP_HOUSE: "Heat or dry the house to how it will be lived in, boards and all, and read again after a week.",
}
"""What to do, by verdict."""

GUIDELINES = "the installation guidelines"

SUBFLOOR_READINGS = 20.0
BOARD_READINGS = 40.0
"""Readings for each 1,000 sq ft."""
PER_DEGREE = 0.05
"""Percent that a pin meter shows too much for each degree F above the temperature that it is calibrated for."""


def average(readings: list[dict[str, float]]) -> float:
    """The mean of the readings.

    >>> average([{"reading": 8.0}, {"reading": 10.0}])
    9.0
    """
    return sum(row["reading"] for row in readings) / len(readings)


def highest(readings: list[dict[str, float]]) -> float:
    """The largest of the readings."""
    return max(row["reading"] for row in readings)


def temperature_correction(temperature: float, calibrated: float) -> float:
    """Percent to add to a reading of a pin meter, for wood at a temperature in F.

    >>> temperature_correction(50, 70), temperature_correction(90, 70)
    (1.0, -1.0)

    Source: Wood Handbook FPL-GTR-190, page 13-3: half a percent for each 10 F.
    """
    return (calibrated - temperature) * PER_DEGREE


def verdict_of(subfloor: float, boards: float, wettest: float, allowed: float, most: float, band: list[float]) -> str:
    """The first thing that is wrong, the wettest place first; ``band`` is the least and the most moisture in service.

    >>> verdict_of(9.0, 7.5, 10.0, 4.0, 12.0, [6.0, 9.5])
    'ready to lay'
    """
    if wettest > most + NOISE:
        return WET_SPOT
    if subfloor - boards > allowed + NOISE:
        return WET_SUBFLOOR
    if boards - subfloor > allowed + NOISE:
        return WET_BOARDS
    if boards > band[1] + NOISE:
        if subfloor > band[1] + NOISE:
            return DAMP_HOUSE
        return DAMP_BOARDS
    return DRY_BOARDS if boards < band[0] - NOISE else READY


class SubfloorReading(TypedDict):
    """A reading of the moisture meter in the subfloor."""

    reading: Annotated[float, percent("Reading", "from 4 to 60 %")]


class BoardReading(TypedDict):
    """A reading of the moisture meter in the boards."""

    reading: Annotated[float, percent("Reading", "from 4 to 30 %")]


@calculator(
    title="Dry enough to lay",
    summary="Readings of subfloor and boards against each other and against the house as it will be lived in.",
    outputs=(
        Output("verdict", "Verdict", "text"),
        Output("ready", "Ready to lay", "yes-no"),
        Output("to_do", "What to do", "text"),
        Output("subfloor_average", "Subfloor, average", "percent", "%", step=0.1),
        Output("boards_average", "Boards, average", "percent", "%", step=0.1),
        Output("difference", "They differ by", "percent", "%", step=0.1),
        Output("allowed", "They may differ by", "percent", "%", step=0.1),
        Output("wettest", "Subfloor, wettest place", "percent", "%", step=0.1),
        Output("service_least", "Wood in the lived-in house, least", "percent", "%", step=0.1),
        Output("service_most", "Wood in the lived-in house, most", "percent", "%", step=0.1),
        Output("correction", "Added to each reading for temperature", "percent", "%", step=0.01),
    ),
    formula=(
        "Reading corrected = reading + (temperature of calibration - temperature of the wood) x 0.05 % for 1 F.\n\n"
        "Ready when the wettest place is not over its limit, the two averages differ by no more than is allowed at "
        "this width, and the boards lie in the range that wood comes to in the lived-in house (equation 4-5)."
    ),
    sources=(
        Citation(
            "wood-floor-installation-guidelines",
            "acclimation: 4 % under 3 in, 2 % from 3 in; readings and 30 to 50 % humidity from memory",
        ),
        Citation("wood-handbook", "equation 4-5; page 13-3, temperature correction of conductance meters"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={
        "subfloor": "9.5; 10; 11; 9; 10.5; 9.5; 10; 10",
        "boards": "7; 7.5; 7; 8; 7.5; 7; 7.5; 8",
        "board_width": "2-1/4 in",
        "wood_temperature": "65 F",
    },
    other_names=("moisture test", "acclimation", "meter readings", "subfloor moisture"),
    cannot_decide=(
        "What the maker of the boards asks for: his limits come first, and his warranty hangs on them. Over concrete, "
        "over radiant heat and over a damp crawl space other tests belong to it, and the lead decides."
    ),
)
def flooring_ready(
    subfloor: Annotated[
        list[dict[str, float]], rows("Readings of the subfloor", SubfloorReading), Help("One a place, as read.")
    ],
    boards: Annotated[
        list[dict[str, float]], rows("Readings of the boards", BoardReading), Help("One a board, as read.")
    ],
    board_width: Annotated[float, length("Face width of the boards", "2-1/4 in, from 1 to 12 in")],
    wood_temperature: Annotated[
        float, temperature("Temperature of the wood", "70 F, from 20 to 120 F, usually 55 to 90 F")
    ],
    calibrated: Annotated[
        float,
        temperature("Temperature that the meter is calibrated for", "70 F, from 50 to 90 F"),
        Help("The meter's leaflet says it. A meter that corrects by itself: give the wood's temperature here too."),
    ],
    house_temperature: Annotated[
        float, temperature("House when lived in", "70 F, from 50 to 100 F, usually 60 to 80 F")
    ],
    humidity_least: Annotated[
        float, percent("Least humidity when lived in", "30 %, from 30 to 50 %"), Law("at least 30 %", GUIDELINES)
    ],
    humidity_most: Annotated[
        float, percent("Most humidity when lived in", "50 %, from 30 to 50 %"), Law("at most 50 %", GUIDELINES)
    ],
    allowed_strip: Annotated[
        float, percent("Subfloor and strip may differ by", "4 %, from 0.5 to 4 %"), Law("at most 4 %", GUIDELINES)
    ],
    allowed_plank: Annotated[
        float, percent("Subfloor and plank may differ by", "2 %, from 0.5 to 2 %"), Law("at most 2 %", GUIDELINES)
    ],
    plank_from: Annotated[
        float, length("Plank from this width", "3 in, from 1 to 3 in"), Law("at most 3 in", GUIDELINES)
    ],
    most_subfloor: Annotated[
        float,
        percent("Highest reading of a dry subfloor", "12 %, from 6 to 12 %"),
        Law("at most 12 %", "common practice"),
    ],
    off_service: Annotated[
        float,
        percent("Boards may be off the house's range by", "1 %, from 0 to 1 %"),
        Law("at most 1 %", "common practice"),
    ],
    area: Annotated[float, area("Floor that was read; 0 to leave the count", "0, from 0 to 20000 sq ft")],
) -> Answer:
    """The averages, what they may differ by at this width, what the house asks for, and the verdict.

    Readings in percent, corrected for the temperature of the wood first. An ``area`` of 0: their number is not
    judged.

    >>> sub = [{"reading": 9.0}, {"reading": 10.0}]
    >>> strip = [{"reading": 7.0}, {"reading": 8.0}]
    >>> answer = flooring_ready(subfloor=sub, boards=strip)
    >>> answer["verdict"], answer["difference"]
    ('ready to lay', 2.0)
    >>> flooring_ready(subfloor=[{"reading": 12.0}], boards=strip)["verdict"]
    'wait: dry the subfloor'

    Source: wood flooring installation guidelines (4 % for strip, 2 % from 3 in); Wood Handbook equation 4-5, p. 13-3.
    """
    if len(subfloor) == 0:
        refuse("subfloor", "no reading of the subfloor is given: at least one is wanted")
    if len(boards) == 0:
        refuse("boards", "no reading of the boards is given: at least one is wanted")
    if humidity_least > humidity_most:
        refuse(
            "humidity_least",
            f"the least humidity, {decimal(humidity_least, 1)} %, is more than the most, {decimal(humidity_most, 1)} %",
        )
    added = temperature_correction(wood_temperature, calibrated)
    under = average(subfloor) + added
    over = average(boards) + added
    wettest = highest(subfloor) + added
    allowed = allowed_strip
    kind = "strip"
    if board_width >= plank_from:
        allowed = allowed_plank
        kind = "plank"
    low = moisture_at(house_temperature, humidity_least)
    high = moisture_at(house_temperature, humidity_most)
    verdict = verdict_of(under, over, wettest, allowed, most_subfloor, [low - off_service, high + off_service])
    working = [
        f"wood at {decimal(wood_temperature, 1)} F, meter calibrated for {decimal(calibrated, 1)} F: "
        f"{decimal(added, 2)} % added to each reading",
        f"{len(subfloor)} readings of the subfloor: average {decimal(under, 2)} %, highest {decimal(wettest, 2)} %",
        f"{len(boards)} readings of the boards: average {decimal(over, 2)} %",
        f"{inches(board_width)} wide is {kind}: the averages may differ by {decimal(allowed, 1)} %, and differ by "
        f"{decimal(abs(under - over), 2)} %",
        f"lived in at {decimal(house_temperature, 0)} F and {decimal(humidity_least, 0)} to "
        f"{decimal(humidity_most, 0)} % humidity, wood comes to {decimal(low, 1)} to {decimal(high, 1)} %; "
        f"{decimal(off_service, 1)} % beyond is let pass",
    ]
    return {
        "verdict": verdict,
        "ready": verdict == READY,
        "to_do": DO[verdict],
        "subfloor_average": under,
        "boards_average": over,
        "difference": abs(under - over),
        "allowed": allowed,
        "wettest": wettest,
        "service_least": low,
        "service_most": high,
        "correction": added,
        "cautions": ready_cautions(subfloor, boards, area, added),
        "working": working,
    }


def ready_cautions(
    subfloor: list[dict[str, float]], boards: list[dict[str, float]], area: float, added: float
) -> list[str]:
    """What to watch: too few readings, readings that scatter, a cold meter."""
    cautions = []
    wanted = ceil(area / 1000 * SUBFLOOR_READINGS - NOISE)
    wanted_boards = ceil(area / 1000 * BOARD_READINGS - NOISE)
    if len(subfloor) < wanted:
        cautions.append(f"Readings of the subfloor: {len(subfloor)}. This area wants {wanted}.")
    if len(boards) < wanted_boards:
        cautions.append(f"Readings of the boards: {len(boards)}. This area wants {wanted_boards}.")
    if highest(boards) - average(boards) > 2:
        cautions.append(
            "The boards differ among themselves by more than 2 %: read more bundles, and set wet ones aside."
        )
    if abs(added) > 1:
        cautions.append("The wood is far from the meter's temperature: let it come to the house's and read again.")
    return cautions
