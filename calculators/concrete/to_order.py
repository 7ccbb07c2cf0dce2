"""What a slab takes, as it is bought: concrete by the quarter yard and the truck, loose base by weight, stakes.

Volumes are cubic feet unless a name says yards. Shares are percents.
"""

from __future__ import annotations

from calculators.writing import decimal, rounded, whole, write

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


def order_yards(order: float) -> float:
    """Cubic yards that the plant is told: up to the next quarter.

    >>> order_yards(111)
    4.25
    """
    return rounded(order / CUBIC_YARD, 0.25, "up")


def truck_loads(yards: float, truck: float) -> int:
    """Loads for the yards ordered; ``truck`` is what one carries, in cubic feet.

    >>> [truck_loads(10, 270), truck_loads(10.25, 270)]
    [1, 2]
    """
    return whole(yards * CUBIC_YARD / truck, "up")


def order_weight(yards: float) -> float:
    """Pounds that the order weighs.

    >>> order_weight(2)
    8100.0
    """
    return yards * CUBIC_YARD * CONCRETE_WEIGHT


def loads_cautions(loads: int) -> list[str]:
    """What to agree with the plant when one truck does not carry it all."""
    if loads > 1:
        return [
            f"{loads} loads: agree the time between trucks when ordering, so that the first load does not set "
            "before the second one meets it."
        ]
    return []


def base_pounds(bought: float, base_weight: float) -> float:
    """Pounds of loose base; ``base_weight`` in lb a loose cubic yard.

    >>> base_pounds(54, 2950)
    5900.0
    """
    return bought / CUBIC_YARD * base_weight


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
    bought = more(base, loose)
    return (
        f"compacted = {decimal(base / CUBIC_YARD, 2)} cu yd, plus {decimal(loose, 1)} % loose = "
        f"{decimal(bought / CUBIC_YARD, 2)} cu yd x {decimal(base_weight, 0)} lb = "
        f"{decimal(base_pounds(bought, base_weight) / 2000, 2)} tons."
    )


def stakes(edges: list[float], spacing: float) -> int:
    """Stakes for forms: on each formed edge one at both ends, and no two further apart than the spacing. Inches.

    >>> stakes([72, 144], 36)
    8
    """
    count = 0
    for edge in edges:
        count = count + whole(edge / spacing, "up") + 1
    return count


def supports(area: float, spacing: float) -> int:
    """Supports under bars, one for each square of that spacing. Square inches, inches.

    >>> supports(28800, 24)
    50
    """
    return whole(area / (spacing * spacing), "up")
