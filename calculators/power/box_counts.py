"""What counts in an electrical box, by NEC 314.16, and the boxes there are. Volumes in cubic inches."""

from __future__ import annotations

from typing import Any

from calculators.declaration import refuse
from calculators.writing import NOISE, decimal

CU_IN = 1728.0
GAUGES = ["18", "16", "14", "12", "10", "8", "6"]
VOLUMES = [1.5, 1.75, 2.0, 2.25, 2.5, 3.0, 5.0]
"""Cubic inches that one conductor takes, NEC Table 314.16(B)(1), gauge by gauge."""
BOXES: list[dict[str, Any]] = [
    {"name": "device-2-1-2", "label": "device box 3 x 2 x 2-1/2 in", "family": "device", "gangs": 1, "volume": 12.5},
    {"name": "device-2-3-4", "label": "device box 3 x 2 x 2-3/4 in", "family": "device", "gangs": 1, "volume": 14.0},
    {"name": "device-3-1-2", "label": "device box 3 x 2 x 3-1/2 in", "family": "device", "gangs": 1, "volume": 18.0},
    {"name": "round-1-1-2", "label": "4 in octagon box, 1-1/2 in deep", "family": "round", "gangs": 1, "volume": 15.5},
    {"name": "round-2-1-8", "label": "4 in octagon box, 2-1/8 in deep", "family": "round", "gangs": 1, "volume": 21.5},
    {"name": "square-1-1-2", "label": "4 in square box, 1-1/2 in deep", "family": "square", "gangs": 2, "volume": 21.0},
    {"name": "square-2-1-8", "label": "4 in square box, 2-1/8 in deep", "family": "square", "gangs": 2, "volume": 30.3},
    {
        "name": "large-2-1-8",
        "label": "4-11/16 in square box, 2-1/8 in deep",
        "family": "square",
        "gangs": 2,
        "volume": 42.0,
    },
]
"""Common metal boxes; each volume is a fact of NEC Table 314.16(A). Each family from the smallest up.
``gangs`` is how many yokes it takes, an octagon or square box with its cover."""
MARKED = "marked"
LARGEST = "largest"
GROUND_MOST = 4
"""The place of 10 AWG in ``GAUGES``: larger wires of a dwelling's circuits have no larger ground, NEC 250.122 (from
memory, up to 60 A)."""


def place_of(gauge: str) -> int:
    """The place of a gauge in the list, from the thinnest up; -1 for none.

    >>> [place_of("18"), place_of("12"), place_of("largest")]
    [0, 3, -1]
    """
    for at in range(len(GAUGES)):
        if GAUGES[at] == gauge:
            return at
    return -1


def ground_allowance(grounds: float, edition: str) -> float:
    """How many conductors the grounding wires count as: one for up to four, then a quarter each from 2020 on.

    >>> [ground_allowance(0, "2020"), ground_allowance(4, "2020"), ground_allowance(6, "2020")]
    [0.0, 1.0, 1.5]
    >>> ground_allowance(6, "before-2020")
    1.0
    """
    if grounds == 0:
        return 0.0
    if edition == "2020" and grounds > 4:
        return 1.0 + (grounds - 4) / 4
    return 1.0


def next_box(needed: float, family: str, yokes: float) -> str:
    """The smallest box of the family that holds so many cubic inches and yokes; failing that, of the square ones.

    >>> [next_box(13, "device", 1), next_box(20, "device", 1), next_box(12, "device", 2), next_box(50, "round", 0)]
    ['device box 3 x 2 x 2-3/4 in', '4 in square box, 1-1/2 in deep', '4 in square box, 1-1/2 in deep', \
'two boxes: none of the list holds this']
    >>> next_box(30, "device", 3)
    'a box of 3 gangs with 30 cu in or more'
    """
    for look in [family, "square"]:
        for box in BOXES:
            if box["family"] == look and box["volume"] >= needed - NOISE and box["gangs"] >= yokes:
                return str(box["label"])
    if yokes > 1:
        return f"a box of {decimal(yokes, 0)} gangs with {decimal(needed, 2)} cu in or more"
    return "two boxes: none of the list holds this"


def part_of(what: str, count: float, each: float) -> dict[str, Any]:
    """One line of the count: what, how many conductors it counts as, and its cubic inches."""
    return {"what": what, "allowances": count, "each": each / CU_IN, "volume": count * each / CU_IN}


def ground_of(gauge: str, thickest: int) -> int:
    """The place of the largest grounding wire's gauge, for the thickest conductor in the box.

    >>> [ground_of("largest", 3), ground_of("largest", 6), ground_of("10", 2)]
    [3, 4, 4]
    """
    asked = min(thickest, GROUND_MOST)
    if gauge == LARGEST:
        return asked
    at = place_of(gauge)
    if at < asked:
        refuse(
            "ground_gauge",
            f"Largest grounding wire: {gauge} AWG is too thin beside {GAUGES[thickest]} AWG in the same box, which "
            f"comes with {GAUGES[asked]} AWG (NEC 250.122)",
        )
    return at


def yoke_of(gauge: str, thickest: int, counts: list[float]) -> int:
    """The place of the gauge that yokes count as; a gauge of which no wire is counted is refused.

    >>> [yoke_of("largest", 3, [0, 0, 2, 2, 0, 0, 0]), yoke_of("14", 3, [0, 0, 2, 2, 0, 0, 0])]
    [3, 2]
    """
    if gauge == LARGEST:
        return thickest
    at = place_of(gauge)
    if counts[at] == 0:
        refuse("yoke_gauge", f"Largest wire on a yoke: no {gauge} AWG wire is counted in this box")
    return at
