"""What a reader sees of a text: whether there is a word in it, and marks that nobody sees."""

from __future__ import annotations

import re
import unicodedata

FILLERS = "\u115f\u1160\u3164\uffa0"
"""Letters by their class that are drawn as nothing (Unicode: the fillers of Hangul)."""
PLAIN_WORD = re.compile("[A-Za-z0-9]")
BIDI_CONTROLS = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")
"""What turns the direction of the letters around it (Unicode: Bidi_Control)."""


def has_words(text: str) -> bool:
    r"""Whether a letter or a digit of the text can be seen.

    >>> has_words("2"), has_words("é"), has_words("..."), has_words("\u3164"), has_words("\u0300")
    (True, True, False, False, False)
    """
    if PLAIN_WORD.search(text):
        return True
    return any(unicodedata.category(one)[0] in "LN" and one not in FILLERS for one in text)


def bidi_control(text: str) -> str:
    r"""What a message says of the first mark of a text that turns its letters around, or nothing.

    >>> bidi_control("a\u202eb")
    'holds a mark that nobody sees and that turns letters around (U+202E, right-to-left override)'
    """
    found = None if text.isascii() else BIDI_CONTROLS.search(text)
    if found is None:
        return ""
    name = unicodedata.name(found[0]).lower()
    return f"holds a mark that nobody sees and that turns letters around (U+{ord(found[0]):04X}, {name})"
