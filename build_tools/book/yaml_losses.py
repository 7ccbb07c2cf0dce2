"""What YAML would lose or join without a word: text after ``#``, a figure cut by a comma, an item glued to a text.

The parser takes each of these for something that was meant. A text in quotes ends with them, and one after ``>-`` with
its indentation: what was written behind it as its rest is lost like that of a plain one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from build_tools.book.yaml_errors import FIELD, LONG, quoted

Place = tuple[int, int]
Found = tuple[Place, str, str]
"""Line and column from 1, message, hint."""

CUT_FIGURE = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")
COMMENT = re.compile(r"\S[ \t]+#|[ \t]+#(?=\S)")
AFTER_ITEM = re.compile(r"[,\]}]")
ITEM_CUT = re.compile(r"[ \t]*,[ \t]+(#\S.*)")
BLOCKS = ("|", ">")
BLOCK = re.compile(r"[|>][+-]?(?P<figure>\d?)[+-]?[ \t]*(?P<words>#.*)?")
AFTER = re.compile(r"[ \t]*(#.*)")


class Losses:
    """Looks at the scalars of one text.

    ``comments`` holds, by the place of a value, the comment after it and the hint that keeps it: where the value is
    words for people, it may be the rest of them, which the model alone can tell. ``suspect`` are the lines, from 0, in
    or below which a comment or a figure may be cut off: a scalar of one line need not be looked at elsewhere.
    """

    def __init__(self, text: str) -> None:
        self.comments: dict[Place, tuple[str, str]] = {}
        self._lines = text.splitlines()
        self.suspect: set[int] = set()
        for number, line in enumerate(self._lines):
            if ("#" in line and COMMENT.search(line)) or ("," in line and CUT_FIGURE.search(line)):
                self.suspect.update((number - 1, number))

    def of(self, event: Any, *, is_key: bool, in_brackets: bool) -> Iterator[Found]:
        """What is lost at a scalar. ``in_brackets``: it is an item of ``[...]`` or ``{...}``, and ends with that."""
        start, end = event.start_mark, event.end_mark
        if event.style in BLOCKS:
            yield from self._block(event)
            return
        if not event.style:
            yield from self._cut_figure(start)
        if is_key:
            return
        if not event.style:
            yield from self._glued_item(start, end)
        after = AFTER.match(self._line(end.line), end.column)
        if after:
            place = (end.line + 1, after.start(1) + 1)
            yield from self._comment(event, after[1].rstrip(), place, in_brackets=in_brackets)
        elif not in_brackets:
            yield from self._comment_below(event)
        elif item := ITEM_CUT.match(self._line(end.line), end.column):
            place = (end.line + 1, item.start(1) + 1)
            yield place, lost(item[1].rstrip()), in_quotes(AFTER_ITEM.split(item[1])[0])

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

    def _comment(self, event: Any, comment: str, place: Place, *, in_brackets: bool) -> Iterator[Found]:
        rest = [AFTER_ITEM.split(comment)[0]] if in_brackets else [comment, *self._deeper(event, place[0])]
        hint = in_quotes(event.value, *rest)
        if not event.value and not event.style:
            yield place, f"there is no value here, only the comment '{comment}'", f"if it is the text, {hint}"
        elif comment[1:2].strip():
            yield place, lost(comment), hint
        else:
            self.comments[event.start_mark.line + 1, event.start_mark.column + 1] = comment, hint

    def _comment_below(self, event: Any) -> Iterator[Found]:
        number = event.end_mark.line + 1
        below = re.match(r"[ \t]+#(?=\S)", self._line(number))
        if below and (rest := self._deeper(event, number)):
            hint = f"{in_quotes(event.value, *rest)}; a comment has a space after its '#'"
            yield (number + 1, below.end()), lost(self._line(number).strip()), hint

    def _deeper(self, event: Any, number: int) -> list[str]:
        """The lines from that one on, counted from 0, that are indented like further lines of a text."""
        field = FIELD.match(self._line(event.start_mark.line))
        if field is None:
            return []
        least = len(field["before"]) + (field["name"] is not None)
        lines: list[str] = []
        for line in self._lines[number:]:
            if not line.strip() or len(line) - len(line.lstrip()) < least:
                break
            lines.append(line.strip())
        return lines

    def _block(self, event: Any) -> Iterator[Found]:
        """A text after ``>-``: what stands beside the sign, and a line below that is not indented like the text."""
        start, number = event.start_mark, event.end_mark.line
        header = BLOCK.match(self._line(start.line), start.column)
        if header is None:
            return
        place = (start.line + 1, start.column + 1)
        if header["figure"]:
            message = f"the {header['figure']} after '{event.style}' is taken for an indentation and left out"
            yield place, message, in_quotes(header["figure"], header["words"] or "", event.value)
        elif header["words"]:
            comment, hint = header["words"].rstrip(), in_quotes(header["words"], event.value)
            if comment[1:2].strip():
                yield (start.line + 1, header.start("words") + 1), lost(comment), hint
            else:
                self.comments[place] = comment, hint
        rest = self._deeper(event, number) if self._line(number).lstrip().startswith("#") else []
        if rest:
            several = "\n" in event.value.strip()
            hint = "indent it like the lines of the text above it" if several else in_quotes(event.value, *rest)
            line = self._line(number)
            yield (number + 1, len(line) - len(line.lstrip()) + 1), lost(line.strip()), hint


def in_quotes(*parts: str) -> str:
    """The hint that shows a text of several parts as one, in quotes."""
    return f"write it in quotes: {quoted(' '.join(' '.join(parts).split()))}"


def lost(comment: str) -> str:
    """The message for words that are taken as a comment."""
    return f"'{comment}' is taken as a comment and left out"
