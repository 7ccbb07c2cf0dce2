"""Calling a calculator from the book: each input settled once, the answer or the reasons why not.

:func:`settle` is the one place that says which figure of an input holds: the one that the call gives, or else the crew
standard that is declared as its default (``default_of`` of a value), or else the calculator's own default.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from build_tools.book.book import Book
from build_tools.book.model.base import Written
from build_tools.book.references import figure_of
from calculators.declaration import Answer, Calculator, Input, Refused
from calculators.run import read_inputs, run
from calculators.ways import with_way
from calculators.writing import feet_inches
from calculators.writing_units import write


@dataclass(frozen=True, slots=True)
class InputError:
    """Why a call cannot be answered; ``input`` is empty where it concerns no single input."""

    input: str
    message: str
    hint: str = ""


@dataclass(frozen=True, slots=True)
class SettledInput:
    """The figure of an input that holds, in the unit of the inside, and who settled it.

    ``standard`` is the crew standard as a field names it, where it is one that holds: ``value:bowl-recess``.
    """

    value: Any
    by: Literal["given", "standard", "default"]
    standard: str = ""


@dataclass(slots=True)
class CallResult:
    """A call with its inputs settled, and its answer where there are no complaints."""

    calculator: Calculator
    settled: dict[str, SettledInput]
    answer: Answer | None = None
    complaints: list[InputError] = field(default_factory=list)

    @property
    def values(self) -> dict[str, Any]:
        """The value of each input that has one, in the unit of the inside."""
        return {name: each.value for name, each in self.settled.items()}


def call(book: Book, calculator: Calculator, inputs: Mapping[str, Written]) -> CallResult:
    """Read the inputs of a call and work it out."""
    called = settle(book, calculator, inputs)
    if not called.complaints:
        try:
            called.answer = run(calculator, called.values)
        except Refused as refused:
            called.complaints.append(InputError(refused.input, refused.message))
    return called


def settle(book: Book, calculator: Calculator, inputs: Mapping[str, Written]) -> CallResult:
    """The inputs of a call as they hold, not worked out yet. An input that is neither given nor has a default, or whose
    figure cannot be read, is among the complaints."""
    standards = {
        name: standard
        for name, standard in book.standards(calculator.name).items()
        if name not in inputs and calculator.input(name) is not None
    }
    written: dict[str, object] = {}
    for name, text in {**standards, **inputs}.items():
        resolved = resolve(book, text)
        if resolved is not None:
            written[name] = resolved
    read, refusals = read_inputs(calculator, written)
    settled = {}
    for each in calculator.inputs:
        if each.name in read:
            standard = standards.get(each.name, "")
            settled[each.name] = SettledInput(read[each.name], "standard" if standard else "given", standard)
        elif each.default is not None:
            settled[each.name] = SettledInput(each.default, "default")
    complaints = [InputError(refused.input, refused.message) for refused in refusals]
    return CallResult(calculator, settled, None, complaints)


def departures(book: Book, called: CallResult) -> Iterator[tuple[str, str]]:
    """What a call was given beside what it would start at: the label of each such input, and its text."""
    starts = settle(book, called.calculator, {}).values
    for each in called.calculator.inputs:
        value = called.values.get(each.name)
        if value not in (None, [], "") and value != starts.get(each.name):
            yield each.label, shown_input(each, value)


def resolve(book: Book, text: Written) -> Written | None:
    """The text of a ``value:NAME``; other text and rows as they are; None where there is no such value."""
    return figure_of(text, book) if isinstance(text, str) else text


def shown_input(declared: Input, value: Any) -> str:
    """An input's value as people write it, lengths as they are read off a tape."""
    if declared.quantity == "choice":
        return next((choice.label for choice in declared.choices if choice.name == value), str(value))
    if declared.quantity == "rows":
        return "; ".join(_row(declared, row) for row in value)
    if declared.quantity == "plan":
        return "; ".join(_shape(shape) for shape in value)
    if declared.quantity == "yes-no":
        return "yes" if value else "no"
    size = abs(value) if declared.ways else value
    return with_way(declared.ways, value, write(size, declared.quantity, declared.unit, 0.0, "tape"))


def _row(declared: Input, row: Mapping[str, Any]) -> str:
    """The cells of a row that say more than the default does."""
    cells = []
    for column in declared.columns:
        value = row[column.name]
        if value not in ("", None) and value != column.default:
            text = shown_input(column, value)
            cells.append(column.label if column.quantity == "yes-no" else text)
    return ", ".join(cells)


def _shape(shape: Mapping[str, Any]) -> str:
    """A shape of a plan with its name and the sides of the box around it."""
    xs, ys = [point[0] for point in shape["points"]], [point[1] for point in shape["points"]]
    size = " x ".join(feet_inches(max(along) - min(along)) for along in (xs, ys))
    name = f"{shape['name']}: " if shape["name"] else ""
    return f"{name}{'less ' if shape['less'] else ''}{size}"
