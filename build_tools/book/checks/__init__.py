"""The checks of the book, each in a file of its own. All run, and all that they find is reported.

A check is a function that takes the :class:`~build_tools.book.checks.context.Context` and gives problems. Those in
``EACH`` look at one procedure and are remembered until it, a name or a value changes; those in ``WHOLE`` look at the
whole book.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from build_tools.book.book import Book, ProcedureEntry
from build_tools.book.checks import (
    amounts_of_work,
    calculators,
    figures,
    lists,
    messages,
    order,
    pictures,
    quantities,
    reach,
    readings,
    references,
    reserved,
    trips,
    vague,
)
from build_tools.book.checks.context import Context
from build_tools.book.memo import Memo
from build_tools.book.problems import Problem
from calculators.declaration import Calculator
from calculators.registry import CALCULATORS

EACH: tuple[Callable[[Context, ProcedureEntry], Iterable[Problem]], ...] = (
    lists.step_ids,
    lists.tools_and_materials,
    messages.before_what_they_guard,
    quantities.of_procedure,
    trips.of_procedure,
    amounts_of_work.of_procedure,
    calculators.of_procedure,
    readings.of_procedure,
    references.of_entry,
    figures.repeated_values,
    vague.vague_words,
    reserved.says_who_may,
)
WHOLE: tuple[Callable[[Context], Iterable[Problem]], ...] = (
    references.of_reference_entries,
    quantities.of_reference_entries,
    amounts_of_work.of_materials,
    calculators.standards,
    calculators.citations,
    order.cycles,
    reach.trades,
    pictures.files,
)


def check_book(book: Book, calculators: dict[str, Calculator] = CALCULATORS) -> list[Problem]:
    """Run every check. The list is in the order of files and lines."""
    return check(Context.of(book, Memo(), calculators))


def check(context: Context) -> list[Problem]:
    """Run every check on a prepared context."""
    problems: list[Problem] = []
    for entry in context.book.procedures.values():
        problems += context.memo.of("checks", entry.item, context.fingerprint, lambda: check_procedure(context, entry))  # noqa: B023
    for whole in WHOLE:
        problems += whole(context)
    return sorted(set(problems))


def check_procedure(context: Context, entry: ProcedureEntry) -> list[Problem]:
    """The checks that look at one procedure."""
    return [problem for each in EACH for problem in each(context, entry)]
