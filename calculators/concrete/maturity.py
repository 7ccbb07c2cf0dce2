"""Counting warm and cold days as days at one temperature, and the strength of ordinary concrete at that age.

Nothing here knows of a site: hours, degrees Fahrenheit, and strength as a share of the 28-day strength.
"""

from __future__ import annotations

from typing import Any

from calculators.writing import NOISE, decimal
from calculators.writing_units import with_unit

STANDARD_CURE = 73.0
"""Temperature (F) at which the strength curve holds: moist curing in the laboratory."""
DAY = 24.0
CURVES: dict[str, list[float]] = {"ordinary": [4.0, 0.85], "early": [2.3, 0.92]}
"""ACI 209R-92: a (days) and b of Eq. 2-1; moist cured, cement Type I and Type III (Table 2.2.1, from memory)."""


def share_at(days: float, cement: str) -> float:
    """Strength as a share of the 28-day strength, after so many days at 73 F: t / (a + b t). ACI 209R Eq. 2-1.

    >>> [share_at(3, "ordinary"), share_at(7, "ordinary"), share_at(28, "ordinary")]
    [0.458, 0.704, 1.007]
    """
    return days / (CURVES[cement][0] + CURVES[cement][1] * days)


def days_to_share(share: float, cement: str) -> float:
    """Days at 73 F to a share of the 28-day strength; -1 where the curve never comes so far.

    >>> [days_to_share(0.35, "ordinary"), days_to_share(1.2, "ordinary")]
    [1.993, -1.0]
    """
    left = 1 - CURVES[cement][1] * share
    return -1.0 if left <= NOISE else CURVES[cement][0] * share / left


def pace(temperature: float, datum: float) -> float:
    """How much an hour at that temperature counts of an hour at 73 F; nothing below the datum. F.

    >>> [pace(73, 32), pace(52.5, 32), pace(20, 32)]
    [1.0, 0.5, 0.0]
    """
    return max(0.0, temperature - datum) / (STANDARD_CURE - datum)


def counted_hours(age: float, weather: list[dict[str, Any]], temperature: float, datum: float) -> float:
    """Hours at 73 F that the hours up to ``age`` count for; behind the rows the weather goes on at ``temperature``.

    >>> counted_hours(72, [{"time": 24, "temperature": 73}], 52.5, 32)
    48.0
    """
    left = age
    counted = 0.0
    for row in weather:
        part = min(left, row["time"])
        counted = counted + part * pace(row["temperature"], datum)
        left = left - part
    return counted + left * pace(temperature, datum)


def hours_until(wanted: float, weather: list[dict[str, Any]], temperature: float, datum: float) -> float:
    """Hours by the clock until they count for ``wanted`` hours at 73 F; -1 where they never do.

    >>> [hours_until(48, [{"time": 24, "temperature": 73}], 52.5, 32), hours_until(48, [], 30, 32)]
    [72.0, -1.0]
    """
    clock = 0.0
    left = wanted
    for row in weather:
        counts = pace(row["temperature"], datum)
        if left <= row["time"] * counts:
            if counts > 0:
                clock = clock + left / counts
            return clock
        left = left - row["time"] * counts
        clock = clock + row["time"]
    counts = pace(temperature, datum)
    return -1.0 if counts <= 0 else clock + left / counts


FREEZING = 32.0
YEAR = 365 * DAY


def stretch(hours: float, temperature: float, datum: float) -> str:
    """One stretch of weather in words."""
    days = with_unit(decimal(hours / DAY, 2), "days")
    counts = decimal(hours / DAY * pace(temperature, datum), 2)
    scale = f"({decimal(temperature, 0)} - {decimal(datum, 0)}) / ({decimal(STANDARD_CURE, 0)} - {decimal(datum, 0)})"
    if temperature <= datum:
        return f"{days} at {decimal(temperature, 0)} F, at or below the datum of {decimal(datum, 0)} F: counts nothing"
    return f"{days} at {decimal(temperature, 0)} F x {scale} = {counts} at 73 F"


def spells_of(rows: list[dict[str, Any]], temperature: float, age: float) -> list[dict[str, Any]]:
    """The stretches of weather, and the one that goes on behind them, a day at least."""
    return [*rows, {"time": max(age, DAY), "temperature": temperature}]
