"""The rough opening of a prehung door, what its legs are cut to, and whether a measured opening takes it."""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, Plot, refuse
from calculators.declaring import Help, calculator, length
from calculators.doors.door_opening_drawing import door_opening_drawing
from calculators.writing import NOISE, feet_inches, inches

NOT_MEASURED = "not measured"
FITS = "takes the door"
FITS_NOT = "does not take the door"


@calculator(
    title="Opening for a prehung door",
    summary="Rough opening, legs cut for the floor to come, and whether a measured opening takes the door.",
    outputs=(
        Output("result", "The opening", "text"),
        Output("rough_width", "Rough opening, width", "length", "in", step=1 / 16),
        Output("rough_height", "Rough opening, height over the subfloor", "length", "in", step=1 / 16),
        Output("unit_width", "Door with its jamb, width", "length", "in", step=1 / 16),
        Output("unit_height", "Door with its jamb, height", "length", "in", step=1 / 16),
        Output("high_leg", "Leg at the high side", "length", "in", step=1 / 16),
        Output("low_leg", "Leg at the low side", "length", "in", step=1 / 16),
        Output("cut_high", "Cut off the leg at the high side", "length", "in", step=1 / 16, rounds="down"),
        Output("cut_low", "Cut off the leg at the low side", "length", "in", step=1 / 16, rounds="down"),
        Output("block", "Blocks under the feet", "length", "in", step=1 / 16, help="Scraps of the floor to come."),
        Output("shim_each", "Space to shim, each side", "length", "in", step=1 / 16),
        Output("head_left", "Space left above the head", "length", "in", step=1 / 16),
        Output("swing_gap", "Gap under the door in its swing", "length", "in", step=1 / 16, rounds="down"),
        Output("clear_width", "Clear width, door at 90 degrees", "length", "in", step=1 / 8, rounds="down"),
    ),
    formula=(
        "Door with jamb = width + 2 reveals + 2 jambs. Rough width = that + 2 shim spaces. Leg = reveal + height + gap "
        "under the door; the leg at the low side is longer by the slope. Rough height over the subfloor = floor to "
        "come + leg + head jamb + space above.\n\n"
        "Clear width at 90 degrees = width + reveal - thickness - stop, from the open door's face to the other stop."
    ),
    sources=(
        Citation("woodwork-standards-2009", "appendix B, section 9, prefit clearances, for the gap at the door"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={"width": "30 in", "opening_width": "32-1/4 in", "opening_height": "82-1/2 in"},
    other_names=("rough opening", "RO", "door framing", "jamb cut", "undercut", "door clearance"),
    cannot_decide=(
        "What the door has to be: a way out, a fire door or an accessible door has widths, ratings and a closer of its "
        "own, by the code that the place has adopted. The header and the studs of the opening are structure."
    ),
    drawing=door_opening_drawing,
    plots=(
        Plot("Height of the rough opening against the floor to come", x="floor", y="rough_height", start=0.0, end=1.5),
    ),
)
def door_opening(
    width: Annotated[float, length("Width of the door", "32 in, from 12 to 60 in, usually 18 to 42 in")],
    height: Annotated[float, length("Height of the door", "80 in, from 48 to 120 in, usually 78 to 96 in")],
    floor: Annotated[
        float,
        length("Floor still to be laid", "3/4 in, from 0 to 4 in, usually 0 to 1-1/2 in"),
        Help("0 where it is down."),
    ],
    under_door: Annotated[
        float,
        length("Gap under the door", "1/2 in, from 1/8 to 3 in, usually 1/4 to 1 in"),
        Help("Over the high side."),
    ],
    floor_slope: Annotated[float, length("Floor lower at one leg by", "0, from 0 to 2 in, usually 0 to 1/2 in")],
    swing_rise: Annotated[float, length("Floor rises in the swing by", "0, from 0 to 2 in, usually 0 to 1/2 in")],
    opening_width: Annotated[
        float, length("Opening as measured, width", "0, from 0 to 96 in"), Help("The least of three.")
    ],
    opening_height: Annotated[
        float, length("Opening as measured, height", "0, from 0 to 150 in"), Help("From the subfloor or floor.")
    ],
    leg: Annotated[
        float, length("Legs as they come", "81-1/4 in, from 48 to 130 in"), Help("Underside of the head to the foot.")
    ],
    jamb: Annotated[float, length("Thickness of the jamb", "11/16 in, from 1/4 to 2 in, usually 1/2 to 1-1/4 in")],
    reveal: Annotated[float, length("Gap between door and jamb", "1/8 in, from 0 to 1/2 in, usually 1/16 to 3/16 in")],
    shim: Annotated[float, length("Shim space, each side", "3/16 in, from 0 to 1 in, usually 1/8 to 3/8 in")],
    shim_most: Annotated[float, length("Most to shim, each side", "1/2 in, from 1/8 to 1-1/2 in")],
    head_space: Annotated[float, length("Space above the head", "3/8 in, from 0 to 2 in, usually 1/4 to 3/4 in")],
    thickness: Annotated[
        float, length("Thickness of the door", "1-3/8 in, from 3/4 to 3 in, usually 1-3/8 to 1-3/4 in")
    ],
    stop: Annotated[float, length("Thickness of the stop", "7/16 in, from 1/4 to 1 in")],
) -> Answer:
    """Rough opening, legs and clearances of a prehung door. Inches.

    The feet of the jamb stand at the height of the finished floor. A measured opening of 0 is one that nobody has
    measured.

    Source: arithmetic; the figures of the crew and common practice.

    >>> answer = door_opening(width=32, height=80)
    >>> [answer["rough_width"], answer["rough_height"], answer["high_leg"], answer["cut_high"]]
    [34.0, 82.4375, 80.625, 0.625]
    >>> answer = door_opening(opening_width=34.5, opening_height=82.5)
    >>> [answer["shim_each"], answer["result"]]
    [0.4375, 'takes the door']
    """
    unit_width = width + 2 * reveal + 2 * jamb
    high_leg = reveal + height + under_door
    low_leg = high_leg + floor_slope
    unit_height = high_leg + jamb
    rough_width = unit_width + 2 * shim
    rough_height = floor + unit_height + head_space
    swing_gap = under_door - swing_rise
    clear_width = width + reveal - thickness - stop
    if swing_gap <= NOISE:
        refuse(
            "swing_rise",
            f"The floor rises {inches(swing_rise)} in the swing, and the door stands {inches(under_door)} over it.",
        )
    if 0 < opening_width < width:
        refuse("opening_width", f"An opening of {inches(opening_width)} is narrower than the door, {inches(width)}.")
    if 0 < opening_height < height:
        refuse(
            "opening_height",
            f"An opening of {feet_inches(opening_height)} is lower than the door, {feet_inches(height)}.",
        )
    shim_each = shim
    head_left = head_space
    result = NOT_MEASURED
    cautions: list[str] = []
    if opening_width > 0:
        shim_each = (opening_width - unit_width) / 2
        result = FITS
        if shim_each < -NOISE:
            result = FITS_NOT
            cautions.append(f"The opening is {inches(-2 * shim_each)} too narrow for door and jamb.")
        elif shim_each < shim / 2 - NOISE:
            cautions.append(
                f"{inches(shim_each)} each side leaves little to plumb the jamb with: try the studs for plumb first."
            )
        elif shim_each > shim_most + NOISE:
            cautions.append(
                f"{inches(shim_each)} each side is too much to shim: screw a flat filler strip to the stud first."
            )
    if opening_height > 0:
        head_left = opening_height - floor - unit_height
        if result == NOT_MEASURED:
            result = FITS
        if head_left < -NOISE:
            result = FITS_NOT
            cautions.append(f"The opening is {inches(-head_left)} too low over the finished floor.")
    cut_high = leg - high_leg
    cut_low = leg - low_leg
    if cut_low < -NOISE:
        cautions.append(f"The leg at the low side comes {inches(-cut_low)} too short: order longer legs.")
    return {
        "result": result,
        "rough_width": rough_width,
        "rough_height": rough_height,
        "unit_width": unit_width,
        "unit_height": unit_height,
        "high_leg": high_leg,
        "low_leg": low_leg,
        "cut_high": max(0.0, cut_high),
        "cut_low": max(0.0, cut_low),
        "block": floor,
        "shim_each": max(0.0, shim_each),
        "head_left": max(0.0, head_left),
        "swing_gap": swing_gap,
        "clear_width": clear_width,
        "cautions": cautions,
        "working": [
            f"door and jamb: {inches(width)} + 2 x {inches(reveal)} + 2 x {inches(jamb)} = {inches(unit_width)}",
            f"rough width: {inches(unit_width)} + 2 x {inches(shim)} = {inches(rough_width)}",
            f"leg: {inches(reveal)} + {inches(height)} + {inches(under_door)} = {inches(high_leg)}",
            f"rough height over the subfloor: {inches(floor)} + {inches(high_leg)} + {inches(jamb)} + "
            f"{inches(head_space)} = {inches(rough_height)}",
            f"clear width: {inches(width)} + {inches(reveal)} - {inches(thickness)} - {inches(stop)} = "
            f"{inches(clear_width)}",
        ],
    }
