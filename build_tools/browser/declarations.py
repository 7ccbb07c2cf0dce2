"""A calculator's declaration as the page's script needs it: what is left at its default is left out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, fields
from typing import Any

from calculators.declaration import Calculator, Input, Output

Standard = dict[str, Any]
"""A crew standard that an input starts at: ``title``, ``url`` from the top, ``written``, ``value``."""


def declaration(calculator: Calculator, standards: Mapping[str, Standard]) -> dict[str, Any]:
    """A calculator for the page, with the crew standard of each input that has one."""
    inputs = [_declared(each) for each in calculator.inputs]
    for each in inputs:
        if each["name"] in standards:
            each["standard"] = standards[each["name"]]
    return {
        "name": calculator.name,
        "title": calculator.title,
        "inputs": inputs,
        "outputs": [_declared(each) for each in calculator.outputs],
    }


def _declared(item: Input | Output) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for each in fields(item):
        value = getattr(item, each.name)
        # An empty text that is a default says that the input may be left out.
        is_empty = value is None if each.name == "default" else value in (None, "", ())
        if is_empty or each.name == "instead" or (each.name in ("step", "rounds") and value == each.default):
            continue
        if each.name == "columns":
            value = [_declared(column) for column in value]
        elif each.name == "choices":
            value = [{"name": choice.name, "label": choice.label} for choice in value]
        elif each.name == "rule":
            value = asdict(value)
        found[each.name] = value
    return found
