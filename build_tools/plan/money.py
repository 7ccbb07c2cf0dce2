"""Amounts of money as people write them: a number and a word for the currency."""

from __future__ import annotations

from dataclasses import dataclass

from build_tools.book.amounts import read_figure, split_amount
from calculators.reading import Unreadable


@dataclass(frozen=True, slots=True)
class MoneyAmount:
    """``52 dollars`` in its two parts."""

    number: float
    currency: str


def read_money(text: str) -> MoneyAmount:
    """An amount of money; a dollar sign before the figure is the word after it. Raises Unreadable where it is none.

    >>> read_money("52 dollars"), read_money("$48,613")
    (MoneyAmount(number=52.0, currency='dollars'), MoneyAmount(number=48613.0, currency='dollars'))
    """
    parts = split_amount(f"{text[1:]} dollars" if text.startswith("$") else text)
    if parts is None or not parts.unit:
        raise Unreadable(text, "is not an amount of money: write it like '52 dollars' or '$52'")
    if parts.number < 0:
        raise Unreadable(text, "is less than nothing")
    return MoneyAmount(parts.number, parts.unit)


def write_money(number: float, currency: str) -> str:
    """An amount as it is shown, in whole units of the currency.

    >>> write_money(16050.5, "dollars")
    '16,050 dollars'
    """
    return f"{number:,.0f} {currency}".strip()


def times(number: float, unit: str, per: str) -> float | None:
    """How often an amount ``per`` goes into so many of a unit; None where the two are of different kinds.

    >>> times(12, "bundles", "1 bundle"), times(54, "cu ft", "1 cu yd"), times(3, "rolls", "1 lb")
    (12.0, 2.0, None)
    """
    parts = split_amount(per)
    if parts is None or parts.number <= 0:
        return None
    if _one(unit) == _one(parts.unit):
        return number / parts.number
    try:
        size, kind = read_figure(f"{number!r} {unit}")
        one, wanted = read_figure(per)
    except Unreadable:
        return None
    return size / one if kind == wanted else None


def _one(unit: str) -> str:
    """A unit in the singular, as far as an ``s`` tells."""
    return unit.strip().lower().removesuffix("s")
