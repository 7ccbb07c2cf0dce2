"""How large a building drain has to be for the fixtures of a small dwelling, and how much water it carries.

The code counts fixtures in drainage fixture units and gives the size by their sum and the slope. How much water then
runs, and how fast, follows from the slope, the bore and the roughness.
"""

from __future__ import annotations

from math import exp, log, pi, sqrt
from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, Plot, refuse
from calculators.declaring import Guidance, Help, calculator, choice, count, number, slope
from calculators.plumbing.drain_fall import CLOSET_DRAIN, EIGHTH_A_FOOT, QUARTER_A_FOOT, least_slope_for
from calculators.writing import NOISE, decimal, inches

HALF_A_FOOT = 0.5 / 12
GALLONS_A_MINUTE = 448.8311688311688
"""In a cubic foot a second: 60 s x 1728 cu in / 231 cu in."""
FEET_FACTOR = 1.4859185775384814
"""Manning's equation in feet: the cube root of the feet in a metre."""

BATHROOM, CLOSET, LAVATORY, BATH, KITCHEN, DISHWASHER, WASHER, TUB = 5, 3, 1, 2, 2, 2, 2, 2
"""Fixture units, each with its row in IPC Table 709.1: bathroom group and closet with 1.6 gal a flush (private),
lavatory, bathtub or shower, kitchen sink, dishwasher, clothes washer, laundry tray."""
WASHER_TRAP = 2.0

SIZES = [1.5, 2.0, 3.0, 4.0]
"""Those of IPC Table 710.1(1) that a small dwelling needs and that drain pipe is sold in."""
BORES = [1.610, 2.067, 3.068, 4.026]
"""Inside diameters of schedule 40 pipe of these sizes, inches."""
UNITS_AT = [[0, 3, 3], [0, 21, 26], [36, 42, 50], [180, 216, 250]]
"""IPC Table 710.1(1): units at 1/8, 1/4 and 1/2 in/ft; 0 where the size may not lie so flat."""


def row_of(size: float) -> int:
    """Which of the sizes it is.

    >>> [row_of(1.5), row_of(4)]
    [0, 3]
    """
    row = 0
    while row < len(SIZES) - 1 and SIZES[row] < size - NOISE:
        row = row + 1
    return row


def units_allowed(size: float, slope: float) -> float:
    """How many units the code allows on a size at a slope; between two slopes of the table the flatter one counts.

    >>> [units_allowed(3, 0.25 / 12), units_allowed(3, 0.02), units_allowed(2, 0.02), units_allowed(4, 0.1)]
    [42, 36, 0, 250]
    """
    row = UNITS_AT[row_of(size)]
    if slope >= HALF_A_FOOT - NOISE:
        return row[2]
    if slope >= QUARTER_A_FOOT - NOISE:
        return row[1]
    return row[0]


def smallest(units: float, slope: float, least: float) -> float:
    """The smallest size, at least ``least`` inches, that takes so many units at that slope; 0 where none does.

    >>> [smallest(12, 0.25 / 12, 3), smallest(12, 0.25 / 12, 1.25), smallest(43, 0.25 / 12, 3), smallest(999, 0.1, 3)]
    [3.0, 2.0, 4.0, 0.0]
    """
    for size in SIZES:
        if size >= least - NOISE and units_allowed(size, slope) >= units - NOISE:
            return size
    return 0.0


def velocity(bore: float, slope: float, n: float) -> float:
    """Speed in ft/s in a round pipe that runs full or half full: 1.486 / n x R^(2/3) x S^(1/2), R = bore / 4 in feet.

    >>> velocity(4.0, 0.25 / 12, 0.013)
    3.148
    """
    radius = bore / 48
    return FEET_FACTOR / n * exp(log(radius) * 2 / 3) * sqrt(slope)


def flow_full(bore: float, slope: float, n: float) -> float:
    """Gallons a minute in a round pipe that runs full; half of it at half full.

    >>> flow_full(4.0, 0.25 / 12, 0.013)
    123.3
    """
    area = pi * bore * bore / 4 / 144
    return area * velocity(bore, slope, n) * GALLONS_A_MINUTE


@calculator(
    title="Size of a building drain",
    summary="Fixture units of the house, the smallest drain for them, and what that drain carries.",
    outputs=(
        Output("units", "Fixture units", "number", step=1 / 2, rounds="up"),
        Output("size", "Drain", "text"),
        Output("verdict", "This drain", "text"),
        Output("allowed", "Units that it takes", "count", step=1, rounds="down"),
        Output("half", "Carries half full", "number", "gpm", step=1, rounds="down"),
        Output("full", "Carries full", "number", "gpm", step=1, rounds="down"),
        Output("velocity", "Speed, half full", "number", "ft/s", step=0.1, rounds="down"),
        Output("cleans", "Fast enough to scour", "yes-no"),
        Output("fits", "It does", "yes-no"),
    ),
    formula=(
        "Units: whole bathroom 5; toilet 3, lavatory 1, tub or shower 2, kitchen sink 2, dishwasher 2, clothes washer "
        "2, laundry tub 2. The smallest size whose units at this slope are enough; with a toilet at least 3 in.\n\n"
        "Manning: speed = 1.486 / n x R^(2/3) x S^(1/2), in ft/s; R is a quarter of the bore in feet, full or half "
        "full. Flow = speed x area; bores of schedule 40 pipe."
    ),
    sources=(
        Citation("ipc", "Table 709.1 (bathroom group and toilet; the others from memory); Table 710.1(1), note a"),
        Citation("ipc", "Table 704.1, least slopes"),
        Citation("open-channel-hydraulics", "Manning's equation and its n"),
        Citation("nspc-2009", "Appendix K, 2 ft/s to scour"),
        COMMON_PRACTICE,
    ),
    example={"bathrooms": "2", "kitchen_sinks": "1", "washers": "1", "slope": "1/4 in/ft"},
    other_names=("drainage fixture units", "DFU", "drain sizing", "Manning", "sewer capacity", "pipe size"),
    cannot_decide=(
        "Branches, stacks and vents have tables of their own, with fewer units for the same pipe. The UPC counts "
        "fixtures and sizes otherwise. Which code rules, what the sewer or septic tank takes, and pumps and sumps: the "
        "plumber of record and the inspector. No drain is covered before it is tested and seen."
    ),
    plots=(
        Plot(
            "Flow half full against slope",
            x="slope",
            y="half",
            start=0.125 / 12,
            end=0.5 / 12,
            curves=("pipe", ("2", "3", "4")),
        ),
    ),
)
def drainage(
    bathrooms: Annotated[
        float,
        count("Whole bathrooms", "1, from 0 to 20"),
        Help("Toilet (1.6 gal a flush), lavatory and tub or shower. Single fixtures go below."),
    ],
    water_closets: Annotated[float, count("Toilets beside those", "0, from 0 to 20")],
    lavatories: Annotated[float, count("Lavatories beside those", "0, from 0 to 20")],
    baths: Annotated[float, count("Tubs and showers beside those", "0, from 0 to 20")],
    kitchen_sinks: Annotated[float, count("Kitchen sinks", "1, from 0 to 20")],
    dishwashers: Annotated[
        float,
        count("Dishwashers on a drain of their own", "0, from 0 to 20"),
        Help("One that drains through the kitchen sink is counted with the sink."),
    ],
    washers: Annotated[float, count("Clothes washers", "1, from 0 to 20")],
    laundry_tubs: Annotated[float, count("Laundry tubs", "0, from 0 to 20")],
    other_units: Annotated[float, number("Other fixture units", "0, from 0 to 250")],
    slope: Annotated[float, slope("Slope", "1/4 in/ft, from 0.012 in/ft to 1:1")],
    pipe: Annotated[
        str,
        choice(
            "Pipe",
            {"smallest": "the smallest that does", "1.5": "1-1/2 in", "2": "2 in", "3": "3 in", "4": "4 in"},
            default="smallest",
        ),
    ],
    roughness: Annotated[
        float,
        number("Roughness (Manning's n)", "0.013, from 0.008 to 0.03, usually 0.009 to 0.015"),
        Help("New plastic 0.009 to 0.010; 0.013 is the usual figure of design; old iron 0.015."),
    ],
    least_velocity: Annotated[
        float,
        number("Least speed that scours", "2 ft/s, from 1 to 5 ft/s", "ft/s"),
        Guidance("at least 2 ft/s", "NSPC 2009, Appendix K"),
    ],
) -> Answer:
    """Fixture units, the smallest building drain for them, and what that pipe carries.

    ``slope`` from 1/8 in/ft; ``roughness`` is Manning's n; speeds in ft/s, flows in gallons a minute.

    Sources: units IPC Table 709.1 (bathroom group 5 and closet 3 at 1.6 gal a flush; the others from memory); sizes
    IPC Table 710.1(1) with its note a; Manning's equation, Chow 1959; 2 ft/s to scour, NSPC 2009 Appendix K.

    >>> answer = drainage(bathrooms=2, slope=0.25 / 12)
    >>> [answer["units"], answer["size"], answer["allowed"], answer["verdict"]]
    [14.0, '3 in', 42, 'large enough']
    """
    if slope < EIGHTH_A_FOOT - NOISE:
        refuse("slope", f"{decimal(slope * 12, 3)} in/ft is flatter than 1/8 in/ft: no drain up to 4 in may lie so.")
    closets = bathrooms + water_closets
    units = fixture_units(bathrooms, water_closets, lavatories, baths, other_units) + (
        kitchen_sinks * KITCHEN + dishwashers * DISHWASHER + washers * WASHER + laundry_tubs * TUB
    )
    if units <= 0:
        refuse("bathrooms", "No fixture is counted: give at least one.")
    least = 1.5
    if washers > 0:
        least = WASHER_TRAP
    if closets > 0:
        least = CLOSET_DRAIN
    size = smallest(units, slope, least)
    if pipe == "smallest" and size == 0:
        refuse("other_units", f"{decimal(units, 1)} units are more than a 4 in drain takes: an engineer sizes it.")
    if pipe != "smallest":
        size = float(pipe)
    allowed = units_allowed(size, slope)
    verdict = judge(size, units, allowed, least, slope)
    bore = BORES[row_of(size)]
    full = flow_full(bore, slope, roughness)
    speed = velocity(bore, slope, roughness)
    return {
        "units": units,
        "size": inches(size),
        "allowed": allowed,
        "verdict": verdict,
        "fits": verdict == "large enough",
        "half": full / 2,
        "full": full,
        "velocity": speed,
        "cleans": speed >= least_velocity - NOISE,
        "cautions": cautions_for(size, slope, speed, least_velocity, closets, units, allowed),
        "working": [
            f"fixture units: {decimal(units, 1)}; {inches(size)} at {decimal(slope * 12, 3)} in/ft takes "
            f"{decimal(allowed, 0)} (IPC Table 710.1(1))",
            f"bore {decimal(bore, 3)} in, R = bore / 4 = {decimal(bore / 48, 4)} ft; speed = 1.486 / "
            f"{decimal(roughness, 4)} x R^(2/3) x {decimal(slope, 5)}^(1/2) = {decimal(speed, 2)} ft/s",
            f"half full {decimal(full / 2, 1)} gpm, full {decimal(full, 1)} gpm",
        ],
    }


def fixture_units(bathrooms: float, closets: float, lavatories: float, baths: float, other: float) -> float:
    """Units of the bathroom fixtures. A whole bathroom counts less than its parts.

    >>> [fixture_units(1, 0, 0, 0, 0), fixture_units(0, 1, 1, 1, 0)]
    [5, 6]
    """
    return bathrooms * BATHROOM + closets * CLOSET + lavatories * LAVATORY + baths * BATH + other


def judge(size: float, units: float, allowed: float, least: float, slope: float) -> str:
    """Whether the size does.

    >>> [judge(2, 3, 21, 3, 0.03), judge(3, 43, 42, 3, 0.03), judge(2, 3, 0, 2, 0.015)]
    ['too small for a water closet', 'too small for so many units', 'too flat for this size']
    """
    if slope < least_slope_for(size, "ipc") - NOISE:
        return "too flat for this size"
    if size < least - NOISE:
        if least >= CLOSET_DRAIN - NOISE:
            return "too small for a water closet"
        return "too small for a clothes washer"
    return "too small for so many units" if units > allowed + NOISE else "large enough"


def cautions_for(
    size: float, slope: float, speed: float, least_velocity: float, closets: float, units: float, allowed: float
) -> list[str]:
    """What to watch at this size and slope."""
    cautions = []
    if speed < least_velocity - NOISE:
        cautions.append(
            f"Half full the water runs at {decimal(speed, 2)} ft/s, slower than the {decimal(least_velocity, 1)} ft/s "
            "that carries solids along: lay it steeper, or keep the run short and within reach of a cleanout."
        )
    if size == 4 and closets <= 2 and units <= 36:
        cautions.append("A larger pipe than needed does not clean itself better: the water runs shallower in it.")
    if closets > 2 and size == 3:
        cautions.append("Some codes allow only two or three toilets on a 3 in drain: ask which code rules.")
    if 0 < allowed - units < 2:
        cautions.append("Nearly full by the count: one more fixture takes the next size.")
    if slope > HALF_A_FOOT + NOISE:
        cautions.append("Steeper than 1/2 in/ft: the code's table ends there, and its last column is used.")
    return cautions
