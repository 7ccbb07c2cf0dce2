"""The beam formulas: how sag grows with span, thickness and load."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.doors.beams import flat_section, longest_span, round_section, uniform_sag

spans = st.floats(6, 96)
loads = st.floats(0.1, 20)
stiffnesses = st.floats(50_000, 30_000_000)
thicknesses = st.floats(0.25, 3)
near = pytest.approx


@given(load=loads, span=spans, stiffness=stiffnesses, thickness=thicknesses)
def test_scaling_laws(load: float, span: float, stiffness: float, thickness: float) -> None:
    section = flat_section(11.25, thickness)
    sag = uniform_sag(load, span, stiffness, section)
    assert uniform_sag(load, 2 * span, stiffness, section) == near(16 * sag, rel=1e-12)
    assert uniform_sag(load, span, stiffness, flat_section(11.25, 2 * thickness)) == near(sag / 8, rel=1e-12)
    assert uniform_sag(2 * load, span, stiffness, section) == near(2 * sag, rel=1e-12)
    assert uniform_sag(load, span, 2 * stiffness, section) == near(sag / 2, rel=1e-12)


@given(load=loads, part=st.floats(50, 1000), stiffness=stiffnesses, thickness=thicknesses)
def test_the_longest_span_sags_to_the_limit(load: float, part: float, stiffness: float, thickness: float) -> None:
    section = flat_section(11.25, thickness)
    span = longest_span(load, part, stiffness, section)
    assert uniform_sag(load, span, stiffness, section) == near(span / part, rel=1e-9)


@given(diameter=st.floats(0.5, 3), part=st.floats(0.01, 0.49))
def test_a_tube_is_a_rod_less_its_hole(diameter: float, part: float) -> None:
    wall = diameter * part
    hole = round_section(diameter - 2 * wall, 0)
    assert round_section(diameter, wall) == near(round_section(diameter, 0) - hole, rel=1e-9)
