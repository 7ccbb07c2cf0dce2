"""Amounts of material as the pages of a job write them."""

from __future__ import annotations

from collections.abc import Mapping

from build_tools.plan.order_quantities import Ordered
from calculators.writing import decimal, feet_inches

MEASURES = frozenset({"ft", "sq ft", "cu yd", "lb", "gal", "ton", "h", "in"})
"""Units that have no plural of their own."""


def of_unit(number: float, unit: str) -> str:
    """A number with its unit, one or many.

    >>> of_unit(1, "boxes"), of_unit(3, "box"), of_unit(2.25, "cu yd"), of_unit(4, "each"), of_unit(2, "tub")
    ('1 box', '3 boxes', '2.25 cu yd', '4', '2 tubs')
    """
    if unit == "each":
        return decimal(number, 2)
    if unit not in MEASURES:
        unit = unit.removesuffix("es") if unit.endswith("xes") else unit.removesuffix("s")
        if number != 1:
            unit += "es" if unit.endswith("x") else "s"
    return f"{decimal(number, 2)} {unit}"


def as_sold(what: Ordered, quantity: float) -> str:
    """A quantity of what is ordered as it is asked for at the counter: sticks by length, whole packs, or the amount."""
    if what.cuts is not None:
        return sticks(what.cuts.sticks)
    packs = quantity / what.size
    if what.size > 1 and what.unit == "each":
        return f"{of_unit(packs, 'packs')} of {decimal(what.size, 2)}"
    if what.size > 1:
        return f"{decimal(packs, 2)} x {of_unit(what.size, what.unit)}"
    return of_unit(quantity, what.unit)


def sticks(counts: Mapping[float, int]) -> str:
    """Stock lengths in inches with how many of each, the longest first.

    >>> print(sticks({96.0: 2, 168.0: 1}))
    1 x 14' 0", 2 x 8' 0"
    """
    return ", ".join(f"{counts[length]} x {feet_inches(length)}" for length in sorted(counts, reverse=True))
