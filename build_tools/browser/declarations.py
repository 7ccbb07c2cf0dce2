"""A calculator's declaration as the page's script needs it: rows of values, in the order of the fields below.

``script/core.js`` has the same order and puts in what a row leaves out. A page loads each declaration that its forms
use, so names of fields are no part of it, nor what the page never shows.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from calculators.declaration import Calculator, Input, Output

Standard = dict[str, Any]
"""A crew standard that an input starts at: ``title``, ``url`` from the top, ``written``, ``value``."""
STANDARD = ("title", "url", "written", "value")
INPUT = ("name", "label", "quantity", "unit", "least", "most", "usual", "default", "standard", "help", "choices",
         "ways", "columns", "rule")  # fmt: skip
OUTPUT = ("name", "label", "quantity", "unit", "step", "rounds", "ways", "columns")
LEFT_OUT: dict[str, Any] = {
    "unit": "",
    "help": "",
    "step": 0,
    "rounds": "nearest",
    "ways": (),
    "choices": [],
    "columns": [],
}
"""What the script has where a row has ended; None for any other."""
Row = list[Any]


def declaration(calculator: Calculator, standards: Mapping[str, Standard]) -> dict[str, Any]:
    """A calculator for the page, with the crew standard of each input that has one."""
    inputs = [_input(each, standards.get(each.name)) for each in calculator.inputs]
    return {"name": calculator.name, "inputs": inputs, "outputs": [_output(each) for each in calculator.outputs]}


def _input(item: Input, standard: Standard | None) -> Row:
    given = {name: getattr(item, name) for name in INPUT if name != "standard"}
    given["choices"] = [[choice.name, choice.label] for choice in item.choices]
    given["columns"] = [_input(column, None) for column in item.columns]
    given["rule"] = asdict(item.rule) if item.rule else None
    given["standard"] = None
    if standard:
        # It stands in for the default.
        given |= {"standard": [standard[name] for name in STANDARD], "default": None}
    return _row(given, INPUT)


def _output(item: Output) -> Row:
    given = {name: getattr(item, name) for name in OUTPUT}
    given["columns"] = [_output(column) for column in item.columns]
    return _row(given, OUTPUT)


def _row(given: Mapping[str, Any], names: tuple[str, ...]) -> Row:
    """The values in their order, up to the last that says more than the script puts in."""
    said = [at + 1 for at, name in enumerate(names) if given[name] != LEFT_OUT.get(name)]
    return [given[name] for name in names][: max(said)]
