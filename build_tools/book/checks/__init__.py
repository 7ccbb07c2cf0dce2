"""The checks of the book, each in a file of its own. All run, and all that they find is reported.

A check is a function that takes the :class:`~build_tools.book.checks.context.Context` and gives diagnostics. Those in
``EACH`` look at one procedure and are remembered until it, a name or a value changes; those in ``WHOLE`` look at the
whole book.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial

from build_tools.book.book import Book, ProcedureEntry
from build_tools.book.checks import (
    amounts_of_work,
    calculators,
    figures,
    lists,
    messages,
    pictures,
    quantities,
    reach,
    readings,
    references,
    reserved,
    sequence,
    trips,
    vague,
)
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.memo import Memo
from calculators.declaration import Calculator
from calculators.registry import CALCULATORS

EACH: tuple[Callable[[Context, ProcedureEntry], Iterable[Diagnostic]], ...] = (
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
WHOLE: tuple[Callable[[Context], Iterable[Diagnostic]], ...] = (
    references.of_reference_entries,
    quantities.of_reference_entries,
    amounts_of_work.of_materials,
    calculators.standards,
    calculators.citations,
    sequence.cycles,
    reach.trades,
    pictures.files,
)


def check_book(book: Book, calculators: dict[str, Calculator] = CALCULATORS) -> list[Diagnostic]:
    """Run every check. The list is in the order of files and lines."""
    return check(Context.of(book, Memo(), calculators))


def check(context: Context) -> list[Diagnostic]:
    """Run every check on a prepared context."""
    diagnostics: list[Diagnostic] = []
    for entry in context.book.procedures.values():
        found = partial(check_procedure, context, entry)
        diagnostics += context.memo.of("checks", entry.item, context.fingerprint, found)
    for whole in WHOLE:
        diagnostics += whole(context)
    return sorted(set(diagnostics))


def check_procedure(context: Context, entry: ProcedureEntry) -> list[Diagnostic]:
    """The checks that look at one procedure."""
    return [diagnostic for each in EACH for diagnostic in each(context, entry)]
