"""How far a shelf or a rod sags: the deflection of a straight beam that rests on both ends under an even load.

The formulas are those of any table of beams. Lengths in inches, loads in pounds, stiffness (the modulus of
elasticity, E) in pounds a square inch, section (the second moment of area, I) in inches to the fourth.
"""

from __future__ import annotations

from math import exp, log, pi

EVEN = 5 / 384
"""sag = 5/384 x load an inch x span^4 / (E I)."""


def uniform_sag(load: float, span: float, stiffness: float, section: float) -> float:
    """The sag in inches under so many pounds an inch of span.

    A shelf of 3/4 x 11-1/4 in with 36 in between supports, 10 lb a foot, E = 1,000,000 psi:

    >>> uniform_sag(10 / 12, 36, 1000000, flat_section(11.25, 0.75))
    0.0461
    """
    return EVEN * load * span * span * span * span / (stiffness * section)


def longest_span(load: float, part: float, stiffness: float, section: float) -> float:
    """The span in inches at which the sag under pounds an inch is just span / part.

    >>> span = longest_span(10 / 12, 144, 1000000, flat_section(11.25, 0.75))
    >>> span / uniform_sag(10 / 12, span, 1000000, flat_section(11.25, 0.75))
    144.0
    """
    return exp(log(stiffness * section / (EVEN * load * part)) / 3)


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
