"""Closets against published heights and reach, and sag against the differential equation of a beam."""

from __future__ import annotations

import pytest
from scipy.integrate import solve_bvp

from calculators.doors.beams import flat_section, uniform_sag
from calculators.doors.closet import closet
from calculators.doors.closet_places import out_of_reach


def test_beam_table_of_even_loads() -> None:
    """Any table of beams; Wood Handbook Eq. 9-2 prints the factor 5/384 of a simple span."""
    assert uniform_sag(2.5, 40, 1.2e6, 0.4) == pytest.approx(5 * 2.5 * 40**4 / (384 * 1.2e6 * 0.4), rel=1e-12)


def test_the_differential_equation_of_a_beam() -> None:
    """E I y'''' = w, solved by scipy's boundary value solver: a reference that knows no table."""
    load, span, stiffness, section = 10 / 12, 36.0, 1.0e6, 0.3955
    known = load / (stiffness * section)

    def slopes(x, y):  # type: ignore[no-untyped-def]
        return [y[1], y[2], y[3], known + 0 * x]

    def at_the_ends(a, b):  # type: ignore[no-untyped-def]
        return [a[0], a[2], b[0], b[2]]

    xs = [span * n / 40 for n in range(41)]
    found = solve_bvp(slopes, at_the_ends, xs, [[0.0] * 41] * 4, tol=1e-8)
    assert found.success
    assert uniform_sag(load, span, stiffness, section) == pytest.approx(found.sol(span / 2)[0], rel=1e-5)


def test_a_worked_shelf() -> None:
    """Worked by hand: 36 in span, 3/4 x 11-1/4 in, E = 1.0e6 psi, 10 lb a foot: 0.0461 in, span / 781."""
    sag = closet(width=36, shelf_load=10)["shelf_sag"]
    assert flat_section(11.25, 0.75) == pytest.approx(0.3955, abs=1e-4)
    assert sag == pytest.approx(0.0461, abs=1e-4)
    assert 36 / sag == pytest.approx(781, abs=1)


@pytest.mark.parametrize(("height", "reached"), [(14.9, False), (15, True), (48, True), (48.1, False)])
def test_ada_308_reach(height: float, reached: bool) -> None:
    """2010 ADA Standards 308.2.1 and 308.3.1: 15 in least, 48 in most, forward or to the side, nothing in the way."""
    assert (out_of_reach([height]) == "all within reach") == reached


@pytest.mark.parametrize(
    ("name", "low", "high"), [("single_rod", 66, 66), ("low_rod", 40, 42), ("high_rod", 80, 84), ("depth", 24, 24)]
)
def test_graphic_standards_heights(name: str, low: float, high: float) -> None:
    """Architectural Graphic Standards, from memory: single about 66 in, double 40 to 42 and 80 to 84 in, 24 in deep."""
    declared = closet.input(name)
    assert declared is not None
    assert low <= declared.default <= high


def test_woodwork_standards_limit() -> None:
    """Architectural Woodwork Standards, from memory: a shelf sags at most span / 144."""
    assert closet(width=36)["sag_limit"] == 36 / 144
