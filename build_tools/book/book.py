"""The book in memory: every entry with the document it was read from."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, Generic, TypeVar

from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.base import Part
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.reference import Danger, Inspection, Material, Person, Source, Term, Tool, Trade, Value
from build_tools.book.yaml_reader import Document, Location

Item = TypeVar("Item", bound=Part, covariant=True)


@dataclass(frozen=True, slots=True)
class Entry(Generic[Item]):
    """One thing of the book: its id, what it says, and where that stands.

    ``at`` is the entry's own location in its document: ``()`` for a procedure, ``(id,)`` for a reference entry.
    """

    id: str
    item: Item
    document: Document
    at: Location = ()

    def error(self, location: Location, message: str, hint: str = "") -> Diagnostic:
        """An error at that field of this entry."""
        return self.document.error((*self.at, *location), message, hint)

    def warning(self, location: Location, message: str, hint: str = "") -> Diagnostic:
        """A warning at that field of this entry."""
        return self.document.warning((*self.at, *location), message, hint)


@dataclass(frozen=True, slots=True)
class ProcedureEntry(Entry[Procedure]):
    """A procedure, with its trade (the name of its folder) and the path of its file for pictures beside it."""

    trade: str = ""
    folder: str = ""


@dataclass(slots=True)
class Book:
    """Everything that was read. ``language`` is the one that pages are made in.

    ``unread`` holds scheme and id of what is there but wrong (id ``*`` for a whole file of entries), so that a
    reference to it is not called a second mistake.
    """

    procedures: dict[str, ProcedureEntry] = field(default_factory=dict)
    trades: dict[str, Entry[Trade]] = field(default_factory=dict)
    values: dict[str, Entry[Value]] = field(default_factory=dict)
    terms: dict[str, Entry[Term]] = field(default_factory=dict)
    tools: dict[str, Entry[Tool]] = field(default_factory=dict)
    materials: dict[str, Entry[Material]] = field(default_factory=dict)
    sources: dict[str, Entry[Source]] = field(default_factory=dict)
    inspections: dict[str, Entry[Inspection]] = field(default_factory=dict)
    jobs: dict[str, Entry[Job]] = field(default_factory=dict)
    dangers: dict[str, Entry[Danger]] = field(default_factory=dict)
    people: dict[str, Entry[Person]] = field(default_factory=dict)
    language: str = "en"
    unread: set[tuple[str, str]] = field(default_factory=set)
    _standards: dict[str, dict[str, str]] | None = None

    def kind(self, scheme: str) -> dict[str, Entry[Any]]:
        """The entries that a reference scheme points into (``tool`` gives the tools)."""
        return getattr(self, FIELD[scheme])  # type: ignore[no-any-return]

    def standards(self, calculator: str) -> dict[str, str]:
        """Input name of that calculator to the crew standard that it starts at, as a field names it:
        ``value:flange-above-floor flange above floor``."""
        if self._standards is None:
            self._standards = {}
            for id, entry in self.values.items():
                for start in entry.item.starts():
                    self._standards.setdefault(start.calculator, {})[start.input] = f"value:{id} {start.way}".rstrip()
        return self._standards.get(calculator, {})

    def entries(self) -> list[tuple[str, Entry[Any]]]:
        """Every entry with its scheme."""
        return [(scheme, entry) for scheme in FIELD for entry in self.kind(scheme).values()]


FIELD = {
    "procedure": "procedures",
    "trade": "trades",
    "value": "values",
    "term": "terms",
    "tool": "tools",
    "material": "materials",
    "source": "sources",
    "inspection": "inspections",
    "danger": "dangers",
    "job": "jobs",
    "person": "people",
}
"""Reference scheme to the field of the book that it points into; calculators are not in the book but in code."""
