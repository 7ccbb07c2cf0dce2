"""The written units, each as an exact fraction of the inside unit.

Sources of the factors: 16 CFR 500.19(a), which prints six figures and marks the inch of 2.54 cm as exact, and NIST
SP 811 Appendix B. The inch, the gallon (231 cu in) and the pound (453.592 37 g) are exact by definition, so each is
a fraction of whole numbers and nothing is rounded. A day is 24 hours by the clock, not a working day. A ton is the
short ton of 2000 lb; t is the metric one. A board foot is 144 cu in.
"""

from __future__ import annotations

from math import atan, pi, tan

UNITS: dict[str, dict[str, list[float]]] = {
    "length": {
        "in": [1, 1],
        "ft-in": [1, 1],
        "ft": [12, 1],
        "yd": [36, 1],
        "mm": [10, 254],
        "cm": [100, 254],
        "m": [10000, 254],
    },
    "area": {"sq in": [1, 144], "sq ft": [1, 1], "sq yd": [9, 1], "m2": [100000000, 9290304]},
    "volume": {
        "cu in": [1, 1728],
        "cu ft": [1, 1],
        "cu yd": [27, 1],
        "bd ft": [1, 12],
        "gal": [231, 1728],
        "L": [1000000000, 28316846592],
        "m3": [1000000000000, 28316846592],
    },
    "mass": {"lb": [1, 1], "oz": [1, 16], "ton": [2000, 1], "kg": [100000000, 45359237], "t": [100000000000, 45359237]},
    "time": {"s": [1, 3600], "min": [1, 60], "h": [1, 1], "days": [24, 1], "weeks": [168, 1]},
    "angle": {"deg": [1, 1]},
    "percent": {"%": [1, 1]},
    "slope": {"%": [1, 100], "in/ft": [1, 12], "1:n": [1, 1], "deg": [1, 1]},
    "temperature": {"F": [1, 1], "C": [1, 1]},
}
"""Quantity, then written unit: [over, under], so that inside = written * over / under."""


def to_inside(value: float, quantity: str, unit: str) -> float:
    """A value in a written unit as the inside unit has it.

    A quantity without units of its own (a count, a number) is handed through. For slope in ``1:n`` the value is n.

    >>> to_inside(254, "length", "mm")
    10.0
    """
    if quantity == "temperature" and unit == "C":
        return value * 9 / 5 + 32
    if quantity == "slope" and unit == "deg":
        return tan(value * pi / 180)
    if quantity == "slope" and unit == "1:n":
        return 1 / value
    if quantity in UNITS:
        return value * UNITS[quantity][unit][0] / UNITS[quantity][unit][1]
    return value


def from_inside(value: float, quantity: str, unit: str) -> float:
    """A value of the inside in a written unit. A level slope in ``1:n`` has no n and gives 0.

    >>> from_inside(1, "volume", "cu yd") * 27
    1.0
    """
    if quantity == "temperature" and unit == "C":
        return (value - 32) * 5 / 9
    if quantity == "slope" and unit == "deg":
        return atan(value) * 180 / pi
    if quantity == "slope" and unit == "1:n":
        if value == 0:
            return 0.0
        return 1 / value
    return value * UNITS[quantity][unit][1] / UNITS[quantity][unit][0] if quantity in UNITS else value
