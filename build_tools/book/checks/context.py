"""What the checks, and after them the pages, work from: the book with its links."""

from __future__ import annotations

from dataclasses import dataclass, field

from build_tools.book.book import Book
from build_tools.book.calls import CallResult, call
from build_tools.book.index import Index, make_index
from build_tools.book.memo import Memo
from build_tools.book.model.base import Written
from build_tools.book.model.table import Amount, Call, Form, Table
from build_tools.book.references import figure_of
from build_tools.book.tables import ComputedTable, TableError, compute_table
from calculators.declaration import Calculator
from calculators.registry import CALCULATORS
from calculators.run import shown


@dataclass(slots=True)
class Context:
    """A book, the calculators, every name with its page, and what was worked out already.

    ``fingerprint`` changes when a name, a title, an address, a crew standard or what else a page takes from an entry
    changes: what was made from one procedure alone holds as long as it stays, and so does what was worked out.
    """

    book: Book
    index: Index
    calculators: dict[str, Calculator]
    memo: Memo
    fingerprint: int = 0
    _tables: dict[str, tuple[ComputedTable, list[TableError]]] = field(default_factory=dict)
    _calls: dict[str, CallResult] = field(default_factory=dict)

    @classmethod
    def of(cls, book: Book, memo: Memo, calculators: dict[str, Calculator] = CALCULATORS) -> Context:
        """Link a book. Its calculators are those of its trades."""
        calculators = {name: each for name, each in calculators.items() if each.trade in book.trades}
        index = make_index(book, calculators, memo)
        standards = tuple((id, entry.item.quantity, tuple(entry.item.default_of)) for id, entry in book.values.items())
        materials = tuple((id, entry.item.counted_in) for id, entry in book.materials.items())
        tools = tuple((id, entry.item.protects, entry.item.rented) for id, entry in book.tools.items())
        inspections = tuple(
            (
                id,
                entry.item.who.inside(book.language),
                entry.item.notice,
                entry.item.by,
                str(entry.item.roles),
                str(entry.item.people),
            )
            for id, entry in book.inspections.items()
        )
        crew = tuple((id, entry.item.role) for id, entry in book.people.items())
        unread = frozenset(book.unread)
        shown = (standards, materials, tools, inspections, crew)
        fingerprint = hash((index.fingerprint(), shown, unread, book.language))
        made = cls(book, index, calculators, memo, fingerprint)
        made._tables, made._calls = memo.named("worked out", fingerprint, lambda: (made._tables, made._calls))
        return made

    def table(self, table: Table) -> tuple[ComputedTable, list[TableError]]:
        """A table worked out, once for all that are written alike."""
        key = table.model_dump_json()
        if key not in self._tables:
            self._tables[key] = compute_table(self.book, table, self.calculators[table.calculator])
        return self._tables[key]

    def call(self, wanted: Call | Form) -> CallResult:
        """A call worked out, once for all that are written alike."""
        return self.call_with(wanted.calculator, wanted.inputs)

    def call_with(self, calculator: str, inputs: dict[str, Written]) -> CallResult:
        """A calculator worked out with those inputs, in the units that people write."""
        key = f"{calculator} {sorted(inputs.items())}"
        if key not in self._calls:
            self._calls[key] = call(self.book, self.calculators[calculator], inputs)
        return self._calls[key]

    def figure(self, amount: Amount) -> str | None:
        """A figure as people write it: as it stands, of a crew standard, or what a calculator answers.

        None where there is no such standard or no answer, which the checks name.
        """
        if not isinstance(amount, Call):
            return figure_of(amount, self.book)
        if amount.calculator not in self.calculators:
            return None
        called = self.call(amount)
        answer = None if called.answer is None else shown(called.calculator, called.answer).get(amount.output)
        return None if answer is None else str(answer)
