"""What an approach may not be: shapes that cannot be formed, and slopes that are too steep."""

from __future__ import annotations

from calculators.declaration import refuse
from calculators.writing import NOISE, inches
from calculators.writing_units import write

LEAST_SIDE = 6.0
CROSS_SLOPE = 1 / 48
"""2010 ADA Standards 403.3: a walk's cross slope."""
FLARE_SLOPE = 1 / 10
"""2010 ADA Standards 406.3: the flare of a curb ramp."""
RAMP_SLOPE = 1 / 12
"""2010 ADA Standards 405.2: a ramp; a walk that comes down a wing is one."""


def refuse_shape(
    left: float,
    right: float,
    depth: float,
    curb_height: float,
    lip: float,
    thickness: float,
    edge_thickness: float,
    edge_width: float,
    edge_taper: float,
) -> None:
    """Refuse what two inputs together make impossible. Lengths in inches."""
    least = inches(LEAST_SIDE)
    if 0 < left < LEAST_SIDE:
        refuse("left", f"A flare or wing is 0 or at least {least} wide; {inches(left)} cannot be formed.")
    if 0 < right < LEAST_SIDE:
        refuse("right", f"A flare or wing is 0 or at least {least} wide; {inches(right)} cannot be formed.")
    if lip > curb_height:
        refuse("lip", f"The lip of {inches(lip)} is higher than the curb of {inches(curb_height)}.")
    if edge_thickness < thickness:
        refuse(
            "edge_thickness",
            f"The curb edge of {inches(edge_thickness)} is thinner than the slab of {inches(thickness)}. "
            "For an edge that is not thickened give the slab's thickness.",
        )
    if edge_width + edge_taper > depth:
        refuse(
            "edge_width",
            f"The thick edge and its taper take {inches(edge_width + edge_taper)}; "
            f"the approach is only {inches(depth)} deep.",
        )


def access_cautions(side: str, slope: float, rise: float) -> list[str]:
    """What is too steep where a public walk crosses the approach. Slopes as ratios.

    >>> [len(access_cautions("flare", 0.02, 0.1)), len(access_cautions("flare", 0.03, 0.2))]
    [0, 2]
    """
    cautions: list[str] = []
    if slope > CROSS_SLOPE + NOISE:
        cautions.append(
            f"The approach rises {write(slope, 'slope', '%', 0.01, 'nearest')}. "
            "A walk that crosses it may slope at most 1:48 (2.08 %) across: "
            "keep the walk's strip within that, and take up the rest of the rise outside it."
        )
    limit = FLARE_SLOPE
    words = "A flare that people walk across may be at most 1:10"
    if side == "wing":
        limit = RAMP_SLOPE
        words = "A wing that carries the walk down to the drive is a ramp, at most 1:12"
    if side != "none" and rise > limit + NOISE:
        cautions.append(f"The {side} slopes {write(rise, 'slope', '1:n', 0.1, 'up')}. {words}: make it wider.")
    return cautions


def grade_cautions(gutter_break: float, drive_break: float, most: float) -> list[str]:
    """What a low car scrapes on. Changes of grade as ratios.

    >>> [len(grade_cautions(0.04, 0, 0.08)), len(grade_cautions(0.04, 0.1, 0.08))]
    [0, 1]
    """
    cautions: list[str] = []
    asked = write(most, "slope", "%", 0.1, "nearest")
    places = ["at the gutter", "where the drive begins"]
    breaks = [gutter_break, drive_break]
    for i in range(2):
        if breaks[i] > most + NOISE:
            cautions.append(
                f"The grade changes by {write(breaks[i], 'slope', '%', 0.1, 'nearest')} {places[i]}; "
                f"{asked} is the most asked for: a low car scrapes. "
                "Flatten the approach, or ease the change over several feet."
            )
    return cautions


def access_of(walk_crosses: bool, side: str, slope: float, rise: float) -> tuple[str, list[str]]:
    """Whether the approach is within the limits where a public walk crosses it, in words, and what is not."""
    if not walk_crosses:
        return ("no public walk crosses", [])
    cautions = access_cautions(side, slope, rise)
    return ("within the limits" if len(cautions) == 0 else "too steep where the walk crosses", cautions)
