"""Works out the tables of the book from their calculators."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any

from build_tools.book.book import Book
from build_tools.book.calls import InputError, settle, shown_input
from build_tools.book.diagnostics import did_you_mean
from build_tools.book.model.base import Written
from build_tools.book.model.table import Axis, Table
from build_tools.book.references import figure_of
from calculators.declaration import Calculator, Input, Refused
from calculators.run import read_input, run, shown
from calculators.writing import rounded

LONGEST = 200
"""Rows or columns: a table beyond that is a slip in the step."""


@dataclass(frozen=True, slots=True)
class TableCell:
    """One cell: a text for each output that is shown, or why there is no answer.

    ``passes`` is None where the table names no output that says so.
    """

    lines: tuple[tuple[str, str], ...] = ()
    refused: str = ""
    ours: bool = False
    passes: bool | None = None

    @property
    def text(self) -> str:
        """The cell in one line."""
        return self.refused or ", ".join(text for _, text in self.lines)


@dataclass(frozen=True, slots=True)
class TableRow:
    """A row: what its axis says, whether that is the crew's own standard, and the cells."""

    head: str
    value: float | str
    ours: bool
    cells: tuple[TableCell, ...]


@dataclass(slots=True)
class ComputedTable:
    """A table worked out. ``columns`` are the values across, or the labels of the outputs."""

    caption: str
    calculator: Calculator
    down_label: str
    across_label: str
    columns: list[str] = field(default_factory=list)
    column_ours: list[bool] = field(default_factory=list)
    column_values: list[float | str] = field(default_factory=list)
    rows: list[TableRow] = field(default_factory=list)
    fixed: list[tuple[str, str]] = field(default_factory=list)
    down: str = ""
    across: str = ""


@dataclass(frozen=True, slots=True)
class TableError:
    """What is wrong with a table: the field below the table, and the words."""

    location: tuple[str | int, ...]
    message: str
    hint: str = ""


def compute_table(book: Book, table: Table, calculator: Calculator) -> tuple[ComputedTable, list[TableError]]:
    """Work out every cell of a table, or say what is wrong with it."""
    computed = ComputedTable(
        table.caption.inside(book.language),
        calculator,
        _label(calculator, table.down.input),
        _label(calculator, table.across.input) if table.across else "",
        down=table.down.input,
        across=table.across.input if table.across else "",
    )
    troubles = _wrong_names(table, calculator)
    if troubles:
        return computed, troubles
    down = _axis(book, table.down, calculator, "down", troubles)
    across = _axis(book, table.across, calculator, "across", troubles) if table.across else []
    fixed = settle(book, calculator, _without_axes(table, book))
    troubles += [_fixed_trouble(table, complaint) for complaint in fixed.complaints if _concerns(table, complaint)]
    if troubles:
        return computed, troubles
    _fill(book, table, computed, down, across, fixed.values)
    return computed, []


def _fill(
    book: Book, table: Table, computed: ComputedTable, down: list[Any], across: list[Any], fixed: dict[str, Any]
) -> None:
    calculator = computed.calculator
    down_input = _input(calculator, table.down.input)
    ours_down = _own(book, calculator, table.down)
    ours_across = None
    if table.across:
        across_input = _input(calculator, table.across.input)
        ours_across = _own(book, calculator, table.across)
        computed.columns = [shown_input(across_input, value) for value in across]
        computed.column_values = across
        computed.column_ours = [_same(value, ours_across) for value in across]
    else:
        outputs = [calculator.output(name) for name in table.show]
        computed.columns = [output.label for output in outputs if output is not None]
        computed.column_ours = [False] * len(computed.columns)
    computed.fixed = [
        (declared.label, shown_input(declared, fixed[declared.name]))
        for declared in calculator.inputs
        if declared.name in table.fixed and declared.name in fixed
    ]
    for value in down:
        ours = _same(value, ours_down)
        values = {**fixed, table.down.input: value}
        if table.across:
            cells = tuple(
                _cell(calculator, {**values, table.across.input: other}, table, ours and _same(other, ours_across))
                for other in across
            )
        else:
            whole = _cell(calculator, values, table, ours=False)
            cells = tuple(TableCell((line,), passes=whole.passes) for line in whole.lines) or (whole,) * len(table.show)
        computed.rows.append(TableRow(shown_input(down_input, value), value, ours, cells))


def _cell(calculator: Calculator, values: dict[str, Any], table: Table, ours: bool) -> TableCell:
    try:
        answer = run(calculator, values)
    except Refused as refused:
        return TableCell(refused=refused.message, ours=ours)
    texts = shown(calculator, answer, table.show)
    labels = {output.name: output.label for output in calculator.outputs if output.name in texts}
    passes = bool(answer[table.passes]) if table.passes else None
    return TableCell(tuple((labels[name], str(texts[name])) for name in table.show), ours=ours, passes=passes)


def _wrong_names(table: Table, calculator: Calculator) -> list[TableError]:
    inputs = [declared.name for declared in calculator.inputs]
    outputs = [declared.name for declared in calculator.outputs]
    troubles = []
    axes = [("down", table.down)] + ([("across", table.across)] if table.across else [])
    for side, axis in axes:
        declared = calculator.input(axis.input)
        if declared is None:
            hint = did_you_mean(axis.input, inputs) or f"its inputs are {', '.join(inputs)}"
            troubles.append(
                TableError((side, "input"), f"'{axis.input}' is not an input of calculator '{calculator.name}'", hint)
            )
        elif declared.quantity in ("rows", "plan", "text"):
            troubles.append(
                TableError((side, "input"), f"'{axis.input}' cannot run along a table: it is no single figure")
            )
        elif axis.input in table.fixed:
            troubles.append(TableError(("fixed", axis.input), f"'{axis.input}' is fixed and runs {side} as well"))
    for index, name in enumerate(table.show):
        if name not in outputs:
            hint = did_you_mean(name, outputs) or f"its outputs are {', '.join(outputs)}"
            troubles.append(
                TableError(("show", index), f"'{name}' is not an output of calculator '{calculator.name}'", hint)
            )
    if table.passes is not None:
        output = calculator.output(table.passes)
        if output is None or output.quantity != "yes-no":
            known = [each.name for each in calculator.outputs if each.quantity == "yes-no"]
            hint = did_you_mean(table.passes, known) or (f"these are: {', '.join(known)}" if known else "")
            message = f"'{table.passes}' is not an output of calculator '{calculator.name}' that says yes or no"
            troubles.append(TableError(("passes",), message, hint))
    return troubles


def _axis(book: Book, axis: Axis, calculator: Calculator, side: str, troubles: list[TableError]) -> list[Any]:
    """The values along an axis, in the unit of the inside; hard limits are for the cells to say."""
    declared = _input(calculator, axis.input)

    def read(text: str, *place: str | int, item: Input = declared) -> Any:
        try:
            return read_input(item, figure_of(text, book) or text)
        except Refused as refused:
            troubles.append(TableError((side, *place), refused.message))
            return None

    if axis.ours:
        read(axis.ours, "ours")
    if axis.values:
        return [read(text, "values", index) for index, text in enumerate(axis.values)]
    start, to = read(axis.start or "", "from"), read(axis.to or "", "to")
    step = read(axis.step or "", "step", item=replace(declared, ways=()))  # a step has no way
    if not all(isinstance(number, float | int) for number in (start, to, step)):
        return []
    if step <= 0 or to < start:
        troubles.append(TableError((side, "step"), "an axis runs from the smaller to the larger in steps above nought"))
        return []
    count = int((to - start) / step + 1e-9) + 1
    if count > LONGEST:
        troubles.append(TableError((side, "step"), f"gives {count} lines; a table has at most {LONGEST}"))
        return []
    return [
        rounded(start + index * step, 1e-9, "nearest") if step < 1 else start + index * step for index in range(count)
    ]


def _without_axes(table: Table, book: Book) -> dict[str, Written]:
    axes = {table.down.input} | ({table.across.input} if table.across else set())
    return {name: text for name, text in table.fixed.items() if name not in axes}


def _concerns(table: Table, complaint: InputError) -> bool:
    """A missing input that runs along an axis is no trouble."""
    axes = {table.down.input} | ({table.across.input} if table.across else set())
    return complaint.input not in axes


def _fixed_trouble(table: Table, complaint: InputError) -> TableError:
    place: tuple[str | int, ...] = ("fixed", complaint.input) if complaint.input in table.fixed else ("fixed",)
    return TableError(place, complaint.message, complaint.hint)


def _own(book: Book, calculator: Calculator, axis: Axis) -> Any:
    """The crew's own standard along an axis, in the unit of the inside; None where it has none."""
    given = {axis.input: axis.ours} if axis.ours else {}
    own = settle(book, calculator, given).settled.get(axis.input)
    return None if own is None or own.by == "default" else own.value


def _same(value: Any, own: Any) -> bool:
    if own is None or isinstance(value, str):
        return own is not None and bool(value == own)
    return bool(abs(value - own) < 1e-6)


def _input(calculator: Calculator, name: str) -> Input:
    declared = calculator.input(name)
    assert declared is not None, name
    return declared


def _label(calculator: Calculator, name: str) -> str:
    declared = calculator.input(name)
    return declared.label if declared else name
