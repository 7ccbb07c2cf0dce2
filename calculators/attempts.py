"""Reading that gives back the reason in place of stopping.

The plain subset has no ``try``: these are the few functions that have one, and the page's script has its own of the
same names (``build_tools/browser/script/core.js``).
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from calculators.reading import read
from calculators.scanning import Unreadable
from calculators.shapes import read_plan

_read = lru_cache(maxsize=10_000)(read)
"""A book writes the same figures again and again."""


def read_or_why(text: str, quantity: str, unit: str) -> tuple[Any, str]:
    """The value of a written figure or plan and no text, or None and why it cannot be read.

    >>> [read_or_why("1/2 in", "length", "in"), read_or_why("3 x", "count", "")]
    [(0.5, ''), (None, "'3 x' is not a count: write 3")]
    """
    try:
        if quantity == "plan":
            return (read_plan(text), "")
        return (_read(text, quantity, unit), "")
    except Unreadable as unreadable:
        return (None, str(unreadable))
