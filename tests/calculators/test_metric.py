"""Metric units and precision in place of US ones."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.metric import METRIC, metric_step, metric_unit, unit_in, write_in
from calculators.reading import read
from calculators.units import UNITS, from_inside, to_inside

PAIRS = [(quantity, unit) for quantity, units in METRIC.items() for unit in units]
PINT = {
    "in": "inch", "ft-in": "inch", "ft": "foot", "yd": "yard", "sq in": "inch**2", "sq ft": "foot**2",
    "sq yd": "yard**2", "cu in": "inch**3", "cu ft": "foot**3", "cu yd": "yard**3", "gal": "gallon", "oz": "ounce",
    "lb": "pound", "ton": "short_ton", "mm": "millimeter", "m": "meter", "m2": "meter**2", "m3": "meter**3",
    "L": "liter", "kg": "kilogram", "t": "metric_ton",
}  # fmt: skip


def test_every_us_unit_has_a_metric_one_and_metric_ones_stay() -> None:
    metric = {str(METRIC[quantity][unit][0]) for quantity, unit in PAIRS}
    for quantity, units in UNITS.items():
        for unit in units:
            other = metric_unit(quantity, unit)
            assert other in units
            if quantity in ("length", "area", "volume", "mass", "temperature"):
                assert other in metric | {"cm", "C"}, unit
            assert metric_unit(quantity, other) == other


@pytest.mark.slow
@pytest.mark.parametrize(("quantity", "unit"), [pair for pair in PAIRS if pair[1] in PINT])
def test_the_sizes_are_those_of_pint(quantity: str, unit: str) -> None:
    """Pint's registry of units (pint 0.25, default_en.txt)."""
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    other = metric_unit(quantity, unit)
    inside = to_inside(1, quantity, unit)
    assert from_inside(inside, quantity, other) == pytest.approx(registry(PINT[unit]).to(PINT[other]).magnitude)


@pytest.mark.parametrize(
    ("value", "quantity", "unit", "step", "rounds", "us", "metric"),
    [
        (28.5, "length", "in", 0.0625, "nearest", "28-1/2 in", "724 mm"),
        (28.5, "length", "in", 0, "nearest", "28-1/2 in", "724 mm"),
        (0.065, "length", "in", 0.001, "nearest", "0.065 in", "1.65 mm"),
        (168.0, "length", "ft-in", 0.5, "nearest", "14' 0\"", "4267 mm"),
        (168.0, "length", "ft", 1, "up", "14 ft", "4.27 m"),
        (162.0, "area", "sq ft", 1, "up", "162 sq ft", "15.06 m2"),
        (61.2, "volume", "cu yd", 0.25, "up", "2-1/2 cu yd", "1.8 m3"),
        (1.0, "volume", "gal", 0.5, "up", "7.5 gal", "28.4 L"),
        (80.0, "mass", "lb", 1, "nearest", "80 lb", "36.3 kg"),
        (70.0, "temperature", "F", 1, "nearest", "70 F", "21 C"),
        (0.25 / 12, "slope", "in/ft", 0.0625, "nearest", "1/4 in/ft", "2.1 %"),
        (1 / 48, "slope", "1:n", 1, "nearest", "1:48", "1:48"),
        (3.0, "count", "bundles", 1, "up", "3 bundles", "3 bundles"),
        (90 / 60, "time", "h", 0.25, "up", "1.5 h", "1.5 h"),
        (True, "yes-no", "", 0, "nearest", "yes", "yes"),
    ],
)
def test_written_both_ways(
    value: float, quantity: str, unit: str, step: float, rounds: str, us: str, metric: str
) -> None:
    assert write_in(value, quantity, unit, step, rounds, False) == us
    assert write_in(value, quantity, unit, step, rounds, True) == metric


@given(st.sampled_from(PAIRS), st.sampled_from([1 / 64, 1 / 16, 0.25, 0.5, 1.0, 5.0, 0.1, 0.01, 0.001]))
def test_the_metric_step_is_a_power_of_ten_and_no_coarser(pair: tuple[str, str], step: float) -> None:
    quantity, unit = pair
    found = metric_step(quantity, unit, step)
    assert f"{found:e}".startswith("1.000000e")
    assert found <= METRIC[quantity][unit][1]
    zero = from_inside(to_inside(0, quantity, unit), quantity, metric_unit(quantity, unit))
    size = from_inside(to_inside(step, quantity, unit), quantity, metric_unit(quantity, unit)) - zero
    assert found <= max(size, step if quantity == "temperature" else 0, 1e-6) * (1 + 1e-9)


@given(st.sampled_from(PAIRS), st.floats(0.5, 500), st.sampled_from(["up", "down", "nearest"]))
def test_an_order_in_metric_is_never_short(pair: tuple[str, str], number: float, rounds: str) -> None:
    """What is rounded up is at least what was asked for, and the text reads back within a step."""
    quantity, unit = pair
    value = to_inside(number, quantity, unit)
    other = metric_unit(quantity, unit)
    written = from_inside(read(write_in(value, quantity, unit, 1.0, rounds, True), quantity, other), quantity, other)
    exact = from_inside(value, quantity, other)
    step = metric_step(quantity, unit, 1.0)
    assert written >= exact - step * 1e-6 or rounds != "up"
    assert written <= exact + step * 1e-6 or rounds != "down"
    assert abs(written - exact) <= step * (1 + 1e-6)


def test_a_bare_number_means_the_metric_unit() -> None:
    assert unit_in("length", "in", True) == "mm"
    assert unit_in("length", "in", False) == "in"
    assert unit_in("percent", "%", True) == "%"
