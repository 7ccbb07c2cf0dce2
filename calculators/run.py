"""Running a calculator: text to values, values to an answer, an answer to text.

``read_inputs`` reads what a person wrote, ``run`` fills defaults, keeps the limits and computes, ``shown`` writes the
answer with each output's rounding. ``compute`` is the first two together.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from math import isfinite
from typing import Any

from calculators.declaration import Answer, Calculator, Input, Output, Refused
from calculators.limits import limits as limits
from calculators.limits import unusual_values
from calculators.reading import Unreadable, read
from calculators.shapes import read_plan
from calculators.writing import write

_read = lru_cache(maxsize=10_000)(read)
"""A book writes the same figures again and again."""
NOT_A_NUMBER = ("choice", "yes-no", "text", "plan", "rows")


def read_inputs(calculator: Calculator, written: Mapping[str, object]) -> tuple[dict[str, Any], list[Refused]]:
    """The inputs as values of the inside, and what was refused: unknown, missing and unreadable ones.

    An input with a default that is not given, or is empty, is left out; ``run`` fills it. Rows are a list of
    mappings, or text whose rows are parted by `;` or lines and whose columns by `,` in their declared order.
    """
    refused = [_unknown(calculator, name) for name in written if calculator.input(name) is None]
    values: dict[str, Any] = {}
    for item in calculator.inputs:
        given = written.get(item.name)
        if _is_empty(given):
            if item.default is None:
                refused.append(_missing(item, item.name, item.label))
            continue
        try:
            values[item.name] = _value(item, given, item.name, item.label)
        except Refused as refusal:
            refused.append(refusal)
    return values, refused


def read_input(item: Input, given: object) -> Any:
    """One input's value of the inside; raises Refused where it cannot be read."""
    return _value(item, given, item.name, item.label)


def _is_empty(given: object) -> bool:
    return given is None or (isinstance(given, str) and given.strip() == "")


def _unknown(calculator: Calculator, name: str) -> Refused:
    names = [item.name for item in calculator.inputs]
    hint = _near(name, names) or f"; its inputs are {', '.join(names)}"
    return Refused(name, f"'{name}' is not an input of '{calculator.name}'{hint}")


def _missing(item: Input, name: str, label: str) -> Refused:
    return Refused(name, f"{label} is not given, and has no default")


def _near(word: str, words: Iterable[str]) -> str:
    near = difflib.get_close_matches(word, list(words), n=1)
    return f"; did you mean '{near[0]}'?" if near else ""


def _value(item: Input, given: object, name: str, label: str) -> Any:
    """One input's value; ``name`` and ``label`` are those to complain under, as columns complain under their rows."""
    if item.quantity == "rows":
        return _rows(item, given, name, label)
    if item.quantity == "plan" and isinstance(given, list):
        return given
    if item.quantity == "yes-no":
        return _yes_no(given, name, label)
    text = _text(given, name, label)
    if item.quantity == "text":
        return text
    if item.quantity == "choice":
        return _choice(item, text, name, label)
    try:
        return read_plan(text) if item.quantity == "plan" else _read(text, item.quantity, item.unit)
    except Unreadable as unreadable:
        raise Refused(name, f"{label}: {unreadable}") from unreadable


def _text(given: object, name: str, label: str) -> str:
    if isinstance(given, str):
        return given.strip()
    if isinstance(given, int | float) and not isinstance(given, bool) and isfinite(given):
        return f"{given:.12f}".rstrip("0").rstrip(".")
    raise Refused(name, f"{label}: a single figure or word is wanted")


def _yes_no(given: object, name: str, label: str) -> bool:
    word = str(given).strip().lower()
    if word in ("yes", "y", "true"):
        return True
    if word in ("no", "n", "false"):
        return False
    raise Refused(name, f"{label}: '{given}' is neither yes nor no")


def _choice(item: Input, text: str, name: str, label: str) -> str:
    for choice in item.choices:
        if text.lower() in (choice.name.lower(), choice.label.lower()):
            return choice.name
    names = [choice.name for choice in item.choices]
    raise Refused(name, f"{label}: '{text}' is not one of {', '.join(names)}{_near(text, names)}")


def _rows(item: Input, given: object, name: str, label: str) -> list[dict[str, Any]]:
    rows = _split_rows(item, given, name, label) if isinstance(given, str) else given
    if not isinstance(rows, Sequence):
        raise Refused(name, f"{label}: a list of rows is wanted, each with {_columns(item)}")
    return [_row(item, row, name, f"{label}, row {number}") for number, row in enumerate(rows, start=1)]


def _columns(item: Input) -> str:
    return ", ".join(column.name for column in item.columns)


def _split_rows(item: Input, text: str, name: str, label: str) -> list[dict[str, str]]:
    lines = [line for line in text.replace("\n", ";").split(";") if line.strip()]
    rows = []
    for number, line in enumerate(lines, start=1):
        cells = line.split(",")
        if len(cells) > len(item.columns):
            raise Refused(name, f"{label}, row {number}: '{line.strip()}' has more columns than {_columns(item)}")
        rows.append({column.name: cell for column, cell in zip(item.columns, cells, strict=False)})
    return rows


def _row(item: Input, row: object, name: str, label: str) -> dict[str, Any]:
    if not isinstance(row, Mapping):
        raise Refused(name, f"{label}: a mapping is wanted with {_columns(item)}")
    names = [column.name for column in item.columns]
    for key in row:
        if key not in names:
            raise Refused(name, f"{label}: '{key}' is not one of {', '.join(names)}{_near(str(key), names)}")
    values = {}
    for column in item.columns:
        given = row.get(column.name)
        where = f"{label}, {column.label}"
        if not _is_empty(given):
            values[column.name] = _value(column, given, name, where)
        elif column.default is not None:
            values[column.name] = column.default
        else:
            raise _missing(column, name, where)
    return values


def run(calculator: Calculator, values: Mapping[str, Any]) -> Answer:
    """The answer for values of the inside: defaults filled, limits kept, cautions for unusual values first.

    Raises Refused for the first value that is missing, unknown or outside its limits, and RuntimeError where the
    function does not keep its declaration.
    """
    known = {item.name for item in calculator.inputs}
    for name in values:
        if name not in known:
            raise _unknown(calculator, name)
    filled = {item.name: values.get(item.name, item.default) for item in calculator.inputs}
    for item in calculator.inputs:
        _sound(item, filled[item.name])
    for name, message in limits(calculator.inputs, filled):
        raise Refused(name, message)
    answer = dict(calculator.function(**filled))
    _keeps_declaration(calculator, answer)
    answer["cautions"] = [*unusual_values(calculator.inputs, filled), *answer["cautions"]]
    return answer


def _sound(item: Input, value: Any) -> None:
    if value is None:
        raise _missing(item, item.name, item.label)
    if item.quantity == "choice" and value not in [choice.name for choice in item.choices]:
        raise Refused(item.name, f"{item.label}: '{value}' is not one of the choices")
    if item.quantity not in NOT_A_NUMBER and not isfinite(value):
        raise Refused(item.name, f"{item.label}: a finite number is wanted")


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
    return _shown([output for output in calculator.outputs if len(only) == 0 or output.name in only], answer)


def _shown(outputs: Sequence[Output], answer: Mapping[str, Any]) -> dict[str, Any]:
    texts: dict[str, Any] = {}
    for output in outputs:
        value = answer[output.name]
        if output.quantity == "rows":
            texts[output.name] = [_shown(output.columns, row) for row in value]
        else:
            texts[output.name] = write(value, output.quantity, output.unit, output.step, output.rounds)
    return texts
