"""The unit table against published factors and against pint."""

from __future__ import annotations

from math import isclose

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.reading import read
from calculators.units import UNITS, from_inside, to_inside
from calculators.writing_units import write

UREG: pint.UnitRegistry[float] = pint.UnitRegistry()


def convert(value: float, quantity: str, unit: str, other: str) -> float:
    """A value in one written unit in another."""
    return from_inside(to_inside(value, quantity, unit), quantity, other)


# 16 CFR 500.19(a), the chart of conversion factors; those with a star there are exact.
EXACT = [
    ("length", "in", "cm", 2.54),
    ("length", "ft", "cm", 30.48),
    ("length", "yd", "m", 0.9144),
]


@pytest.mark.parametrize(("quantity", "unit", "metric", "factor"), EXACT)
def test_exact_factors_of_16_cfr_500_19(quantity: str, unit: str, metric: str, factor: float) -> None:
    assert isclose(convert(1, quantity, unit, metric), factor, rel_tol=1e-15)


def agrees_as_printed(value: float, printed: str) -> bool:
    """Whether a value rounds to a printed figure: within half of its last place."""
    places = len(printed.partition(".")[2])
    return abs(value - float(printed)) <= 0.5000001 * 10.0**-places


# 16 CFR 500.19(a), the same chart; the last column turns our unit into the one printed there (cm2, g, cm3).
SIX_FIGURES = [
    ("length", "mm", "in", "0.039370", 1),
    ("length", "cm", "in", "0.393701", 1),
    ("length", "m", "ft", "3.28084", 1),
    ("area", "sq in", "m2", "6.4516", 1e4),
    ("area", "sq ft", "m2", "929.0304", 1e4),
    ("area", "sq yd", "m2", "0.836127", 1),
    ("area", "m2", "sq ft", "10.7639", 1),
    ("volume", "cu in", "m3", "16.3871", 1e6),
    ("volume", "cu ft", "m3", "0.0283168", 1),
    ("volume", "cu yd", "m3", "0.764555", 1),
    ("volume", "m3", "cu ft", "35.3147", 1),
    ("volume", "m3", "cu yd", "1.30795", 1),
    ("volume", "gal", "L", "3.78541", 1),
    ("volume", "L", "gal", "0.264172", 1),
    ("mass", "oz", "kg", "28.3495", 1e3),
    ("mass", "lb", "kg", "453.592", 1e3),
    ("mass", "kg", "lb", "2.20462", 1),
]


@pytest.mark.parametrize(("quantity", "unit", "other", "printed", "scale"), SIX_FIGURES)
def test_factors_of_16_cfr_500_19(quantity: str, unit: str, other: str, printed: str, scale: float) -> None:
    assert agrees_as_printed(convert(1, quantity, unit, other) * scale, printed)


# NIST SP 811, Appendix B.8, mantissa and power of ten (from memory; they follow from the exact inch and pound).
NIST_SP_811 = [
    ("volume", "bd ft", "m3", "2.359737", 1e3),
    ("volume", "cu in", "m3", "1.638706", 1e5),
    ("volume", "cu ft", "m3", "2.831685", 1e2),
    ("volume", "cu yd", "m3", "7.645549", 1e1),
    ("volume", "gal", "m3", "3.785412", 1e3),
    ("mass", "oz", "kg", "2.834952", 1e2),
    ("mass", "lb", "kg", "4.535924", 1e1),
    ("mass", "ton", "kg", "9.071847", 1e-2),
    ("area", "sq yd", "m2", "8.361274", 1e1),
]


@pytest.mark.parametrize(("quantity", "unit", "metric", "printed", "scale"), NIST_SP_811)
def test_factors_of_nist_sp_811(quantity: str, unit: str, metric: str, printed: str, scale: float) -> None:
    assert agrees_as_printed(convert(1, quantity, unit, metric) * scale, printed)


# The exact values: the foot of 30.48 cm, the gallon of 231 cu in (16 CFR 500.19; NIST SP 811), worked out by cubing.
@pytest.mark.parametrize(
    ("unit", "metric", "factor"),
    [
        ("cu ft", "m3", 0.028316846592),
        ("cu yd", "m3", 0.764554857984),
        ("gal", "L", 3.785411784),
        ("bd ft", "m3", 0.002359737216),
    ],
)
def test_exact_volumes(unit: str, metric: str, factor: float) -> None:
    assert isclose(convert(1, "volume", unit, metric), factor, rel_tol=1e-15)


PINT_NAMES = {
    "in": "inch", "ft-in": "inch", "ft": "foot", "yd": "yard", "mm": "mm", "cm": "cm", "m": "m",
    "sq in": "inch**2", "sq ft": "foot**2", "sq yd": "yard**2", "m2": "m**2",
    "cu in": "inch**3", "cu ft": "foot**3", "cu yd": "yard**3", "bd ft": "board_foot", "gal": "gallon", "L": "liter",
    "m3": "m**3", "oz": "ounce", "lb": "pound", "ton": "short_ton", "kg": "kg", "t": "metric_ton",
    "s": "second", "min": "minute", "h": "hour", "days": "day", "weeks": "week", "F": "degF", "C": "degC",
}  # fmt: skip
PAIRS = [
    (quantity, unit, other)
    for quantity in ("length", "area", "volume", "mass", "time", "temperature")
    for unit in UNITS[quantity]
    for other in UNITS[quantity]
]


@given(st.sampled_from(PAIRS), st.floats(-1e6, 1e6))
def test_every_pair_of_units_agrees_with_pint(pair: tuple[str, str, str], value: float) -> None:
    quantity, unit, other = pair
    expected = UREG.Quantity(value, PINT_NAMES[unit]).to(PINT_NAMES[other]).magnitude
    assert isclose(convert(value, quantity, unit, other), expected, rel_tol=1e-11, abs_tol=1e-9)


# Slopes worked by hand from rise over run and the tangent (no source needed): percent and degrees.
SLOPES = [
    ("1/4 in/ft", 2.0833, 1.1935),
    ("1/8 in/ft", 1.0417, 0.5968),
    ("1/16 in/ft", 0.5208, 0.2984),
    ("1:12", 8.3333, 4.7636),
    ("1:48", 2.0833, 1.1935),
    ("1 in 48", 2.0833, 1.1935),
    ("1:20", 5.0, 2.8624),
]


@pytest.mark.parametrize(("written", "percent", "degrees"), SLOPES)
def test_slopes(written: str, percent: float, degrees: float) -> None:
    ratio = read(written, "slope", "%")
    assert isclose(from_inside(ratio, "slope", "%"), percent, abs_tol=5e-5)
    assert isclose(from_inside(ratio, "slope", "deg"), degrees, abs_tol=5e-5)


def test_five_feet_seven_and_three_eighths() -> None:
    """67.375 in and 1711.325 mm, exact by the inch of 25.4 mm (16 CFR 500.19)."""
    inside = read("5 ft 7-3/8 in", "length", "in")
    assert inside == 67.375
    assert write(inside, "length", "mm", 0.001) == "1711.325 mm"
    assert read("1711.325 mm", "length", "in") == 67.375


# The two fixed points that set both scales, and where they meet (general knowledge, exact by definition).
@pytest.mark.parametrize(("celsius", "fahrenheit"), [(0, 32), (100, 212), (-40, -40), (37, 98.6)])
def test_fixed_temperatures(celsius: float, fahrenheit: float) -> None:
    assert isclose(to_inside(celsius, "temperature", "C"), fahrenheit)
    assert isclose(from_inside(fahrenheit, "temperature", "C"), celsius)
