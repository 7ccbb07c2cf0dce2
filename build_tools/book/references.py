"""What an entry of the book refers to, in its fields and in its prose."""

from __future__ import annotations

from dataclasses import dataclass

from build_tools.book.book import Book, Entry
from build_tools.book.memo import Memo
from build_tools.book.model.base import IsMeasure, Part, Prose, RefersTo
from build_tools.book.prose import ProseLink, prose_links
from build_tools.book.traverse import traversed
from build_tools.book.yaml_reader import Location

VALUE = "value:"


def named_value(measure: str) -> str | None:
    """The id of the crew standard that a measure names, or None where it is a figure.

    >>> named_value("value:gap"), named_value("value:gap floor above flange"), named_value("1/4 in")
    ('gap', 'gap', None)
    """
    return measure.removeprefix(VALUE).partition(" ")[0] if measure.startswith(VALUE) else None


def figure_of(measure: str, book: Book) -> str | None:
    """The figure itself: as written, or that of the standard it names, with the words of its way behind it.

    None where there is no such standard.
    """
    id = named_value(measure)
    if id is None:
        return measure
    entry = book.values.get(id)
    return None if entry is None else measure.replace(f"{VALUE}{id}", entry.item.quantity, 1)


@dataclass(frozen=True, slots=True)
class Reference:
    """One reference: where it stands and what it points at."""

    location: Location
    scheme: str
    target: str
    step: str = ""
    prose: ProseLink | None = None


def references_of(entry: Entry[Part], book: Book, memo: Memo) -> tuple[Reference, ...]:
    """Every reference of an entry, in the order in which they stand."""
    return memo.of("references", entry.item, book.language, lambda: tuple(_references(entry.item, book.language, memo)))


def _references(item: Part, language: str, memo: Memo) -> list[Reference]:
    found: list[Reference] = []
    for location, kind, value in traversed(item, memo):
        if isinstance(kind, RefersTo):
            found.append(Reference(location, kind.scheme, value))
        elif isinstance(kind, IsMeasure):
            id = named_value(value)
            if id is not None:
                found.append(Reference(location, "value", id))
        elif kind is Prose:
            found += [
                Reference(location, link.scheme, link.target, link.step, link)
                for link in prose_links(value.inside(language))
            ]
    return found
