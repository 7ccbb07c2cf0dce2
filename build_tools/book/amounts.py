"""An amount of material as people write it: a number and the unit it is counted in."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from calculators.reading import Unreadable, read, read_number_with_unit

MOST_WORDS = 6
"""Of a number: ``1 613 000 1/2`` has four."""
CACHE_SIZE = 20_000
"""Figures that are remembered: a book writes the same ones again and again."""

read_figure = lru_cache(maxsize=CACHE_SIZE)(read_number_with_unit)
"""The same as :func:`~calculators.reading.read_number_with_unit`, remembered."""


def read_with_unit(text: str, quantity: str, unit: str) -> float:
    """A figure that is shown as it was written, so its unit is not left to the reader: else as ``read``.

    Raises Unreadable; ``unit`` is the one that is proposed.

    >>> read_with_unit("90 min", "time", "h")
    1.5
    """
    value = read(text, quantity, unit)
    if read_figure(text)[1] == "number":
        raise Unreadable(text, f"has no unit: write {text} {unit}{f' or {text} days' if quantity == 'time' else ''}")
    return value


@dataclass(frozen=True, slots=True)
class AmountText:
    """``2-1/2 cu yd`` in its two parts."""

    number: float
    unit: str


@lru_cache(maxsize=CACHE_SIZE)
def split_amount(text: str) -> AmountText | None:
    """The number and the unit, or None where the text does not begin with a number.

    >>> split_amount("2-1/2 cu yd")
    AmountText(number=2.5, unit='cu yd')
    """
    words = text.split()
    for count in range(min(len(words), MOST_WORDS), 0, -1):
        first = " ".join(words[:count])
        if any(sign.isalpha() for sign in first):
            continue
        try:
            number = read(first, "number", "")
        except Unreadable:
            continue
        return AmountText(number, " ".join(words[count:]))
    return None


@lru_cache(maxsize=CACHE_SIZE)
def measured(unit: str) -> bool:
    """Whether a unit measures (``sq ft``) and does not count (``each``, ``opening``).

    >>> measured("sq ft"), measured("opening")
    (True, False)
    """
    try:
        _, quantity = read_figure(f"1 {unit}")
    except Unreadable:
        return False
    return quantity in {"length", "area", "volume", "mass", "time"}
