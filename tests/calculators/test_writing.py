"""Writing numbers: one rounding rule, fractions in lowest terms, feet and inches that never say 12 inches."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.writing import decimal, feet_inches, four_figures, inches, rounded, whole
from calculators.writing_units import exactly, write


@pytest.mark.parametrize(
    ("x", "step", "direction", "expected"),
    [
        (1 / 32, 1 / 16, "nearest", 1 / 16),
        (-1 / 32, 1 / 16, "nearest", -1 / 16),
        (3 / 32, 1 / 16, "nearest", 1 / 8),
        (2.5, 1, "nearest", 3),
        (-2.5, 1, "nearest", -3),
        (2.2700001, 0.25, "up", 2.5),
        (2.5000000001, 0.25, "up", 2.5),
        (2.4999999999, 0.25, "down", 2.5),
        (2.49, 0.25, "down", 2.25),
        (-2.49, 0.25, "up", -2.25),
        (-2.49, 0.25, "down", -2.5),
        (0.1 + 0.2, 0.1, "up", 0.3),
        (1.23456, 0, "nearest", 1.23456),
        (1234.0, 5, "up", 1235),
    ],
)
def test_rounded(x: float, step: float, direction: str, expected: float) -> None:
    assert rounded(x, step, direction) == expected


@given(st.fractions(-1000000000, 1000000000, max_denominator=1000))
def test_whole_is_exact_away_from_the_edges(x: Fraction) -> None:
    """Fractions with a denominator up to 1000 lie on an edge or well away from it, further than the tolerance."""
    half = Fraction(1, 2)
    nearest = floor(x + half) if x >= 0 else -floor(half - x)
    if abs(x) < 1000000:
        assert whole(float(x), "nearest") == nearest
        assert whole(float(x), "up") == ceil(x)
        assert whole(float(x), "down") == floor(x)
    assert abs(whole(float(x), "nearest") - x) <= half + Fraction(1, 500)


@given(st.integers(-(10**15), 10**15), st.sampled_from(["nearest", "up", "down"]))
def test_a_whole_number_stays(n: int, direction: str) -> None:
    assert whole(float(n), direction) == n


@pytest.mark.parametrize(
    ("x", "places", "expected"),
    [
        (2.5, 2, "2.5"),
        (3.0, 2, "3"),
        (0.005, 2, "0.01"),
        (-0.005, 2, "-0.01"),
        (-0.0004, 2, "0"),
        (1.005, 2, "1.01"),
        (99.995, 2, "100"),
        (0.05, 1, "0.1"),
        (1200.0, 0, "1200"),
    ],
)
def test_decimal(x: float, places: int, expected: str) -> None:
    assert decimal(x, places) == expected


@given(st.floats(-1e6, 1e6), st.integers(0, 8))
def test_decimal_is_within_half_a_place(x: float, places: int) -> None:
    assert abs(float(decimal(x, places)) - x) <= 0.5001 * 10**-places + 1e-9


@pytest.mark.parametrize(
    ("x", "expected"),
    [
        (0, "0"),
        (1 / 3, "0.3333"),
        (61.3333, "61.33"),
        (123456.7, "123457"),
        (0.0012345, "0.001235"),
        (9999.96, "10000"),
    ],
)
def test_four_figures(x: float, expected: str) -> None:
    assert four_figures(x) == expected


@pytest.mark.parametrize(
    ("x", "expected"),
    [
        (1.25, "1-1/4 in"),
        (-0.375, "-3/8 in"),
        (0, "0 in"),
        (0.5, "1/2 in"),
        (0.75, "3/4 in"),
        (12, "12 in"),
        (31 / 32, "1 in"),
        (0.9375, "15/16 in"),
        (1 / 32, "1/16 in"),
        (-1 / 32, "-1/16 in"),
        (1 / 33, "0 in"),
        (-0.001, "0 in"),
    ],
)
def test_inches(x: float, expected: str) -> None:
    assert inches(x) == expected


@pytest.mark.parametrize(
    ("x", "expected"),
    [
        (63.5, "5' 3-1/2\""),
        (60, "5' 0\""),
        (3.5, '3-1/2"'),
        (0, '0"'),
        (11 + 31 / 32, "1' 0\""),
        (23.99, "2' 0\""),
        (-63.5, "-5' 3-1/2\""),
        (-0.375, '-3/8"'),
        (-0.01, '0"'),
    ],
)
def test_feet_inches(x: float, expected: str) -> None:
    assert feet_inches(x) == expected


@given(st.floats(-10000, 10000))
def test_feet_inches_never_say_twelve_inches_or_sixteen_sixteenths(x: float) -> None:
    written = feet_inches(x)
    assert not written.endswith(' 12"')
    assert "/16" not in written or "16/16" not in written
    for part in written.replace('"', "").replace("'", "").replace("-", " ").split():
        if "/" in part:
            over, under = part.split("/")
            assert Fraction(int(over), int(under)) == Fraction(part) < 1
            assert int(under) == Fraction(part).denominator, "in lowest terms"


@pytest.mark.parametrize(
    ("value", "quantity", "unit", "step", "rounds", "expected"),
    [
        (63.5, "length", "in", 0, "nearest", "63-1/2 in"),
        (63.5, "length", "in", 1, "up", "64 in"),
        (0.0654, "length", "in", 0.001, "nearest", "0.065 in"),
        (1 / 32, "length", "in", 1 / 32, "nearest", "1/32 in"),
        (63.5, "length", "ft-in", 0, "nearest", "5' 3-1/2\""),
        (63.5, "length", "ft-in", 12, "up", "6' 0\""),
        (63.5, "length", "ft", 0, "nearest", "5.292 ft"),
        (63.5, "length", "ft", 0.5, "up", "5.5 ft"),
        (72, "length", "yd", 0, "nearest", "2 yd"),
        (63.5, "length", "mm", 1, "nearest", "1613 mm"),
        (63.5, "length", "cm", 0.1, "nearest", "161.3 cm"),
        (63.5, "length", "m", 0.01, "nearest", "1.61 m"),
        (2, "area", "sq in", 1, "nearest", "288 sq in"),
        (168, "area", "sq ft", 1, "up", "168 sq ft"),
        (168, "area", "sq yd", 1, "up", "19 sq yd"),
        (168, "area", "m2", 0.1, "nearest", "15.6 m2"),
        (1, "volume", "cu in", 1, "nearest", "1728 cu in"),
        (61.3, "volume", "cu ft", 0.1, "up", "61.3 cu ft"),
        (67.5, "volume", "cu yd", 0.25, "up", "2-1/2 cu yd"),
        (61.3, "volume", "cu yd", 0.25, "up", "2-1/2 cu yd"),
        (61.3, "volume", "cu yd", 0, "nearest", "2.27 cu yd"),
        (61.3, "volume", "cu yd", 0.1, "up", "2.3 cu yd"),
        (1, "volume", "gal", 0.5, "up", "7.5 gal"),
        (1, "volume", "L", 1, "up", "29 L"),
        (1, "volume", "bd ft", 0, "nearest", "12 bd ft"),
        (100, "volume", "m3", 0.1, "up", "2.9 m3"),
        (0.02, "slope", "%", 0, "nearest", "2 %"),
        (1 / 48, "slope", "in/ft", 0, "nearest", "1/4 in/ft"),
        (0.02, "slope", "in/ft", 0, "nearest", "0.24 in/ft"),
        (0.02, "slope", "in/ft", 1 / 16, "up", "1/4 in/ft"),
        (1 / 48, "slope", "1:n", 0, "nearest", "1:48"),
        (1 / 48.5, "slope", "1:n", 1, "up", "1:48"),
        (1 / 48.5, "slope", "1:n", 1, "down", "1:49"),
        (-1 / 48, "slope", "1:n", 0, "nearest", "-1:48"),
        (0, "slope", "1:n", 0, "nearest", "level"),
        (1 / 48, "slope", "deg", 0.01, "nearest", "1.19 deg"),
        (45, "angle", "deg", 0, "nearest", "45 deg"),
        (10, "mass", "lb", 0, "nearest", "10 lb"),
        (3000, "mass", "ton", 0.1, "up", "1.5 ton"),
        (10, "mass", "kg", 0.1, "up", "4.6 kg"),
        (2204.62, "mass", "t", 0.01, "nearest", "1 t"),
        (1.5, "time", "min", 1, "up", "90 min"),
        (24, "time", "h", 0, "nearest", "24 h"),
        (24, "time", "days", 0, "nearest", "1 day"),
        (72, "time", "days", 0, "nearest", "3 days"),
        (336, "time", "weeks", 0, "nearest", "2 weeks"),
        (69.8, "temperature", "C", 1, "nearest", "21 C"),
        (70, "temperature", "F", 1, "nearest", "70 F"),
        (10, "percent", "%", 0, "nearest", "10 %"),
        (3, "count", "bundles", 1, "up", "3 bundles"),
        (1, "count", "boxes", 1, "up", "1 box"),
        (2.2, "count", "bundles", 1, "up", "3 bundles"),
        (3, "count", "", 1, "up", "3"),
        (2.5, "number", "", 0, "nearest", "2.5"),
        (2.5, "number", "lb/sq ft", 0, "nearest", "2.5 lb/sq ft"),
        (True, "yes-no", "", 0, "nearest", "yes"),
        (False, "yes-no", "", 0, "nearest", "no"),
        ("two-piece", "choice", "", 0, "nearest", "two-piece"),
        ("as it is", "text", "", 0, "nearest", "as it is"),
    ],
)
def test_write(value: Any, quantity: str, unit: str, step: float, rounds: str, expected: str) -> None:
    assert write(value, quantity, unit, step, rounds) == expected


@pytest.mark.parametrize(
    ("value", "quantity", "unit", "expected"),
    [
        (2.01, "length", "in", "2.01 in"),
        (2 + 1 / 64, "length", "in", "2-1/64 in"),
        (12.1, "length", "ft-in", "12.1 in"),
        (63.5, "length", "ft-in", "5' 3-1/2\""),
        (0.0201, "slope", "%", "2.01 %"),
        (1 / 48, "slope", "in/ft", "1/4 in/ft"),
        (1 / 48, "slope", "1:n", "1:48"),
        (0, "slope", "1:n", "0 %"),
        (1234.5678, "area", "sq ft", "1234.568 sq ft"),
        (7, "count", "boxes", "7 boxes"),
        ("a", "choice", "", "a"),
    ],
)
def test_exactly(value: Any, quantity: str, unit: str, expected: str) -> None:
    assert exactly(value, quantity, unit) == expected
