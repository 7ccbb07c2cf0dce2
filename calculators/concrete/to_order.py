"""What a slab takes, as it is bought: concrete by the quarter yard and the truck, loose base by weight, stakes.

Volumes are cubic feet unless a name says yards. Shares are percents.
"""

from __future__ import annotations

from calculators.writing import decimal, rounded, whole
from calculators.writing_units import write

CONCRETE_WEIGHT = 150.0
"""Pounds a cubic foot of ordinary concrete, 4,050 lb a yard (common practice)."""
CUBIC_FOOT = 1728.0
CUBIC_YARD = 27.0


def more(volume: float, percent: float) -> float:
    """A volume with a share on it: waste on concrete, the loss of height on loose base.

    >>> more(200, 25)
    250.0
    """
    return volume * (1 + percent / 100)


def bought(
    concrete: float, waste: float, truck: float, bag_yield: float, base: float, base_loose: float, base_weight: float
) -> dict[str, float]:
    """What is ordered for a slab: concrete up to the next quarter yard, its loads of ``truck`` cubic feet, the same in
    bags of ``bag_yield`` cubic feet, its pounds; loose base in cubic feet and in pounds, ``base_weight`` a cubic yard.

    >>> answer = bought(100, 11, 270, 0.6, 43.2, 25, 2950)
    >>> answer["loads"], round(answer["weight"], 1), round(answer["base_tons"], 1)
    (1, 17212.5, 5900.0)
    """
    order = more(concrete, waste)
    yards = rounded(order / CUBIC_YARD, 0.25, "up")
    loose = more(base, base_loose)
    return {
        "concrete": concrete,
        "order": order,
        "loads": whole(yards * CUBIC_YARD / truck, "up"),
        "bags": order / bag_yield,
        "weight": yards * CUBIC_YARD * CONCRETE_WEIGHT,
        "base": base,
        "base_loose_volume": loose,
        "base_tons": loose / CUBIC_YARD * base_weight,
    }


def loads_cautions(loads: float) -> list[str]:
    """What to agree with the plant when one truck does not carry it all."""
    if loads > 1:
        return [
            f"{decimal(loads, 0)} loads: agree the time between trucks when ordering, so that the first load does not "
            "set before the second one meets it."
        ]
    return []


def order_words(order: float, waste: float) -> str:
    """The end of the line of working that comes to the order.

    >>> order_words(111, 10)
    '10 % = 4.11, order 4-1/4 cu yd.'
    """
    return (
        f"{decimal(waste, 1)} % = {decimal(order / CUBIC_YARD, 2)}, "
        f"order {write(order, 'volume', 'cu yd', 0.25, 'up')}."
    )


def base_words(base: float, loose: float, base_weight: float) -> str:
    """The end of the line of working that comes to the tons of base.

    >>> base_words(27, 25, 2950)
    'compacted = 1 cu yd, plus 25 % loose = 1.25 cu yd x 2950 lb = 1.84 tons.'
    """
    yards = more(base, loose) / CUBIC_YARD
    return (
        f"compacted = {decimal(base / CUBIC_YARD, 2)} cu yd, plus {decimal(loose, 1)} % loose = "
        f"{decimal(yards, 2)} cu yd x {decimal(base_weight, 0)} lb = {decimal(yards * base_weight / 2000, 2)} tons."
    )


def stakes(edges: list[float], spacing: float) -> int:
    """Stakes for forms: on each formed edge one at both ends, and no two further apart than the spacing. Inches.

    >>> stakes([72, 144], 36)
    8
    """
    return sum(whole(edge / spacing, "up") + 1 for edge in edges)


def supports(area: float, spacing: float) -> int:
    """Supports under bars, one for each square of that spacing. Square inches, inches.

    >>> supports(28800, 24)
    50
    """
    return whole(area / (spacing * spacing), "up")
