"""What a plumbing calculator starts at is declared once: its function's defaults are those of the declaration."""

from __future__ import annotations

import inspect

import pytest

from calculators.declaration import Calculator
from calculators.plumbing import cleanout_place, drain_fall, trap_arm, water_closet_place, wax_ring


@pytest.mark.parametrize(
    "calculator", [m.CALCULATOR for m in (cleanout_place, drain_fall, trap_arm, water_closet_place, wax_ring)]
)
def test_function_defaults_are_the_declared_ones(calculator: Calculator) -> None:
    parameters = inspect.signature(calculator.function).parameters
    assert {name: p.default for name, p in parameters.items()} == {i.name: i.default for i in calculator.inputs}


@pytest.mark.parametrize(
    "calculator", [m.CALCULATOR for m in (cleanout_place, drain_fall, trap_arm, water_closet_place, wax_ring)]
)
def test_every_declared_output_is_given(calculator: Calculator) -> None:
    declared = {output.name for output in calculator.outputs}
    assert set(calculator.function()) == declared | {"cautions", "working"}
