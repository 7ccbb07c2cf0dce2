"""The figures of a checked book as quantities.

A measure of the book is a figure with its unit, or names a crew standard. The checks have read every one of them;
whoever plans, orders or shows asks here, and gets a number in the unit of the inside. A measure that cannot be read
raises :class:`Unchecked`, since nothing may be ordered by a figure that nobody wrote.

>>> hours(Book(), "1-1/2 days")
36.0
>>> percent(Book(), "7.5 %")
7.5
>>> amount(Book(), "2-1/2 cu yd").unit
'cu yd'
"""

from __future__ import annotations

from build_tools.book.amounts import AmountText, split_amount
from build_tools.book.book import Book
from build_tools.book.references import figure_of
from calculators.reading import Unreadable, read


class Unchecked(Exception):
    """A measure that no check has read: the book was used without its checks."""


def text(book: Book, measure: str) -> str:
    """The figure as it is written, that of the standard where the measure names one."""
    figure = figure_of(measure, book)
    if figure is None:
        raise Unchecked(f"'{measure}' names no standard of the book")
    return figure


def hours(book: Book, measure: str) -> float:
    """A time, in hours; a day is 24."""
    return _read(book, measure, "time", "h")


def percent(book: Book, measure: str) -> float:
    """A share, in percent."""
    return _read(book, measure, "percent", "%")


def inches(book: Book, measure: str, unit: str = "ft") -> float:
    """A length, in inches; ``unit`` is meant where none is written."""
    return _read(book, measure, "length", unit)


def count(book: Book, measure: str) -> int:
    """A number of things."""
    return round(_read(book, measure, "count", ""))


def amount(book: Book, measure: str) -> AmountText:
    """A number with the unit that it is counted in."""
    made = split_amount(text(book, measure))
    if made is None:
        raise Unchecked(f"'{measure}' begins with no number")
    return made


def _read(book: Book, measure: str, quantity: str, unit: str) -> float:
    try:
        return read(text(book, measure), quantity, unit)
    except Unreadable as trouble:
        raise Unchecked(str(trouble)) from None
