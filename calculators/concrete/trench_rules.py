"""The rules of a trench by its depth, its soil and what stands beside it. Lengths in inches."""

from __future__ import annotations

from math import atan, pi

from calculators.writing import NOISE, decimal, feet_inches, whole

RUN_OF_SOIL: dict[str, float] = {"stable-rock": 0.0, "a": 0.75, "b": 1.0, "c": 1.5, "fill": 1.5, "unknown": 1.5}
"""Horizontal to 1 up: 29 CFR 1926 Subpart P, App. B, Table B-1; unknown soil is dug as type C, 1926.652(b)(1)(i).

Filled ground: soil that was dug before is type B at most, and C where it is sand, gravel, wet or soft (App. A). Nobody
knows what a house was filled round with, so it is dug as type C."""
SLOPE_WORDS: dict[str, str] = {
    "stable-rock": "upright",
    "a": "3/4 to 1",
    "b": "1 to 1",
    "c": "1-1/2 to 1",
    "fill": "1-1/2 to 1",
    "unknown": "1-1/2 to 1",
}
ENGINEER_FROM = 240.0
"""Deeper than 20 ft: a registered professional engineer designs the protection, App. B, Table B-1, note 3."""
LADDER_FROM = 48.0
LADDER_REACH = 300.0
"""1926.651(c)(2): a way out from 4 ft deep, no more than 25 ft to go along the trench."""
ABOVE_EDGE = 36.0
"""1926.1053(b)(1): side rails 3 ft above the landing."""
GUARD_FROM = 72.0
LEAN = 0.25
"""1926.1053(b)(5)(i): the foot stands out a quarter of the height."""
HEAP = 1.5
"""Loose earth lies at 1-1/2 to 1: common practice."""
FOOTING_LINE = 1.0
"""No trench beside a footing below a line that falls 1 to 1 from the footing's lower edge: IRC P2604.4."""
SHORED = "needed: shore or shield, no room for a slope"
REQUIRED = "needed: slope, shore or shield"
BY_LOOK = "the competent person decides: none by depth alone"
ROCK = "none in stable rock, if the competent person says that it is"


def pit_volume(length: float, width: float, depth: float, run: float) -> float:
    """Volume in cu in of a trench whose four sides lie back ``run`` to 1 from a bottom of ``length`` by ``width``.

    The prismoid: depth / 6 x (bottom + 4 x middle + top).

    >>> [pit_volume(10, 2, 6, 0), pit_volume(10, 2, 6, 1)]
    [120.0, 840.0]
    """
    middle = (length + run * depth) * (width + run * depth)
    top = (length + 2 * run * depth) * (width + 2 * run * depth)
    return depth / 6 * (length * width + 4 * middle + top)


def ladders_for(depth: float, length: float) -> int:
    """How many ways out, so that nobody is further than 25 ft along the trench from one. Inches.

    >>> [ladders_for(40, 1200), ladders_for(48, 480), ladders_for(60, 600), ladders_for(60, 601)]
    [0, 1, 1, 2]
    """
    return 0 if depth < LADDER_FROM - NOISE else max(1, whole(length / (2 * LADDER_REACH), "up"))


def protection(depth: float, soil: str, protect_from: float) -> str:
    """Whether the walls need protection by the rule. Inches.

    >>> [protection(60, "unknown", 60), protection(48, "unknown", 60), protection(90, "stable-rock", 60)]
    ['needed: slope, shore or shield', 'the competent person decides: none by depth alone', \
'none in stable rock, if the competent person says that it is']
    """
    if soil == "stable-rock":
        return ROCK
    if depth < protect_from - NOISE:
        return BY_LOOK
    return REQUIRED


def under_footing(depth: float, footing: float, footing_depth: float, soil: str) -> bool:
    """Whether the trench or its slope takes away what carries a footing. Inches.

    ``footing`` is level from the near side of the bottom.

    >>> [under_footing(60, 96, 12, "c"), under_footing(60, 60, 12, "c"), under_footing(60, 60, 12, "b")]
    [False, True, False]
    >>> [under_footing(60, 12, 12, "stable-rock"), under_footing(48, 0, 48, "unknown")]
    [False, False]
    """
    below = depth - footing_depth
    if below <= NOISE or soil == "stable-rock":
        return False
    return footing < max(FOOTING_LINE, RUN_OF_SOIL[soil]) * below - NOISE


def wall_angle(run: float) -> float:
    """The wall's angle from level in degrees, for so much run to 1 up.

    >>> [wall_angle(0), wall_angle(1), wall_angle(1.5)]
    [90.0, 45.0, 33.69]
    """
    return 90.0 if run <= 0 else atan(1 / run) * 180 / pi


def ladders_in_words(depth: float, length: float, ladders: int) -> str:
    """Why so many ways out."""
    if ladders == 0:
        return f"{feet_inches(depth)} deep: less than 4 ft, no ladder by the rule"
    return (
        f"4 ft deep or more: one way out for each 50 ft, 25 ft to either side: {decimal(length / 12, 1)} ft / 50 ft, "
        f"rounded up = {ladders}"
    )


def footing_in_words(depth: float, footing: float, footing_depth: float, soil: str) -> str:
    """How far from a footing the trench has to stay, in words."""
    below = depth - footing_depth
    if below <= NOISE:
        return f"{feet_inches(depth)} deep: not below the footing at {feet_inches(footing_depth)}"
    if soil == "stable-rock":
        return "below the footing, in stable rock"
    run = max(FOOTING_LINE, RUN_OF_SOIL[soil])
    return (
        f"below the footing by {feet_inches(below)}: bottom at least {decimal(run, 2)} x {feet_inches(below)} = "
        f"{feet_inches(run * below)} from it; it is {feet_inches(footing)}"
    )


def cautions_for(depth: float, soil: str, needed: str, run: float, undermined: bool) -> list[str]:
    """What to watch in such a trench; the first but one below a footing holds for every trench."""
    cautions = [
        "A competent person looks before anybody goes in: each day, after every rain, after every change. Water in it, "
        "cracks beside it, soil that runs: everybody out. Nobody works in it alone."
    ]
    if undermined:
        cautions.append(
            "This takes the ground from under a footing: the wall can come down into the trench. No bucket before an "
            "engineer has drawn how the footing is held (29 CFR 1926.651(i)(2), IRC P2604.4)."
        )
    elif needed == SHORED:
        cautions.append(
            "A slope would reach the footing and take the ground beside it: shore or shield the trench, however deep "
            "the footing goes. The competent person says how before a bucket goes in (29 CFR 1926.651(i))."
        )
    if soil == "unknown":
        cautions.append("Soil not judged yet: dug as type C, the weakest.")
    if soil == "fill":
        cautions.append("Filled ground is dug as type C: what it was filled with, and how, nobody knows.")
    if soil == "b":
        cautions.append(
            "Type B is clay or silt that holds together. Sand, gravel, wet soil and filled ground are type C."
        )
    if soil == "a":
        cautions.append(
            "Soil that was dug before, is cracked, drips, or shakes from traffic is never type A (App. A). Around a "
            "house most of it was dug before."
        )
    if needed == BY_LOOK:
        cautions.append("Any sign that a wall may fall, at any depth: slope it, shore it or stay out.")
        if run <= 0:
            cautions.append("Upright walls bury a man who kneels. Sloping them costs an hour.")
    if depth > LADDER_FROM + NOISE:
        cautions.append(
            "Deeper than 4 ft: where the air may be bad (sewer, gas, fuel, fill), test it before anybody goes down."
        )
    if depth >= GUARD_FROM - NOISE:
        cautions.append("6 ft deep or more: guardrail, fence or barricade along an edge that cannot be seen.")
    return cautions
