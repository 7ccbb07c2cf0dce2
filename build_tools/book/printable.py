"""Text of a file shown in a terminal: what would move its cursor or turn its lines around shows as its code."""

from __future__ import annotations

import json


def printable(text: str) -> str:
    r"""The text on one line, with control, direction and other unseen characters as JSON writes them.

    Letters, marks, figures, signs and every kind of space of a line stay. Where the text is JSON, it stays the same
    data.

    >>> print(printable("a\x1b[31mb\u202ec\nd"))
    a\u001b[31mb\u202ec\nd
    >>> printable("5\u00a0ft × 3 é")
    '5\xa0ft × 3 é'
    """
    if text.isprintable():
        return text
    return "".join(one if one.isprintable() or one in SPACES else json.dumps(one)[1:-1] for one in text)


def printable_lines(text: str) -> str:
    r"""The same for a text whose line ends are our own.

    >>> print(printable_lines("a\tb\nc\x9b"))
    a\tb
    c\u009b
    """
    return "\n".join(printable(line) for line in text.split("\n"))


SPACES = "\u00a0\u2007\u2009\u202f"
"""Spaces that do not break a line or are thin: Python counts them as not printable."""
