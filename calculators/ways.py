"""Figures that go two ways from nothing: written plain with the words of their way, never with a sign.

Inside, a value of the first way is more than 0 and one of the second less. Plain subset: it is compiled for the page.
"""

from __future__ import annotations

from collections.abc import Sequence

SIGNS = "+-−–"


def with_way(ways: Sequence[str], value: float, size: str) -> str:
    """The written size of a value with the words of its way; nothing to say for 0, or where a way has no words.

    >>> [with_way(["up", "down"], -0.5, "1/2 in"), with_way(["up", "down"], 0, "0 in")]
    ['1/2 in down', '0 in']
    >>> [with_way(["", "short"], 2, "2 in"), with_way(["", "short"], -2, "2 in")]
    ['2 in', '2 in short']
    """
    if len(ways) == 0 or value == 0:
        return size
    way = ways[1] if value < 0 else ways[0]
    return (size + " " + way).strip()


def way_at_end(ways: Sequence[str], text: str) -> str:
    """The way whose words a text ends with; no text where there are none.

    >>> [way_at_end(["up", "down"], "1/2 in Down"), way_at_end(["up", "down"], "1/2 in")]
    ['down', '']
    """
    for way in ways:
        if text.lower().endswith(way.lower()):
            return way
    return ""


def which_way(ways: Sequence[str], text: str) -> str:
    """The message for a figure that has a sign, or no way.

    >>> which_way(["up", "down"], "-1/2 in")
    "'-1/2 in' does not say which way: write '1/2 in up' or '1/2 in down'"
    """
    size = text.strip()
    while len(size) > 0 and size[0] in SIGNS:
        size = size[1 : len(size)].strip()
    return (
        "'" + text + "' does not say which way: write '" + size + " " + ways[0] + "' or '" + size + " " + ways[1] + "'"
    )
