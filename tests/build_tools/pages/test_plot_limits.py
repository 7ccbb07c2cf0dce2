"""Limits on a plot: drawn across at their standards, named, and in place of the crew's own point."""

from __future__ import annotations

from dataclasses import replace

import pytest

from build_tools.pages.plot_data import PlotData, plot_data
from build_tools.pages.plots import plot_svg
from calculators.declaration import Calculator
from calculators.registry import CALCULATORS
from calculators.run import run
from tests.called import called


def data_of(calculator: Calculator, **changes: object) -> PlotData:
    """The first plot of a calculator, with these changes to its declaration."""
    values = {item.name: item.default for item in calculator.inputs}
    plot = replace(calculator.plots[0], **changes)  # type: ignore[arg-type]
    return plot_data(calculator, plot, called(calculator, values, run(calculator, values)))


def test_the_limit_of_drying_is_drawn_and_said() -> None:
    data = data_of(CALCULATORS["pour-weather"])
    assert data.limits == [(0.2, "Act above 0.2")]
    assert data.ours is None
    assert data.alt.endswith("Act above 0.2.")
    assert min(data.y.ticks) <= 0.2 <= max(data.y.ticks)


def test_each_strength_to_cross_at_is_a_limit() -> None:
    data = data_of(CALCULATORS["concrete-strength"])
    assert data.limits == [(800, "People cross at 800"), (1400, "Cars cross at 1400"), (2800, "Trucks cross at 2800")]
    assert [curve.name for curve in data.curves] == ["40 F", "55 F", "73 F"]


def test_the_names_stand_in_the_plot() -> None:
    svg = plot_svg(data_of(CALCULATORS["concrete-strength"]).as_text(), "strength", None)
    for words in ("People cross at 800", "Cars cross at 1400", "Trucks cross at 2800"):
        assert f">{words}<" in svg


def test_a_plot_without_limits_keeps_the_crews_own_point() -> None:
    data = data_of(CALCULATORS["pour-weather"], limits=())
    assert data.limits == []
    assert data.ours is not None


@pytest.mark.parametrize("name", ["humidity", "nothing"])
def test_a_limit_in_another_unit_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match=f"'{name}' of 'pour-weather' is no limit of 'evaporation'"):
        data_of(CALCULATORS["pour-weather"], limits=(name,))
