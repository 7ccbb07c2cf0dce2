"""The words for people of an entry, judged as the reader sees them: nothing is lost, blank or left to be written."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.base import Part, Prose, Text
from build_tools.book.prose import hidden_links, plain
from build_tools.book.traverse import traverse
from build_tools.book.visible_text import bidi_control, has_words
from build_tools.book.yaml_losses import lost
from build_tools.book.yaml_reader import Document, Location

_HYPHENS = r"\s_\-\u2010-\u2015"
PLACEHOLDER = re.compile(rf"\b(?:FILL[{_HYPHENS}]*IN|TO-?DO|TBD)\b")
"""What a starting file has where something is to be written, and what people write for it: in capitals anywhere."""
WHOLE_PLACEHOLDER = re.compile(rf"\W*(?:fill[{_HYPHENS}]*in|to[{_HYPHENS}]?do|tbd)\W*", re.IGNORECASE)
"""The same as the whole of a text: 'fill in' inside a sentence is what somebody does."""
TO_WRITE = "write the text, or take the line out"
TAG = re.compile(r"<!--.*?-->|</?[A-Za-z][^<>]*>", re.DOTALL)
NOT_SEEN = "write plain words: marks, tags and codes like '&nbsp;' are no words on the page"


def unfinished(document: Document) -> Iterator[Diagnostic]:
    """What is left to be written anywhere in a file, and is not."""
    if not PLACEHOLDER.search(document.text):
        return
    left: list[tuple[Location, Any]] = [((), document.data)]
    while left:
        location, found = left.pop()
        if isinstance(found, str):
            if still := PLACEHOLDER.search(found):
                yield document.error(location, _stands(still[0]), TO_WRITE)
        elif isinstance(found, dict | list):
            inside = found.items() if isinstance(found, dict) else enumerate(found)
            left += [((*location, key), value) for key, value in inside]


def unseen(document: Document, at: Location, item: Part) -> Iterator[Diagnostic]:
    """Words for people that tell the reader nothing, or lose a part of what was written."""
    for location, kind, text in traverse(item, at):
        if kind is not Prose and kind is not Text:
            continue
        written = {(): text.root} if isinstance(text.root, str) else {(key,): each for key, each in text.root.items()}
        for language, words in written.items():
            place = (*location, *language)
            yield from _cut(document, place)
            if WHOLE_PLACEHOLDER.fullmatch(words) and not PLACEHOLDER.search(words):
                yield document.error(place, _stands(words.strip()), TO_WRITE)
            elif kind is Prose:
                yield from _rendered(document, place, words)


def shows_words(written: str) -> bool:
    """Whether the page shows a letter or a digit of a Markdown text.

    >>> shows_words("Lift it"), shows_words("[](term:horn)"), shows_words("<br>"), shows_words("&nbsp;")
    (True, True, False, False)
    """
    return has_words(TAG.sub("", _shown(written)))


def _shown(written: str) -> str:
    return plain(written, lambda reference: ("", reference.target))


def _stands(found: str) -> str:
    return f"'{' '.join(found.split())}' still stands here"


def _cut(document: Document, location: Location) -> Iterator[Diagnostic]:
    """Words that end at a comment: it may be the rest of them."""
    losses = document.losses
    if losses is not None and (place := document.place(location)) in losses.comments:
        comment, hint = losses.comments[place]
        yield Diagnostic(document.file, *place, "error", lost(comment), f"{hint}; put a comment on a line of its own")


def _rendered(document: Document, place: Location, written: str) -> Iterator[Diagnostic]:
    """What Markdown shows of a text."""
    if written.isascii() and written[0].isalpha() and "&" not in written and "]:" not in written:
        return  # most texts: the page shows the first letter, and nothing is written by a code or hidden
    for hidden in hidden_links(written):
        message = f"'[{hidden}]: ...' names the address of a link, and the page does not show it"
        yield document.error(place, message, "leave out the brackets, or write the link as [words](address)")
        return
    if not shows_words(written):
        yield document.error(place, "the page shows no word of this text", NOT_SEEN)
    elif turned := bidi_control(_shown(written)):
        yield document.error(place, turned, "take it out")
