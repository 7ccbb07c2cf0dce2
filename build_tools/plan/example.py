"""The example that the book works through, and what a task has to say in its place.

A quantity of a procedure is worked out for an example: a front room, a pad of 20 by 10 ft. Inputs that the book writes
out there and for which the crew has no standard describe the example alone. A job has rooms of its own, so a task says
them; nothing of the example is ever ordered for it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping

from build_tools.book.book import Book
from build_tools.book.model.base import Written
from build_tools.book.references import VALUE
from calculators.declaration import Calculator


def example_of(book: Book, calculator: Calculator, inputs: Mapping[str, Written]) -> list[str]:
    """The names of the inputs that describe the example."""
    standards = book.standards(calculator.name)
    return [name for name, written in inputs.items() if name not in standards and not _is_standard(written)]


def settings_of(book: Book, calculator: Calculator, inputs: Mapping[str, Written]) -> dict[str, Written]:
    """The other inputs of a call, which hold for every task: one coat, a standard of the crew."""
    example = example_of(book, calculator, inputs)
    return {name: written for name, written in inputs.items() if name not in example}


def missing_inputs(calculator: Calculator, example: Iterable[str], given: Collection[str]) -> list[str]:
    """Which inputs of the example a task neither gives nor gives anything in place of."""
    standing = {_instead(calculator, name) for name in given}
    return [
        name for name in example if name not in given and name not in standing and not _stands(calculator, name, given)
    ]


def _stands(calculator: Calculator, name: str, given: Collection[str]) -> bool:
    """Whether it stands in the example for an input that the task gives."""
    return _instead(calculator, name) in given


def _instead(calculator: Calculator, name: str) -> str:
    declared = calculator.input(name)
    return declared.instead if declared else ""


def _is_standard(written: Written) -> bool:
    return isinstance(written, str) and written.startswith(VALUE)
