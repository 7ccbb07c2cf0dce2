"""How far a shelf or a rod sags: the deflection of straight beams.

The formulas are those of any table of beams. Lengths in inches, loads in pounds, stiffness (the modulus of
elasticity, E) in pounds a square inch, section (the second moment of area, I) in inches to the fourth.
"""

from __future__ import annotations

from math import exp, log, pi

BOTH_ENDS_REST = "rests"
BOTH_ENDS_FIXED = "fixed"
ONE_END_FIXED = "cantilever"


def uniform_factor(ends: str) -> float:
    """The factor k of a load that lies along the whole beam: sag = k x load an inch x span^4 / (E I).

    >>> [uniform_factor("rests") * 384, uniform_factor("fixed") * 384, uniform_factor("cantilever") * 8]
    [5.0, 1.0, 1.0]
    """
    if ends == BOTH_ENDS_FIXED:
        return 1 / 384
    if ends == ONE_END_FIXED:
        return 1 / 8
    return 5 / 384


def point_factor(ends: str) -> float:
    """The factor k of a load at mid span, or at the free end of a cantilever: sag = k x load x span^3 / (E I).

    >>> [1 / point_factor("rests"), 1 / point_factor("fixed"), 1 / point_factor("cantilever")]
    [48.0, 192.0, 3.0]
    """
    if ends == BOTH_ENDS_FIXED:
        return 1 / 192
    if ends == ONE_END_FIXED:
        return 1 / 3
    return 1 / 48


def uniform_sag(load: float, span: float, stiffness: float, section: float, ends: str) -> float:
    """The sag in inches under so many pounds an inch of span.

    A shelf of 3/4 x 11-1/4 in with 36 in between supports, 10 lb a foot, E = 1,000,000 psi:

    >>> uniform_sag(10 / 12, 36, 1000000, flat_section(11.25, 0.75), "rests")
    0.0461
    """
    return uniform_factor(ends) * load * span * span * span * span / (stiffness * section)


def point_sag(load: float, span: float, stiffness: float, section: float, ends: str) -> float:
    """The sag in inches under one load in pounds at mid span, or at the free end.

    >>> point_sag(100, 48, 1000000, 0.3955, "rests")
    0.583
    """
    return point_factor(ends) * load * span * span * span / (stiffness * section)


def longest_span(load: float, part: float, stiffness: float, section: float, ends: str) -> float:
    """The span in inches at which the sag under pounds an inch is just span / part.

    >>> span = longest_span(10 / 12, 144, 1000000, flat_section(11.25, 0.75), "rests")
    >>> span / uniform_sag(10 / 12, span, 1000000, flat_section(11.25, 0.75), "rests")
    144.0
    """
    return exp(log(stiffness * section / (uniform_factor(ends) * load * part)) / 3)


def flat_section(width: float, thickness: float) -> float:
    """The second moment of area of a board that lies flat: width x thickness^3 / 12.

    >>> flat_section(11.25, 0.75)
    0.3955
    """
    return width * thickness * thickness * thickness / 12


def round_section(diameter: float, wall: float) -> float:
    """The second moment of area of a tube, or of a solid rod where the wall is 0: pi (outside^4 - inside^4) / 64.

    >>> [round_section(1.25, 0), round_section(1.25, 0.0625)]
    [0.11984, 0.04121]
    """
    inside = diameter - 2 * wall if wall > 0 else 0.0
    return pi * (diameter * diameter * diameter * diameter - inside * inside * inside * inside) / 64
