"""Strength gain and maturity against the published curve and definitions."""

from __future__ import annotations

import pytest
from scipy.integrate import quad

from calculators.concrete.concrete_strength import concrete_strength
from calculators.concrete.maturity import counted_hours


@pytest.mark.parametrize(
    ("days", "share"),
    [
        (1, 0.206),
        (3, 0.458),
        (7, 0.7035),
        (14, 0.881),
        (21, 0.961),
        (28, 1.007),
        (56, 1.085),
        (90, 1.118),
        (365, 1.161),
    ],
)
def test_aci_209_equation_2_1(days: float, share: float) -> None:
    """ACI 209R-92 Eq. 2-1, Type I, moist cured: t / (4.0 + 0.85 t). It gives 1.007 at 28 days."""
    answer = concrete_strength(age=days * 24, temperature=73)
    assert answer["percent"] == pytest.approx(share * 100, abs=0.1)
    assert answer["strength_then"] == pytest.approx(share * 4000, abs=4)


@pytest.mark.parametrize(("days", "share"), [(3, 0.593), (7, 0.801), (28, 0.998)])
def test_aci_209_table_2_2_1_type_iii(days: float, share: float) -> None:
    """ACI 209R-92 Table 2.2.1, Type III, moist cured: a = 2.3, b = 0.92 (from memory)."""
    assert concrete_strength(age=days * 24, cement="early")["percent"] == pytest.approx(share * 100, abs=0.1)


@pytest.mark.parametrize(("datum_c", "maturity"), [(0, 480), (-10, 720)])
def test_astm_c1074_nurse_saul(datum_c: float, maturity: float) -> None:
    """ASTM C1074 Eq. 1, M = sum of (T - T0) dt: 24 h at 20 C is 480 C-h over a datum of 0 C, 720 over -10 C."""
    answer = concrete_strength(age=24, temperature=68, datum=datum_c * 9 / 5 + 32)
    assert answer["maturity"] == pytest.approx(maturity)


def test_equivalent_age_is_the_integral_of_the_standard() -> None:
    """ASTM C1074: the sum over the stretches is the integral of (T - T0) over time, here by scipy."""
    weather = [{"time": 30.0, "temperature": 50.0}, {"time": 50.0, "temperature": 65.0}]

    def degrees(hour: float) -> float:
        return 18.0 if hour < 30 else 33.0 if hour < 80 else 48.0

    integral = quad(degrees, 0, 120, points=[30, 80])[0]
    assert counted_hours(120, weather, 80.0, 32.0) == pytest.approx(integral / (73 - 32))


def test_the_datum_is_the_one_of_the_standard() -> None:
    """ASTM C1074: 0 C for ordinary cement without admixtures, between 0 and 40 C."""
    declared = concrete_strength.input("datum")
    assert declared is not None
    assert declared.default == 32.0


def test_a_day_at_the_datum_counts_nothing() -> None:
    """ASTM C1074: below the datum temperature no strength is gained."""
    assert concrete_strength(temperature=32)["strength_then"] == 0
    assert concrete_strength(temperature=10)["strength_then"] == 0


@pytest.mark.parametrize(("days", "share"), [(2, 35), (7, 70)])
def test_the_shares_that_the_crew_waits_rest_on(days: float, share: float) -> None:
    """ACI 209R-92 Eq. 2-1: about a third at two days, about 70 % at seven."""
    assert concrete_strength(age=days * 24)["percent"] == pytest.approx(share, abs=0.5)


def test_half_the_warmth_doubles_the_wait() -> None:
    """ASTM C1074: 52.5 F lies half way from the datum of 32 F to 73 F, so four days there are two at 73 F."""
    assert concrete_strength(temperature=52.5)["car"] == "4 days"
    assert concrete_strength(temperature=73)["car"] == "2 days"
