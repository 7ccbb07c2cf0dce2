"""The figures of a checked book: a standard stands for its figure, and what was not checked is never nought."""

from __future__ import annotations

import pytest

from build_tools.book import quantities
from build_tools.book.book import Book
from build_tools.book.quantities import Unchecked
from build_tools.commands.site import BOOK
from tests.builds import context_of


def test_a_standard_is_its_figure() -> None:
    book = context_of(BOOK).book
    assert quantities.inches(book, "value:lock-height") == 36


@pytest.mark.parametrize("measure", ["value:nowhere", "soon", "", "4 sq ft"])
def test_what_was_not_checked_is_refused(measure: str) -> None:
    """Taken for nought it would be a job that takes no time."""
    with pytest.raises(Unchecked):
        quantities.hours(Book(), measure)


def test_an_amount_begins_with_a_number() -> None:
    with pytest.raises(Unchecked, match="begins with no number"):
        quantities.amount(Book(), "a few boxes")
