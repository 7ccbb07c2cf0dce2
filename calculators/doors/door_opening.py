"""The rough opening of a prehung door, what its legs are cut to, and whether a measured opening takes it."""

from __future__ import annotations

from calculators.declaration import (
    COMMON_PRACTICE,
    CREW_RULE,
    Answer,
    Calculator,
    Citation,
    Input,
    Output,
    Plot,
    refuse,
)
from calculators.doors.door_opening_drawing import door_opening_drawing
from calculators.writing import NOISE, feet_inches, inches

NOT_MEASURED = "not measured"
FITS = "takes the door"
FITS_NOT = "does not take the door"


def door_opening(
    width: float = 32.0,
    height: float = 80.0,
    floor: float = 0.75,
    under_door: float = 0.5,
    floor_slope: float = 0.0,
    swing_rise: float = 0.0,
    opening_width: float = 0.0,
    opening_height: float = 0.0,
    leg: float = 81.25,
    jamb: float = 0.6875,
    reveal: float = 0.125,
    shim: float = 0.1875,
    shim_most: float = 0.5,
    head_space: float = 0.375,
    thickness: float = 1.375,
    stop: float = 0.4375,
) -> Answer:
    """Rough opening, legs and clearances of a prehung door. Inches.

    The feet of the jamb stand at the height of the finished floor. ``floor`` is what is still to be laid there, 0 where
    it is down. ``floor_slope`` is how much lower the floor is at one leg than at the other; ``swing_rise`` how much
    the floor rises where the door swings. A measured opening of 0 is one that nobody has measured.

    unit width = width + 2 reveal + 2 jamb; rough width = unit + 2 shim. Leg at the high side = reveal + height +
    under_door. Rough height = floor + leg + jamb + head_space. Clear width at 90 degrees = width + reveal - thickness
    - stop. Source: arithmetic; the figures of the crew and common practice.

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


CALCULATOR = Calculator(
    name="door-opening",
    title="Opening for a prehung door",
    trade="doors",
    summary="Rough opening, legs cut for the floor to come, and whether a measured opening takes the door.",
    function=door_opening,
    inputs=(
        Input("width", "Width of the door", "length", "in", 32.0, 12, 60, (18, 42)),
        Input("height", "Height of the door", "length", "in", 80.0, 48, 120, (78, 96)),
        Input("floor", "Floor still to be laid", "length", "in", 0.75, 0, 4, (0, 1.5), help="0 where it is down."),
        Input("under_door", "Gap under the door", "length", "in", 0.5, 0.125, 3, (0.25, 1), help="Over the high side."),
        Input("floor_slope", "Floor lower at one leg by", "length", "in", 0.0, 0, 2, (0, 0.5)),
        Input("swing_rise", "Floor rises in the swing by", "length", "in", 0.0, 0, 2, (0, 0.5)),
        Input("opening_width", "Opening as measured, width", "length", "in", 0.0, 0, 96, help="The least of three."),
        Input(
            "opening_height",
            "Opening as measured, height",
            "length",
            "in",
            0.0,
            0,
            150,
            help="From the subfloor or floor.",
        ),
        Input("leg", "Legs as they come", "length", "in", 81.25, 48, 130, help="Underside of the head to the foot."),
        Input("jamb", "Thickness of the jamb", "length", "in", 0.6875, 0.25, 2, (0.5, 1.25)),
        Input("reveal", "Gap between door and jamb", "length", "in", 0.125, 0, 0.5, (0.0625, 0.1875)),
        Input("shim", "Shim space, each side", "length", "in", 0.1875, 0, 1, (0.125, 0.375)),
        Input("shim_most", "Most to shim, each side", "length", "in", 0.5, 0.125, 1.5),
        Input("head_space", "Space above the head", "length", "in", 0.375, 0, 2, (0.25, 0.75)),
        Input("thickness", "Thickness of the door", "length", "in", 1.375, 0.75, 3, (1.375, 1.75)),
        Input("stop", "Thickness of the stop", "length", "in", 0.4375, 0.25, 1),
    ),
    outputs=(
        Output("result", "The opening", "text"),
        Output("rough_width", "Rough opening, width", "length", "in", 0.0625),
        Output("rough_height", "Rough opening, height over the subfloor", "length", "in", 0.0625),
        Output("unit_width", "Door with its jamb, width", "length", "in", 0.0625),
        Output("unit_height", "Door with its jamb, height", "length", "in", 0.0625),
        Output("high_leg", "Leg at the high side", "length", "in", 0.0625),
        Output("low_leg", "Leg at the low side", "length", "in", 0.0625),
        Output("cut_high", "Cut off the leg at the high side", "length", "in", 0.0625, "down"),
        Output("cut_low", "Cut off the leg at the low side", "length", "in", 0.0625, "down"),
        Output("block", "Blocks under the feet", "length", "in", 0.0625, help="Scraps of the floor to come."),
        Output("shim_each", "Space to shim, each side", "length", "in", 0.0625),
        Output("head_left", "Space left above the head", "length", "in", 0.0625),
        Output("swing_gap", "Gap under the door in its swing", "length", "in", 0.0625, "down"),
        Output("clear_width", "Clear width, door at 90 degrees", "length", "in", 0.125, "down"),
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
    plots=(Plot("Height of the rough opening against the floor to come", "floor", "rough_height", 0.0, 1.5),),
)
