"""What YAML would lose or join without a word: text after ``#``, a figure cut by a comma, an item glued to a text.

The parser takes each of these for something that was meant. Looked at are plain scalars alone: a text in quotes, or
after ``>-``, is taken as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from build_tools.book.yaml_mistakes import FIELD, LONG, quoted

Place = tuple[int, int]
Found = tuple[Place, str, str]
"""Line and column from 1, message, hint."""

CUT_FIGURE = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")
COMMENT = re.compile(r"\S[ \t]+#|[ \t]+#(?=\S)")
AFTER = re.compile(r"[ \t]*(#.*)")


class Losses:
    """Looks at the plain scalars of one text.

    ``comments`` holds, by the place of a value, the comment after it: where the value is words for people, it may be
    the rest of them, which the model alone can tell. ``suspect`` are the lines, from 0, in or below which a comment or
    a figure may be cut off: a scalar of one line need not be looked at elsewhere.
    """

    def __init__(self, text: str) -> None:
        self.comments: dict[Place, str] = {}
        self._lines = text.splitlines()
        self.suspect: set[int] = set()
        for number, line in enumerate(self._lines):
            if ("#" in line and COMMENT.search(line)) or ("," in line and CUT_FIGURE.search(line)):
                self.suspect.update((number - 1, number))

    def of(self, event: Any, *, is_key: bool) -> Iterator[Found]:
        """What is lost at a plain scalar."""
        start, end = event.start_mark, event.end_mark
        yield from self._cut_figure(start)
        if is_key:
            return
        yield from self._glued_item(start, end)
        after = AFTER.match(self._line(end.line), end.column)
        if after:
            yield from self._comment(event, after[1].rstrip(), (end.line + 1, after.start(1) + 1))
        else:
            yield from self._comment_below(start, end)

    def _line(self, number: int) -> str:
        return self._lines[number] if number < len(self._lines) else ""

    def _cut_figure(self, start: Any) -> Iterator[Found]:
        if CUT_FIGURE.match(self._line(start.line), start.column - 1):
            message = "a comma between brackets separates two items: here it cuts a figure"
            hint = "write the figure without the comma, or in quotes; put a space after a comma between two items"
            yield (start.line + 1, start.column), message, hint

    def _glued_item(self, start: Any, end: Any) -> Iterator[Found]:
        for number in range(start.line + 1, end.line + 1):
            item = re.match(r"[ \t]*- ", self._line(number))
            if item:
                hint = f"indent it like the first item of its list; put a text of several lines in quotes, {LONG}"
                yield (number + 1, item.end() - 1), "this item is indented as part of the text above it", hint
                return

    def _comment(self, event: Any, comment: str, place: Place) -> Iterator[Found]:
        start = event.start_mark
        hint = self.hint((start.line + 1, start.column + 1))
        if not event.value:
            yield place, f"there is no value here, only the comment '{comment}'", f"if it is the text, {hint}"
        elif comment[1:2].strip():
            yield place, lost(comment), hint
        else:
            self.comments[start.line + 1, start.column + 1] = comment

    def hint(self, place: Place) -> str:
        """How the value at that place is written with all that follows it."""
        line = self._line(place[0] - 1)
        return f"write it in quotes: {quoted(line[place[1] - 1 :].strip())}"

    def _comment_below(self, start: Any, end: Any) -> Iterator[Found]:
        below = re.match(r"[ \t]+#(?=\S)", self._line(end.line + 1))
        field = FIELD.match(self._line(start.line)) if below else None
        if below is None or field is None:
            return
        deeper = below.end() - 1 - len(field["before"])
        if deeper > 0 or (deeper == 0 and field["name"] is None):
            hint = f"put the whole text in quotes, {LONG}; a comment has a space after its '#'"
            yield (end.line + 2, below.end()), lost(self._line(end.line + 1).strip()), hint


def lost(comment: str) -> str:
    """The message for words that are taken as a comment."""
    return f"'{comment}' is taken as a comment and left out"
