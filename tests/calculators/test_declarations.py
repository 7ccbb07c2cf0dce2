"""Every calculator in the registry keeps the contract of its declaration."""

from __future__ import annotations

import inspect
import re
import sys
from collections.abc import Iterator, Sequence
from math import isfinite

import pytest

from calculators.declaration import Calculator, Input, Output
from calculators.limits import limits
from calculators.registry import CALCULATORS
from calculators.run import compute, read_inputs, shown
from calculators.units import UNITS
from calculators.writing import is_binary
from calculators.writing_units import exactly

NAME = re.compile(r"[a-z][a-z0-9_]*")
CALCULATOR_NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")

each_calculator = pytest.mark.parametrize("calculator", CALCULATORS.values(), ids=list(CALCULATORS))


def all_inputs(inputs: Sequence[Input]) -> Iterator[Input]:
    """Inputs and the columns of rows."""
    for item in inputs:
        yield item
        yield from all_inputs(item.columns)


def all_outputs(outputs: Sequence[Output]) -> Iterator[Output]:
    """Outputs and the columns of rows."""
    for output in outputs:
        yield output
        yield from all_outputs(output.columns)


def everything(calculator: Calculator) -> list[Input | Output]:
    """Inputs, outputs and the columns of both."""
    return [*all_inputs(calculator.inputs), *all_outputs(calculator.outputs)]


@each_calculator
def test_the_function_takes_the_inputs(calculator: Calculator) -> None:
    parameters = inspect.signature(calculator.function).parameters
    assert list(parameters) == [item.name for item in calculator.inputs]


@each_calculator
def test_it_says_what_it_is(calculator: Calculator) -> None:
    assert CALCULATOR_NAME.fullmatch(calculator.name)
    assert calculator.trade
    assert calculator.title
    assert calculator.summary
    assert calculator.formula
    assert calculator.sources
    assert calculator.outputs
    docstring = inspect.getdoc(calculator.function) or ""
    module = sys.modules[calculator.function.__module__].__doc__
    assert ">>>" in docstring, "the docstring has an example that is run"
    assert module


@each_calculator
def test_names_and_labels(calculator: Calculator) -> None:
    for item in everything(calculator):
        assert NAME.fullmatch(item.name), item.name
        assert item.label, item.name
    for names in ([item.name for item in calculator.inputs], [output.name for output in calculator.outputs]):
        assert len(names) == len(set(names))
        assert not {"cautions", "working"} & set(names)


@each_calculator
def test_units_are_known(calculator: Calculator) -> None:
    for item in everything(calculator):
        if item.quantity in UNITS:
            assert item.unit in UNITS[item.quantity], f"{item.name}: {item.unit}"
        elif item.quantity not in ("count", "number"):
            assert item.unit == "", f"{item.name}: {item.unit}"


@each_calculator
def test_limits_defaults_and_usual_ranges_agree(calculator: Calculator) -> None:
    for item in all_inputs(calculator.inputs):
        bounds = [bound for bound in (item.least, item.most) if bound is not None]
        assert bounds == sorted(bounds), item.name
        if item.quantity in UNITS or item.quantity in ("count", "number"):
            assert all(isfinite(bound) for bound in bounds)
            if item.default is not None:
                assert not limits([item], {item.name: item.default}), item.name
            if item.usual is not None:
                assert item.usual[0] <= item.usual[1], item.name
                assert not limits([item], {item.name: item.usual[0]}), item.name
                assert not limits([item], {item.name: item.usual[1]}), item.name
        else:
            assert not bounds, item.name
            assert item.usual is None, item.name


@each_calculator
def test_choices_and_columns_stand_where_they_belong(calculator: Calculator) -> None:
    for item in all_inputs(calculator.inputs):
        assert (item.quantity == "choice") == bool(item.choices), item.name
        assert (item.quantity == "rows") == bool(item.columns), item.name
        names = [choice.name for choice in item.choices]
        assert len(names) == len(set(names)), item.name
        assert all(choice.label for choice in item.choices), item.name
        if item.quantity == "choice" and item.default is not None:
            assert item.default in names, item.name
        if item.quantity == "yes-no" and item.default is not None:
            assert isinstance(item.default, bool), item.name
    for output in all_outputs(calculator.outputs):
        assert output.quantity != "plan", output.name
        assert (output.quantity == "rows") == bool(output.columns), output.name


@each_calculator
def test_rounding_suits_the_unit(calculator: Calculator) -> None:
    for output in all_outputs(calculator.outputs):
        assert output.step >= 0, output.name
        assert output.rounds in ("nearest", "up", "down", "tape"), output.name
        if output.unit == "ft-in":
            assert output.step == 0 or is_binary(output.step), output.name


@each_calculator
def test_the_example_computes(calculator: Calculator) -> None:
    assert calculator.example
    answer = compute(calculator, calculator.example)
    texts = shown(calculator, answer)
    assert list(texts) == [output.name for output in calculator.outputs]
    assert set(answer) == set(texts) | {"cautions", "working"}
    assert answer["working"], "the arithmetic is shown"
    assert all(text != "" for text in texts.values())


@each_calculator
def test_the_example_reads_the_same_when_it_is_written_again(calculator: Calculator) -> None:
    values, refused = read_inputs(calculator, calculator.example)
    assert not refused
    again = dict(calculator.example)
    for item in calculator.inputs:
        if item.name in values and item.quantity in UNITS:
            again[item.name] = exactly(values[item.name], item.quantity, item.unit)
    for name, value in read_inputs(calculator, again)[0].items():
        assert value == (pytest.approx(values[name], rel=2e-6) if isinstance(value, float) else values[name])
