"""What must be the same in Python and on the page: reading inputs, defaults, limits, messages, writing an answer.

Plain subset: ``run`` uses it, and it is compiled to the script of the pages. With ``metric`` a bare number means the
metric unit that stands in for the declared one, and values are written in it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from calculators.attempts import read_or_why
from calculators.declaration import Answer, Input, Output, refuse
from calculators.limits import limits, unusual_values
from calculators.metric import unit_in, write_in
from calculators.nearness import did_you_mean
from calculators.ways import way_at_end, which_way, with_way

NOT_A_NUMBER = ["choice", "yes-no", "text", "plan", "rows"]


def missing(label: str) -> str:
    """The message for an input that must be given."""
    return label + " is not given, and has no default"


def names_of(items: Sequence[Input]) -> list[str]:
    """The names of inputs or columns."""
    return [item.name for item in items]


def read_one(item: Input, given: str, name: str, label: str, metric: bool) -> Any:
    """The value of a written single input, all but rows; ``name`` and ``label`` are those to complain under.

    >>> read_one(Input("depth", "Depth", "length", "in"), " 1613 mm ", "depth", "Depth", False)
    63.503937007874015
    >>> read_one(Input("step", "Step", "length", "in", ways=("up", "down")), "1/2 in down", "step", "Step", False)
    -0.5
    """
    text = given.strip()
    if item.quantity == "text":
        return text
    if text == "":
        return emptied(item, name, label)
    if item.quantity == "yes-no":
        return read_yes_no(given, name, label)
    if item.quantity == "choice":
        return read_choice(item, text, name, label)
    way = way_at_end(item.ways, text)
    size = text[0 : len(text) - len(way)]
    value, why = read_or_why(size, item.quantity, unit_in(item.quantity, item.unit, metric))
    if why != "":
        refuse(name, label + ": " + why)
    if len(item.ways) > 0 and float(value) != 0:
        if way == "" or value < 0:
            refuse(name, label + ": " + which_way(item.ways, size.strip()))
        if way == item.ways[1]:
            return -value
    return value


def emptied(item: Input, name: str, label: str) -> Any:
    """What an emptied field means: no shapes where none are wanted, else that something is still to be put in.

    Nothing steps in for it: a default that nobody sees would be taken for what was measured.
    """
    if item.quantity == "plan" and item.default is not None and len(item.default) == 0:
        return []
    what = "put in a figure"
    if item.quantity == "choice" or item.quantity == "yes-no":
        what = "choose one"
    if item.quantity == "plan":
        what = "put in a shape, like 14' x 12'"
    refuse(name, label + " is empty: " + what)
    return None


def read_yes_no(given: str, name: str, label: str) -> bool:
    """Yes or no."""
    word = given.strip().lower()
    if word in ["yes", "y", "true"]:
        return True
    if word not in ["no", "n", "false"]:
        refuse(name, label + ": '" + given + "' is neither yes nor no")
    return False


def read_choice(item: Input, text: str, name: str, label: str) -> str:
    """The name of a choice, written as its name or its label."""
    names = []
    for choice in item.choices:
        if text.lower() == choice.name.lower() or text.lower() == choice.label.lower():
            return choice.name
        names.append(choice.name)
    refuse(name, label + ": '" + text + "' is not one of " + ", ".join(names) + did_you_mean(text, names))
    return ""


def split_rows(item: Input, text: str, name: str, label: str) -> list[dict[str, str]]:
    """The cells of rows written as text: rows parted by `;` or lines, columns by `,` in their declared order."""
    rows: list[dict[str, str]] = []
    for line in text.replace("\n", ";").split(";"):
        if line.strip() == "":
            continue
        cells = line.split(",")
        if len(cells) > len(item.columns):
            where = label + ", row " + str(len(rows) + 1)
            columns = ", ".join(names_of(item.columns))
            refuse(name, where + ": '" + line.strip() + "' has more columns than " + columns)
        row: dict[str, str] = {}
        for at in range(len(cells)):
            row[item.columns[at].name] = cells[at]
        rows.append(row)
    return rows


def read_rows(
    item: Input, rows: Sequence[Mapping[str, str]], name: str, label: str, metric: bool
) -> list[dict[str, Any]]:
    """The values of rows whose cells are written; empty cells take their default."""
    read: list[dict[str, Any]] = []
    names = names_of(item.columns)
    for row in rows:
        where = label + ", row " + str(len(read) + 1)
        for key in row:
            if key not in names:
                one_of = ": '" + key + "' is not one of " + ", ".join(names)
                refuse(name, where + one_of + did_you_mean(key, names))
        values: dict[str, Any] = {}
        for column in item.columns:
            cell = where + ", " + column.label
            if column.name in row and row[column.name].strip() != "":
                values[column.name] = read_one(column, row[column.name], name, cell, metric)
            elif column.default is not None:
                values[column.name] = column.default
            else:
                refuse(name, missing(cell))
        read.append(values)
    return read


def filled(inputs: Sequence[Input], values: Mapping[str, Any]) -> dict[str, Any]:
    """A value for every input: the one given or the default; None where there is neither."""
    all_values: dict[str, Any] = {}
    for item in inputs:
        all_values[item.name] = item.default
        if item.name in values:
            all_values[item.name] = values[item.name]
    return all_values


def unsound(item: Input, value: Any) -> str:
    """Why a value is none for its input; nothing for a sound one."""
    if value is None:
        return missing(item.label)
    if item.quantity == "choice" and value not in [choice.name for choice in item.choices]:
        return item.label + ": '" + str(value) + "' is not one of the choices"
    if item.quantity not in NOT_A_NUMBER and float(value) - float(value) != 0:
        return item.label + ": a finite number is wanted"
    return ""


def keep_limits(inputs: Sequence[Input], values: Mapping[str, Any], metric: bool) -> None:
    """Refuse the first value that is missing, unsound or outside its hard limits."""
    for item in inputs:
        why = unsound(item, values[item.name])
        if why != "":
            refuse(item.name, why)
    for beyond in limits(inputs, values, metric):
        refuse(beyond[0], beyond[1])


def with_cautions(inputs: Sequence[Input], values: Mapping[str, Any], answer: Answer, metric: bool) -> Answer:
    """The answer with the cautions for unusual values before its own."""
    cautions = unusual_values(inputs, values, metric)
    cautions.extend(answer["cautions"])
    answer["cautions"] = cautions
    return answer


def shown_value(output: Output, value: Any, metric: bool) -> str:
    """The value of an output, all but rows, as text in its unit and rounding."""
    if len(output.ways) > 0:
        rounds = output.rounds
        if value < 0 and rounds in ["up", "down"]:
            rounds = "down" if rounds == "up" else "up"
        size = write_in(abs(value), output.quantity, output.unit, output.step, rounds, metric)
        return with_way(output.ways, value, size)
    return write_in(value, output.quantity, output.unit, output.step, output.rounds, metric)


def shown_row(columns: Sequence[Output], row: Mapping[str, Any], metric: bool) -> dict[str, str]:
    """The cells of a row as text, by the name of the column."""
    cells: dict[str, str] = {}
    for column in columns:
        cells[column.name] = shown_value(column, row[column.name], metric)
    return cells


def shown_lines(outputs: Sequence[Output], answer: Mapping[str, Any], metric: bool) -> list[dict[str, Any]]:
    """Each output's ``name``, ``label`` and ``text``; one of rows has ``rows`` too, each its texts by column."""
    lines: list[dict[str, Any]] = []
    for output in outputs:
        line: dict[str, Any] = {"name": output.name, "label": output.label, "text": ""}
        if output.quantity == "rows":
            line["rows"] = [shown_row(output.columns, row, metric) for row in answer[output.name]]
        else:
            line["text"] = shown_value(output, answer[output.name], metric)
        lines.append(line)
    return lines
