"""How fast fresh concrete dries, by air, wind and its own warmth."""

from __future__ import annotations

from math import exp, sqrt

from calculators.writing import NOISE, decimal

HPA_IN_PSI = 68.94757293168361
"""Hectopascals in a pound a square inch."""
KM_IN_MILE = 1.609344
KG_M2_IN_LB_SQ_FT = 4.882427636383051
"""Kilograms a square metre in a pound a square foot."""
WINDIEST = 60.0


def celsius(temperature: float) -> float:
    """Degrees Fahrenheit in Celsius."""
    return (temperature - 32) * 5 / 9


def saturation_pressure(temperature: float) -> float:
    """Pressure of water vapour over water at that temperature (F), in psi: 6.112 exp(17.62 t / (243.12 + t)) hPa,
    t in C. Source: WMO Guide No. 8, Annex 4.B.

    >>> saturation_pressure(68)
    0.3383
    """
    t = celsius(temperature)
    return 6.112 * exp(17.62 * t / (243.12 + t)) / HPA_IN_PSI


def menzel(air: float, humidity: float, mix: float, wind: float) -> float:
    """Evaporation in lb/sq ft/h: 0.44 (e0 - ea) (0.253 + 0.096 V), pressures in psi, V in mph. Never below 0.

    Source: Menzel 1954, as in ACI 305R.

    >>> menzel(80, 50, 87, 12)
    0.236
    """
    drive = saturation_pressure(mix) - humidity / 100 * saturation_pressure(air)
    return max(0.0, 0.44 * drive * (0.253 + 0.096 * wind))


def power_two_and_a_half(x: float) -> float:
    """x to the power 2.5; 0 for x below 0."""
    return 0.0 if x <= 0 else x * x * sqrt(x)


def uno(air: float, humidity: float, mix: float, wind: float) -> float:
    """Evaporation in lb/sq ft/h: 5 ([Tc + 18]^2.5 - r [Ta + 18]^2.5) (V + 4) / 1,000,000 kg/m2/h, C and km/h.

    Never below 0. Source: Uno, ACI Materials Journal 95-M34, 1998.

    >>> uno(80, 50, 87, 12)
    0.233
    """
    mix_part = power_two_and_a_half(celsius(mix) + 18)
    air_part = power_two_and_a_half(celsius(air) + 18)
    rate = 5 * (mix_part - humidity / 100 * air_part) * (wind * KM_IN_MILE + 4) / 1000000
    return max(0.0, rate / KG_M2_IN_LB_SQ_FT)


def larger(air: float, humidity: float, mix: float, wind: float) -> float:
    """The larger of the two rates."""
    return max(menzel(air, humidity, mix, wind), uno(air, humidity, mix, wind))


def wind_that_dries(air: float, humidity: float, mix: float, limit: float) -> str:
    """The wind up to which the slab dries no faster than the limit, in words. Both rates grow with the wind.

    >>> [wind_that_dries(80, 50, 87, 0.2), wind_that_dries(60, 90, 60, 0.2), wind_that_dries(120, 1, 115, 0.05)]
    ['up to 9 mph', 'any wind up to 60 mph', 'not even still air']
    """
    if larger(air, humidity, mix, WINDIEST) <= limit + NOISE:
        return f"any wind up to {decimal(WINDIEST, 0)} mph"
    if larger(air, humidity, mix, 0.0) > limit + NOISE:
        return "not even still air"
    wind = 0
    while larger(air, humidity, mix, wind + 1.0) <= limit + NOISE:
        wind = wind + 1
    return f"up to {decimal(wind, 0)} mph"
