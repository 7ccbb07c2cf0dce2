"""The book as the crew may have it: jobs without money and without private notes.

A build for the crew leaves these fields out before anything is made from a job, so that no page, list or index can
show what it never had.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from build_tools.book.book import Book
from build_tools.book.model.base import Part


def without_private(book: Book) -> Book:
    """The same book, each private field of its jobs put back to its default."""
    jobs = {id: replace(entry, item=_public(entry.item)) for id, entry in book.jobs.items()}
    return replace(book, jobs=jobs)


def _public(value: Any) -> Any:
    """A copy of a part without what it lists under ``PRIVATE``, at any depth.

    >>> from build_tools.book.model.job import Hand
    >>> _public([Hand(person="wren-okafor", rate="26 dollars")])[0].rate is None
    True
    """
    if isinstance(value, list):
        return [_public(each) for each in value]
    if isinstance(value, dict):
        return {name: _public(each) for name, each in value.items()}
    if not isinstance(value, Part):
        return value
    hidden: tuple[str, ...] = getattr(value, "PRIVATE", ())
    changed = {}
    for name, field in type(value).model_fields.items():
        kept = getattr(value, name)
        shown = field.get_default() if name in hidden else _public(kept)
        if shown != kept:
            changed[name] = shown
    return value.model_copy(update=changed)
