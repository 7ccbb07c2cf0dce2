"""How much each species moves with moisture: change of width for one percent of moisture, flat-sawn and quarter-sawn.

Single coefficients of the Wood Handbook (FPL-GTR-190), table 13-5: `flat` is its tangential C_T, `quarter` its radial
C_R. They are parts of the width at 6 to 14 % moisture for one percent of moisture.
"""

from __future__ import annotations

SPECIES: dict[str, dict[str, float]] = {
    # seen in table 13-5
    "red-oak": {"quarter": 0.00158, "flat": 0.00369},
    "water-oak": {"quarter": 0.00151, "flat": 0.00350},
    "white-oak": {"quarter": 0.00180, "flat": 0.00365},
    "overcup-oak": {"quarter": 0.00183, "flat": 0.00462},
    "oregon-white-oak": {"quarter": 0.00144, "flat": 0.00327},
    "live-oak": {"quarter": 0.00230, "flat": 0.00338},
    "sugar-maple": {"quarter": 0.00165, "flat": 0.00353},
    "red-maple": {"quarter": 0.00137, "flat": 0.00289},
    "silver-maple": {"quarter": 0.00102, "flat": 0.00252},
    "black-walnut": {"quarter": 0.00190, "flat": 0.00274},
    "pecan": {"quarter": 0.00169, "flat": 0.00315},
    "white-ash": {"quarter": 0.00169, "flat": 0.00274},
    "beech": {"quarter": 0.00190, "flat": 0.00431},
    "yellow-birch": {"quarter": 0.00256, "flat": 0.00338},
    "black-cherry": {"quarter": 0.00126, "flat": 0.00248},
    "red-alder": {"quarter": 0.00151, "flat": 0.00256},
    "aspen": {"quarter": 0.00119, "flat": 0.00234},
    "sweetgum": {"quarter": 0.00183, "flat": 0.00365},
    "honeylocust": {"quarter": 0.00144, "flat": 0.00230},
    "butternut": {"quarter": 0.00116, "flat": 0.00223},
    "white-fir": {"quarter": 0.00112, "flat": 0.00245},
    # from memory
    "true-hickory": {"quarter": 0.00259, "flat": 0.00411},
    "douglas-fir-coast": {"quarter": 0.00165, "flat": 0.00267},
    "douglas-fir-north": {"quarter": 0.00130, "flat": 0.00241},
    "douglas-fir-west": {"quarter": 0.00165, "flat": 0.00263},
    "eastern-white-pine": {"quarter": 0.00071, "flat": 0.00212},
    "redwood": {"quarter": 0.00120, "flat": 0.00205},
    "western-redcedar": {"quarter": 0.00111, "flat": 0.00234},
    "loblolly-pine": {"quarter": 0.00165, "flat": 0.00259},
}

NAMES = {
    "red-oak": "red oak (commercial)",
    "water-oak": "water, laurel or willow oak",
    "white-oak": "white oak (commercial)",
    "overcup-oak": "overcup oak",
    "oregon-white-oak": "Oregon white oak",
    "live-oak": "live oak",
    "sugar-maple": "sugar or black maple (hard)",
    "red-maple": "red maple (soft)",
    "silver-maple": "silver maple (soft)",
    "black-walnut": "black walnut",
    "pecan": "pecan hickory",
    "white-ash": "white ash",
    "beech": "American beech",
    "yellow-birch": "yellow birch",
    "black-cherry": "black cherry",
    "red-alder": "red alder",
    "aspen": "quaking aspen",
    "sweetgum": "sweetgum",
    "honeylocust": "honeylocust",
    "butternut": "butternut",
    "white-fir": "white fir",
    "true-hickory": "true hickory (coefficient from memory)",
    "douglas-fir-coast": "Douglas-fir, coast (coefficient from memory)",
    "douglas-fir-north": "Douglas-fir, interior north (coefficient from memory)",
    "douglas-fir-west": "Douglas-fir, interior west (coefficient from memory)",
    "eastern-white-pine": "eastern white pine (coefficient from memory)",
    "redwood": "redwood, old growth (coefficient from memory)",
    "western-redcedar": "western redcedar (coefficient from memory)",
    "loblolly-pine": "loblolly pine (coefficient from memory)",
}

FROM_MEMORY = [species for species, name in NAMES.items() if name.endswith("(coefficient from memory)")]
"""Rows that were recalled, not seen in the table; all others were seen."""


def coefficient(species: str, cut: str) -> float:
    """The part of its width that a board changes for one percent of moisture.

    >>> coefficient("red-oak", "flat")
    0.00369
    """
    return SPECIES[species][cut]
