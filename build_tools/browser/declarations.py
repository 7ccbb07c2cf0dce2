"""A calculator's declaration as the page's script needs it: rows of values, in the order of the fields below.

``script/core.js`` has the same order and puts in what a row leaves out. A page loads each declaration that its forms
use, so names of fields are no part of it, nor the words that stand on the page: labels, helps, choices and the titles
of crew standards (``field_parts`` in ``_macros.html``).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from calculators.declaration import Calculator, Input, Output

INPUT = ("name", "quantity", "unit", "default", "least", "most", "usual", "ways", "columns", "rule")
OUTPUT = ("name", "quantity", "unit", "step", "rounds", "ways", "columns", "label")
"""The label of an answer in rows, or of its column, goes along: a page may have none of them yet."""
LEFT_OUT: dict[str, Any] = {
    "unit": "",
    "step": 0,
    "rounds": "nearest",
    "ways": (),
    "columns": [],
    "label": "",
}
"""What the script has where a row has ended; None for any other."""
Row = list[Any]


def declaration(calculator: Calculator, standards: Mapping[str, Any]) -> dict[str, Any]:
    """A calculator for the page; ``standards`` are the values of the crew's, which stand in for defaults."""
    inputs = [_input(each, standards.get(each.name, each.default)) for each in calculator.inputs]
    return {"name": calculator.name, "inputs": inputs, "outputs": [_output(each) for each in calculator.outputs]}


def _input(item: Input, default: Any) -> Row:
    given = {name: getattr(item, name) for name in INPUT}
    given["columns"] = [_input(column, column.default) for column in item.columns]
    given["rule"] = asdict(item.rule) if item.rule else None
    given["default"] = default
    return _row(given, INPUT)


def _output(item: Output, label: str = "") -> Row:
    given = {name: getattr(item, name) for name in OUTPUT}
    given["columns"] = [_output(column, column.label) for column in item.columns]
    given["label"] = item.label if item.columns else label
    return _row(given, OUTPUT)


def _row(given: Mapping[str, Any], names: tuple[str, ...]) -> Row:
    """The values in their order, up to the last that says more than the script puts in."""
    said = [at + 1 for at, name in enumerate(names) if given[name] != LEFT_OUT.get(name)]
    return [given[name] for name in names][: max(said)]
