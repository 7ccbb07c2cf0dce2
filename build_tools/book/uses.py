"""What an entry of the book refers to, in its fields and in its prose."""

from __future__ import annotations

from dataclasses import dataclass

from build_tools.book.book import Book, Entry
from build_tools.book.memo import Memo
from build_tools.book.model.base import IsMeasure, Part, Prose, RefersTo
from build_tools.book.prose import Reference, references
from build_tools.book.walk import walk
from build_tools.book.yaml_reader import Location

VALUE = "value:"


@dataclass(frozen=True, slots=True)
class Use:
    """One reference: where it stands and what it points at."""

    location: Location
    scheme: str
    target: str
    step: str = ""
    prose: Reference | None = None


def uses_of(entry: Entry[Part], book: Book, memo: Memo) -> tuple[Use, ...]:
    """Every reference of an entry, in the order in which they stand."""
    return memo.of("uses", entry.item, book.language, lambda: tuple(_uses(entry.item, book.language)))


def _uses(item: Part, language: str) -> list[Use]:
    found: list[Use] = []
    for location, kind, value in walk(item):
        if isinstance(kind, RefersTo):
            found.append(Use(location, kind.scheme, value))
        elif isinstance(kind, IsMeasure):
            if value.startswith(VALUE):
                found.append(Use(location, "value", value.removeprefix(VALUE)))
        elif kind is Prose:
            found += [
                Use(location, reference.scheme, reference.target, reference.step, reference)
                for reference in references(value.inside(language))
            ]
    return found
