"""Lights against published worked examples, the code's clearances, and a library of units."""

from __future__ import annotations

import pint
import pytest
import shapely

from calculators.power.can_heat_loss import can_heat_loss
from calculators.power.closet_light_place import closet_light_place, from_storage
from calculators.power.lighting_load import lighting_load
from calculators.power.lumen_layout import cavity_ratio, lights_for, lumen_layout

U: pint.UnitRegistry[float] = pint.UnitRegistry()


def test_worked_example_of_the_lumen_method() -> None:
    """Published worked example (IES lumen method): 40 x 60 ft, 50 fc, 4000 lm, CU 0.65, LLF 0.80: 57.7, so 58."""
    assert lights_for(50, 40 * 60, 4000, 0.65, 0.80) == pytest.approx(57.69, abs=0.005)
    answer = lumen_layout(
        length=720, width=480, ceiling=120, work_plane=30, light=50, lumens=4000, use=0.65, loss=0.80, most_ratio=1.5
    )
    assert answer["by_formula"] == pytest.approx(57.69, abs=0.005)
    assert answer["count"] >= 58


def test_worked_example_in_lux() -> None:
    """Published worked example: 500 lx, 50 m2, 3500 lm, 0.6, 0.8: 14.88, so 15 lights, which give 504 lx."""
    foot_candles = 500 * 0.3048**2
    square_feet = (50 * U.m**2).to("ft^2").magnitude
    assert lights_for(foot_candles, square_feet, 3500, 0.6, 0.8) == pytest.approx(14.88, abs=0.005)
    side = (50**0.5 * U.m).to("inch").magnitude
    answer = lumen_layout(
        length=side,
        width=side,
        ceiling=120,
        work_plane=30,
        light=foot_candles,
        lumens=3500,
        use=0.6,
        loss=0.8,
        most_ratio=3,
    )
    assert answer["gained"] / 0.3048**2 * 15 / answer["count"] == pytest.approx(504, abs=0.5)


def test_room_cavity_ratio() -> None:
    """IES zonal cavity method, from memory: 5 h (L + W) / (L W); 7.5 ft in 40 x 60 ft gives 1.5625."""
    assert cavity_ratio(7.5, 40, 60) == 1.5625


@pytest.mark.parametrize(
    ("kind", "clearance"),
    [
        ("surface-led", 12),
        ("surface-fluorescent", 6),
        ("recessed-led", 6),
        ("recessed-fluorescent", 6),
        ("identified", 0),
    ],
)
def test_nec_410_16_c_clearances(kind: str, clearance: float) -> None:
    """NEC 2017 410.16(C)(1) to (5)."""
    assert closet_light_place(kind=kind)["needed"] == clearance


@pytest.mark.parametrize(("kind", "hangs", "least"), [("recessed-led", 0, 18), ("surface-led", 0, 24)])
def test_nec_410_2_with_a_12_in_shelf(kind: str, hangs: float, least: float) -> None:
    """NEC 410.2 and 410.16(C) together: over a 12 in shelf, recessed 18 in and surface 24 in from the back wall."""
    assert closet_light_place(kind=kind, hangs=hangs, shelf_depth=12)["least_from_back"] == least


@pytest.mark.parametrize("away", [5, 12, 13.5, 20, 24, 30, 45])
@pytest.mark.parametrize("up", [40, 72, 75, 90, 96])
def test_distance_to_the_storage_space(away: float, up: float) -> None:
    """shapely: the nearest distance from a point to the section of the storage space of NEC 410.2."""
    space = shapely.union(shapely.box(0, 0, 24, 72), shapely.box(0, 72, 12, 120))
    assert from_storage(away, up, 72, 12) == pytest.approx(shapely.Point(away, up).distance(space), abs=1e-9)


@pytest.mark.parametrize(("breaker", "amps"), [("15", 12), ("20", 16)])
def test_continuous_load(breaker: str, amps: float) -> None:
    """NEC 210.20(A), from memory: a breaker is at least 125 % of a continuous load, so 12 A on 15 and 16 A on 20."""
    assert lighting_load(breaker=breaker)["capacity"] / 120 == pytest.approx(amps)
    assert amps * 1.25 == float(breaker)


def test_a_heat_sum_in_other_units() -> None:
    """Steady heat flow in SI by pint: 1 h sq ft F/Btu is 0.17611 m2 K/W, and 5000 F days are 2777.8 K days."""
    answer = can_heat_loss(count=1, kind="contact", diameter=12, r_ceiling=38, r_can=4, leak=0, degree_days=5000)
    area = 3.141592653589793 / 4 * (12 * U.inch) ** 2
    days = 5000 / 1.8 * U.kelvin * U.day
    for r, name in ((4, "recessed"), (38, "surface")):
        resistance = r * 0.1761101838 * U.m**2 * U.kelvin / U.watt
        heat = (area / resistance * days).to("Btu").magnitude
        assert answer[name] == pytest.approx(heat, rel=1e-4)


def test_heat_of_leaking_air() -> None:
    """Air of 0.075 lb/cu ft and 0.24 Btu/(lb F), ASHRAE Fundamentals, from memory: 1.08 Btu/h a cfm and degree."""
    answer = can_heat_loss(count=1, kind="contact", diameter=7, r_ceiling=38, r_can=38, leak=1, degree_days=1000)
    assert answer["by_air"] == pytest.approx(0.075 * 0.24 * 60 * 24 * 1000, rel=1e-9)
    assert answer["more"] == pytest.approx(answer["by_air"])
