"""How much larger a part of a drawing, or its heights, are drawn than the rest."""

from __future__ import annotations

from calculators.writing import decimal

STRETCHES = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0]


def larger(times: float) -> str:
    """How much larger a detail is drawn than what it belongs to, in words.

    >>> [larger(1.0), larger(2.5)]
    ['to the same scale', 'drawn 2.5 times larger']
    """
    return "to the same scale" if times == 1 else f"drawn {decimal(times, 1)} times larger"


def stretch_within(high: float, most: float) -> float:
    """How many times larger heights are drawn, so that ``high`` stays within ``most``: the largest of STRETCHES.

    >>> [stretch_within(10.0, 60.0), stretch_within(10.0, 4.0)]
    [5.0, 1.0]
    """
    fitting = [each for each in STRETCHES if high * each <= most]
    return fitting[-1] if len(fitting) > 0 else 1.0
