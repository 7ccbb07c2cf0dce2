"""Running a calculator: text to values, values to an answer, an answer to text.

``read_inputs`` reads what a person wrote, ``run`` fills defaults, keeps the limits and computes, ``shown`` writes the
answer with each output's rounding. ``compute`` is the first two together.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import isfinite
from typing import Any

from calculators.answering import (
    emptied,
    filled,
    keep_limits,
    missing,
    names_of,
    read_one,
    read_rows,
    shown_row,
    shown_value,
    split_rows,
    with_cautions,
)
from calculators.declaration import Answer, Calculator, Input, Output, Refused
from calculators.limits import limits as limits
from calculators.nearness import did_you_mean
from calculators.rooms import plan_text


def read_inputs(calculator: Calculator, written: Mapping[str, object]) -> tuple[dict[str, Any], list[Refused]]:
    """The inputs as values of the inside, and what was refused: unknown, missing and unreadable ones.

    An input with a default that is not given, or is None, is left out; ``run`` fills it. One that is given empty is
    refused, but for a text and for a list that may be. Rows are a list of mappings, or text whose rows are parted by
    `;` or lines and whose columns by `,` in their declared order.
    """
    refused = [_unknown(calculator, name) for name in written if calculator.input(name) is None]
    values: dict[str, Any] = {}
    for item in calculator.inputs:
        given = written.get(item.name)
        if given is None:
            if item.default is None:
                refused.append(Refused(item.name, missing(item.label)))
            continue
        try:
            values[item.name] = _value(item, given, item.name, item.label)
        except Refused as refusal:
            refused.append(refusal)
    return values, refused


def read_input(item: Input, given: object) -> Any:
    """One input's value of the inside; raises Refused where it cannot be read."""
    return _value(item, given, item.name, item.label)


def _unknown(calculator: Calculator, name: str) -> Refused:
    names = names_of(calculator.inputs)
    hint = did_you_mean(name, names) or f"; its inputs are {', '.join(names)}"
    return Refused(name, f"'{name}' is not an input of '{calculator.name}'{hint}")


def _value(item: Input, given: object, name: str, label: str) -> Any:
    """One input's value; ``name`` and ``label`` are those to complain under, as columns complain under their rows."""
    if item.quantity == "rows":
        return _rows(item, given, name, label)
    if item.quantity == "plan" and isinstance(given, list):
        return _plan(item, given, name, label)
    if isinstance(given, bool) and item.quantity == "yes-no":
        return given
    return read_one(item, _text(given, name, label), name, label, False)


def _plan(item: Input, given: list[Any], name: str, label: str) -> Any:
    """Rooms that are listed: as shapes with their corners, or with their lengths and widths as people write them."""
    if given and all(isinstance(shape, Mapping) and isinstance(shape.get("points"), list) for shape in given):
        return given
    try:
        text = plan_text(given)
    except ValueError as wrong:
        raise Refused(name, f"{label}: {wrong}") from None
    return read_one(item, text, name, label, False) if given else emptied(item, name, label)


def _text(given: object, name: str, label: str) -> str:
    if isinstance(given, str):
        return given
    if isinstance(given, int | float) and not isinstance(given, bool) and isfinite(given):
        return f"{given:.12f}".rstrip("0").rstrip(".")
    raise Refused(name, f"{label}: a single figure or word is wanted")


def _rows(item: Input, given: object, name: str, label: str) -> list[dict[str, Any]]:
    rows = split_rows(item, given, name, label) if isinstance(given, str) else given
    columns = ", ".join(names_of(item.columns))
    if not isinstance(rows, Sequence):
        raise Refused(name, f"{label}: a list of rows is wanted, each with {columns}")
    texts = []
    for number, row in enumerate(rows, start=1):
        where = f"{label}, row {number}"
        if not isinstance(row, Mapping):
            raise Refused(name, f"{where}: fields are wanted: {columns}")
        texts.append({str(key): _cell(cell, name, where) for key, cell in row.items()})
    return read_rows(item, texts, name, label, False)


def _cell(given: object, name: str, label: str) -> str:
    if given is None or isinstance(given, bool):
        return "" if given is None else "yes" if given else "no"
    return _text(given, name, label)


def run(calculator: Calculator, values: Mapping[str, Any]) -> Answer:
    """The answer for values of the inside: defaults filled, limits kept, cautions for unusual values first.

    Raises Refused for the first value that is missing, unknown or outside its limits, and RuntimeError where the
    function does not keep its declaration.
    """
    known = {item.name for item in calculator.inputs}
    for name in values:
        if name not in known:
            raise _unknown(calculator, name)
    all_values = filled(calculator.inputs, values)
    keep_limits(calculator.inputs, all_values, False)
    answer = dict(calculator.function(**all_values))
    _keeps_declaration(calculator, answer)
    return with_cautions(calculator.inputs, all_values, answer, False)


def _keeps_declaration(calculator: Calculator, answer: Answer) -> None:
    for name in ("cautions", "working"):
        lines = answer.get(name)
        if not isinstance(lines, list) or not all(isinstance(line, str) for line in lines):
            raise RuntimeError(f"calculator '{calculator.name}': '{name}' is not a list of sentences")
    _has_outputs(calculator.name, calculator.outputs, answer)


def _has_outputs(where: str, outputs: Sequence[Output], answer: Mapping[str, Any]) -> None:
    for output in outputs:
        value = answer.get(output.name)
        if output.quantity == "rows":
            if not isinstance(value, list):
                raise RuntimeError(f"calculator '{where}': output '{output.name}' is not a list of rows: {value!r}")
            for row in value:
                _has_outputs(f"{where}.{output.name}", output.columns, row)
        elif output.quantity in ("choice", "text"):
            if not isinstance(value, str):
                raise RuntimeError(f"calculator '{where}': output '{output.name}' is no text: {value!r}")
        elif output.quantity == "yes-no":
            if not isinstance(value, bool):
                raise RuntimeError(f"calculator '{where}': output '{output.name}' is neither yes nor no: {value!r}")
        elif isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
            raise RuntimeError(f"calculator '{where}': output '{output.name}' is not a finite number: {value!r}")


def compute(calculator: Calculator, written: Mapping[str, object]) -> Answer:
    """The answer for inputs as people write them; raises the first Refused."""
    values, refused = read_inputs(calculator, written)
    if refused:
        raise refused[0]
    return run(calculator, values)


def shown(calculator: Calculator, answer: Mapping[str, Any], only: Sequence[str] = ()) -> dict[str, Any]:
    """Each output, or ``only`` those, as text in its written unit and rounding; rows are a list of such dicts."""
    texts: dict[str, Any] = {}
    for output in calculator.outputs:
        value = answer[output.name]
        if len(only) > 0 and output.name not in only:
            continue
        if output.quantity == "rows":
            texts[output.name] = [shown_row(output.columns, row, False) for row in value]
        else:
            texts[output.name] = shown_value(output, value, False)
    return texts
