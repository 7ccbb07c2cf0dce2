"""The metric unit and precision that stand in for each US unit when a person works in metric.

Which unit a trade uses beside which is common practice: millimetres for what is measured with a tape, metres for runs
that are ordered by the foot, litres for what is poured from a can. The factors are those of ``units``.
"""

from __future__ import annotations

from typing import Any

from calculators.units import from_inside, to_inside
from calculators.writing import SIXTEENTH, TAPE, rounded
from calculators.writing_units import exactly, write

METRIC: dict[str, dict[str, list[Any]]] = {
    "length": {"in": ["mm", 1], "ft-in": ["mm", 1], "ft": ["m", 0.01], "yd": ["m", 0.01]},
    "area": {"sq in": ["m2", 0.001], "sq ft": ["m2", 0.1], "sq yd": ["m2", 0.1]},
    "volume": {
        "cu in": ["L", 0.01],
        "cu ft": ["m3", 0.01],
        "cu yd": ["m3", 0.1],
        "bd ft": ["m3", 0.001],
        "gal": ["L", 0.1],
    },
    "mass": {"oz": ["kg", 0.01], "lb": ["kg", 0.1], "ton": ["t", 0.01]},
    "temperature": {"F": ["C", 1]},
    "slope": {"in/ft": ["%", 0.1]},
}
"""Quantity, then US unit: the metric unit, and the coarsest step in which it is written."""


def metric_unit(quantity: str, unit: str) -> str:
    """The metric unit for a unit; one that has none, or is metric already, stays.

    >>> [metric_unit("length", "in"), metric_unit("volume", "cu yd"), metric_unit("time", "h")]
    ['mm', 'm3', 'h']
    """
    return str(METRIC[quantity][unit][0]) if quantity in METRIC and unit in METRIC[quantity] else unit


def metric_step(quantity: str, unit: str, step: float) -> float:
    """The step in the metric unit: the power of ten that is not coarser than the US step; 0 stays 0 but for the tape.

    A whole degree F becomes a whole degree C, though that is coarser: nobody reads tenths off a thermometer on site.

    >>> [metric_step("length", "in", 0.0625), metric_step("length", "in", 0.001), metric_step("volume", "cu yd", 0.25)]
    [1.0, 0.01, 0.1]
    """
    if quantity not in METRIC or unit not in METRIC[quantity]:
        return step
    coarsest = float(METRIC[quantity][unit][1])
    if step == 0:
        if quantity == "length" and (unit == "in" or unit == "ft-in"):
            return coarsest
        return 0.0
    other = metric_unit(quantity, unit)
    us_unit = "in" if unit == "ft-in" else unit
    size = from_inside(to_inside(step, quantity, us_unit), quantity, other)
    if quantity == "temperature":
        size = step
    parts = 1
    while parts < 1000000 and (1 / parts > coarsest or 1 / parts > size):
        parts = parts * 10
    return 1 / parts


def unit_in(quantity: str, unit: str, metric: bool) -> str:
    """The unit that a bare number means, and in which a value is written back."""
    return metric_unit(quantity, unit) if metric else unit


def write_in(value: Any, quantity: str, unit: str, step: float, rounds: str, metric: bool) -> str:
    """A value of the inside as text, in the declared unit and step, or in the metric ones that stand in for them.

    >>> [write_in(63.5, "length", "in", 0.0625, "nearest", metric) for metric in [False, True]]
    ['63-1/2 in', '1613 mm']
    """
    if not metric:
        return write(value, quantity, unit, step, rounds)
    if rounds == "tape":
        mark = rounded(value, SIXTEENTH, "nearest")
        if abs(value - mark) <= TAPE:
            return write(mark, quantity, metric_unit(quantity, unit), 1.0, "nearest")
        return write(value, quantity, metric_unit(quantity, unit), 0.1, "nearest")
    return write(value, quantity, metric_unit(quantity, unit), metric_step(quantity, unit, step), rounds)


def exactly_in(value: Any, quantity: str, unit: str, metric: bool) -> str:
    """A value as a person gave it, in the declared unit or in the metric one."""
    return exactly(value, quantity, unit_in(quantity, unit, metric))
