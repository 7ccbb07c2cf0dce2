"""How far a drain falls over its run, and whether that is steep enough for its size.

A drain that lies too flat leaves what it carries behind. The codes give the least slope by pipe size; each code
family has its own rule.
"""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, Answer, Citation, Output, Plot
from calculators.declaring import Help, calculator, choice, length, slope, yes_no
from calculators.plumbing.drain_fall_drawing import MARK_WAYS, drain_fall_drawing, from_mark
from calculators.writing import NOISE, decimal, inches

QUARTER_A_FOOT = 0.25 / 12
EIGHTH_A_FOOT = 0.125 / 12
SIXTEENTH_A_FOOT = 0.0625 / 12
CLOSET_DRAIN = 3.0
STOCK_SIZES = [1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0]
CLAUSE = {"ipc": "IPC Table 704.1", "irc": "IRC P3005.3", "upc": "UPC 708.1"}


def least_slope_for(pipe: float, code: str) -> float:
    """The least slope that the code allows without anyone's approval, as a ratio; ``pipe`` is the size in inches.

    Sources: IPC Table 704.1; IRC P3005.3 (from memory); UPC 708.1.

    >>> [least_slope_for(2, "ipc") * 12, least_slope_for(3, "ipc") * 12, least_slope_for(3, "upc") * 12]
    [0.25, 0.125, 0.25]
    """
    if code == "upc" or pipe < 3:
        return QUARTER_A_FOOT
    if code == "ipc" and pipe >= 8:
        return SIXTEENTH_A_FOOT
    return EIGHTH_A_FOOT


def judge(slope: float, pipe: float, code: str) -> str:
    """Whether the slope passes for the pipe.

    >>> [judge(0.02, 3, "ipc"), judge(0.02, 2, "ipc"), judge(0.125 / 12, 3, "upc")]
    ['passes', 'too flat', "passes only with the inspector's approval"]
    """
    if slope >= least_slope_for(pipe, code) - NOISE:
        return "passes"
    if code == "upc" and pipe >= 3 and slope >= EIGHTH_A_FOOT - NOISE:
        return "passes only with the inspector's approval"
    return "too flat"


CodeFamily = Annotated[
    str,
    choice("Code family", {"ipc": "IPC", "irc": "IRC", "upc": "UPC"}, default="ipc"),
    Help("The building department says which one it has adopted."),
]
DrainSize = Annotated[float, length("Size of the pipe", "3 in, from 1-1/4 to 15 in")]


@calculator(
    title="Fall of a drain",
    summary="How far the pipe drops over its run, and whether the slope passes for its size.",
    outputs=(
        Output("fall", "Fall over the run", "length", "in", step=1 / 16),
        Output("lower_invert", "Invert at the lower end", "length", "in", step=1 / 16, ways=MARK_WAYS),
        Output("result", "This slope", "text"),
        Output("least_slope", "Least slope for this size", "slope", "in/ft", step=1 / 16),
        Output("least_fall", "Least fall over the run", "length", "in", step=1 / 16, rounds="up"),
    ),
    formula=(
        "Fall = run x slope. Lower invert = upper invert - fall. The pipe's size and the code give the least slope."
    ),
    sources=(
        Citation("ipc", "Table 704.1; Table 710.1(1), note a"),
        Citation("irc", "P3005.3, P3111.2.1"),
        Citation("upc", "708.1"),
        COMMON_PRACTICE,
    ),
    example={"run": "20 ft", "slope": "1/4 in/ft", "pipe": "3 in", "upper_invert": "18 in below the mark"},
    other_names=("drain slope", "pipe pitch", "grade of drain", "sewer fall"),
    cannot_decide=(
        "How many fixtures the pipe may serve, and its vents: the code's tables and the inspector. "
        "A drain is tested and looked at before it is covered."
    ),
    drawing=drain_fall_drawing,
    plots=(
        Plot(
            "Fall against the run, at three slopes",
            x="run",
            y="fall",
            start=12.0,
            end=600.0,
            curves=("slope", (1 / 96, 1 / 48, 1 / 24)),
        ),
    ),
)
def drain_fall(
    run: Annotated[float, length("Run of the pipe, level", "10 ft, from 1 in to 1000 ft")],
    slope: Annotated[
        float,
        slope("Slope", "1/4 in/ft, from 0 to 1:1"),
        Help("As 1/4 in/ft, 2.1 % or 1:48. A pipe steeper than 45 degrees counts as upright."),
    ],
    pipe: DrainSize,
    code: CodeFamily,
    water_closet: Annotated[bool, yes_no("Serves a toilet", default="yes")],
    upper_invert: Annotated[
        float,
        length(
            "Invert at the upper end", "0, from 100 ft below the mark to 100 ft above the mark", "in", ways=MARK_WAYS
        ),
        Help("Inside bottom of the pipe from your mark. Leave 0 for the drop alone."),
    ],
    steep: Annotated[float, slope("Caution from a slope of", "1/2 in/ft, from 0.12 in/ft to 1:1")],
) -> Answer:
    """Fall and lower invert of a drain, with the least that its size asks for.

    Lengths in inches, ``run`` horizontal, slopes as ratios. A caution is given above ``steep``.

    Sources: IPC Table 704.1 (1/4 in/ft up to 2-1/2 in, 1/8 in/ft for 3 to 6 in, 1/16 in/ft from 8 in); IRC P3005.3,
    from memory (1/4 in/ft up to 2-1/2 in, 1/8 in/ft from 3 in); UPC 708.1 (1/4 in/ft; from 3 in 1/8 in/ft with
    approval); a drain that serves a water closet is at least 3 in, IPC Table 710.1(1) note a.

    >>> answer = drain_fall(run=240, slope=0.25 / 12, upper_invert=-18)
    >>> [answer["fall"], answer["lower_invert"], answer["least_fall"], answer["result"]]
    [5.0, -23.0, 2.5, 'passes']
    """
    least_slope = least_slope_for(pipe, code)
    fall = run * slope
    result = judge(slope, pipe, code)
    if water_closet and pipe < CLOSET_DRAIN:
        result = "pipe too small for a water closet"
    return {
        "fall": fall,
        "lower_invert": upper_invert - fall,
        "least_slope": least_slope,
        "least_fall": run * least_slope,
        "result": result,
        "cautions": cautions_for(slope, pipe, code, steep),
        "working": [
            f"fall = run x slope: {decimal(run / 12, 2)} ft x {decimal(slope * 12, 3)} in/ft = {inches(fall)}",
            f"lower invert = {from_mark(upper_invert)}, {inches(fall)} down = {from_mark(upper_invert - fall)}",
            f"{CLAUSE[code]}, {decimal(pipe, 2)} in pipe: at least {decimal(least_slope * 12, 4)} in/ft, "
            f"{inches(run * least_slope)} over this run",
        ],
    }


def cautions_for(slope: float, pipe: float, code: str, steep: float) -> list[str]:
    """What to watch at this slope and size."""
    cautions = []
    if pipe not in STOCK_SIZES:
        cautions.append(f"{decimal(pipe, 2)} in is no size that drain pipe is sold in: read the mark on it.")
    if code == "upc" and pipe == 3 and judge(slope, pipe, code) == "passes only with the inspector's approval":
        cautions.append("Older UPC editions want 4 in for the flatter slope (from memory): ask which one rules.")
    if slope > steep + NOISE:
        cautions.append(
            f"Steeper than {decimal(steep * 12, 3)} in/ft. Whether water then outruns the solids is disputed; codes "
            "set no most for an ordinary drain. A combination waste and vent has one: 1/2 in/ft (IRC P3111.2.1)."
        )
    return cautions
