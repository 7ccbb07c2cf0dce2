"""Whether a trap arm is of the right length, slope and fall, by pipe size and code family.

The arm runs from the weir of the trap to its vent. Too long or too steep, the mouth of the vent lies below the weir and
the trap is drawn empty; too short, the vent stops up; too flat, the arm does.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output
from calculators.declaring import Help, calculator, length, slope
from calculators.plumbing.checks import CHECKS, check, result_of
from calculators.plumbing.drain_fall import STOCK_SIZES, CodeFamily, least_slope_for
from calculators.plumbing.trap_arm_drawing import trap_arm_drawing
from calculators.writing import NOISE, decimal, near, tape

LONGEST = {
    "ipc": [[1.25, 60.0], [1.5, 72.0], [2.0, 96.0], [3.0, 144.0], [4.0, 192.0]],
    "irc": [[1.25, 60.0], [1.5, 72.0], [2.0, 96.0], [3.0, 144.0], [4.0, 192.0]],
    "upc": [[1.25, 30.0], [1.5, 42.0], [2.0, 60.0], [3.0, 72.0], [4.0, 120.0]],
}
LENGTH_CLAUSE = {"ipc": "IPC Table 909.1", "irc": "IRC Table P3105.1", "upc": "UPC Table 1002.2"}
SLOPE_CLAUSE = {"ipc": "IPC Table 704.1", "irc": "IRC P3005.3", "upc": "UPC 708.1"}
FALL_CLAUSE = {"ipc": "IPC 909.2", "irc": "IRC P3105.2", "upc": "UPC 1002.2"}
NEAR_CLAUSE = {"ipc": "IPC 909.3", "irc": "IRC P3105.3", "upc": "UPC 1002.2"}
DROP_CLAUSE = {"ipc": "IPC 1002.1", "irc": "IRC P3201.6", "upc": "UPC 1001.2"}
MOST_DROP = 24.0
DIAMETERS = 2.0


def longest_for(pipe: float, code: str) -> float:
    """The longest arm that the code's table allows, for the size or the next smaller one in it. Inches.

    Sources: IPC Table 909.1 and IRC Table P3105.1 (from memory; 5, 6, 8, 12, 16 ft); UPC Table 1002.2 (2-1/2, 3-1/2,
    5, 6, 10 ft).

    >>> [longest_for(1.5, "ipc"), longest_for(1.5, "upc"), longest_for(2.5, "irc")]
    [72.0, 42.0, 96.0]
    """
    longest = 0.0
    for row in LONGEST[code]:
        if pipe >= row[0] - NOISE:
            longest = row[1]
    return longest


@calculator(
    title="Trap arm",
    summary="How long a trap arm may be, and how far it may fall, before its trap is drawn empty.",
    outputs=(
        Output("result", "This arm", "text"),
        CHECKS,
        Output("fall", "Fall over the arm", "length", "in", step=1 / 16),
        Output("least_fall", "Least fall over the arm", "length", "in", step=1 / 16),
        Output("longest", "Longest arm at this slope", "length", "in", step=1 / 16, rounds="down"),
        Output("shortest", "Shortest arm", "length", "in", step=1 / 16, rounds="up"),
    ),
    formula=(
        "Fall = run x slope, at least the least slope x run and at most the size of the pipe. "
        "Longest arm = the smaller of the code's length and size / slope. Shortest = two sizes."
    ),
    sources=(
        Citation("ipc", "1002.1, Table 704.1; 909.1 to 909.3 (from memory)"),
        Citation("irc", "P3105.1 to P3105.3, P3201.6 (from memory)"),
        Citation("upc", "Table 1002.2; 708.1, 1001.2 (from memory)"),
        COMMON_PRACTICE,
    ),
    example={"code": "upc", "pipe": "1-1/2 in", "run": "40 in", "slope": "1/4 in/ft", "drop": "10 in"},
    other_names=("distance from trap to vent", "fixture drain length", "P-trap to vent", "S-trap"),
    cannot_decide=(
        "Where the vent stands inside the wall, and wet or air admittance vents: the plumber and the inspector. "
        "A toilet is its own trap, and the IPC does not limit its arm."
    ),
    drawing=trap_arm_drawing,
)
def trap_arm(
    code: CodeFamily,
    pipe: Annotated[float, length("Size of the arm", "1-1/2 in, from 1-1/4 to 4 in"), Help("Of the pipe in the wall.")],
    run: Annotated[
        float,
        length("Weir to the vent, along the pipe", "24 in, from 1 in to 20 ft"),
        Help("From the trap's inner lip to the middle of the vent, round every bend."),
    ],
    slope: Annotated[
        float, slope("Slope of the arm", "1/4 in/ft, from 0 to 1:1"), Help("As 1/4 in/ft, 2.1 % or 1:48.")
    ],
    drop: Annotated[float, length("Fixture's outlet down to the weir", "12 in, from 0 to 60 in")],
) -> Answer:
    """Length, slope and fall of a trap arm against the code. Lengths in inches, slope as a ratio.

    ``run`` is the developed length from the weir to the vent, ``drop`` the upright distance from the fixture's outlet
    to the weir. Fall = run x slope, at most one pipe size, so that the vent's mouth is not below the weir. The longest
    arm at this slope is the smaller of the table's length and pipe / slope.

    Sources: IPC 909.1 to 909.3, IRC P3105.1 to P3105.3 and P3201.6, UPC 1001.2 and 1002.2 (all from memory but the
    lengths of the UPC); IPC 1002.1 for the drop; IPC Table 704.1 for the slope.

    >>> answer = trap_arm(run=48, code="upc")
    >>> [answer["result"], answer["fall"], answer["longest"], answer["checks"][0]["result"]]
    ['does not pass', 1.0, 42.0, 'over by 6 in']
    """
    fall = run * slope
    least_fall = run * least_slope_for(pipe, code)
    table = longest_for(pipe, code)
    longest = pipe / slope if slope > 0 and pipe / slope < table else table
    shortest = DIAMETERS * pipe
    rows = [
        check("weir to vent, longest", run, 0, table, LENGTH_CLAUSE[code]),
        check("weir to vent, shortest", run, shortest, 0, NEAR_CLAUSE[code]),
        check("fall over the arm, least", fall, least_fall, 0, SLOPE_CLAUSE[code]),
        check("fall over the arm, most", fall, 0, pipe, FALL_CLAUSE[code]),
        check("outlet down to the weir", drop, 0, MOST_DROP, DROP_CLAUSE[code]),
    ]
    result = result_of(rows)
    cautions = []
    if pipe not in STOCK_SIZES:
        cautions.append(f"{decimal(pipe, 2)} in is no size that drain pipe is sold in: read the mark on it.")
    if code == "upc" and result == "passes" and pipe >= 3:
        cautions.append("The UPC counts a toilet's arm by a rule of its own (from memory): ask.")
    if longest < shortest - near(shortest):
        cautions.append("At this slope no length passes: lay the arm flatter.")
    return {
        "result": result,
        "checks": rows,
        "fall": fall,
        "least_fall": least_fall,
        "longest": longest,
        "shortest": shortest,
        "cautions": cautions,
        "working": [
            f"fall = run x slope: {tape(run)} x {decimal(slope * 12, 3)} in/ft = {tape(fall)}",
            f"most fall = size of the pipe = {tape(pipe)}; least = {tape(least_fall)}",
            f"longest: {tape(table)} by {LENGTH_CLAUSE[code]}; at this slope {tape(longest)}",
            f"shortest: {decimal(DIAMETERS, 0)} x {tape(pipe)} = {tape(shortest)}",
        ],
    }
