"""Reads YAML safely, keeping each scalar as the text that was written and the place of everything.

The book's rules are narrower than YAML's, because YAML walks this trade into traps: ``1:48`` unquoted is a number to
base 60, ``1.10`` loses its zero, ``no`` is a boolean, and a repeated key silently wins. Here every scalar is text
(``~``, ``null`` and an empty one are nothing), and the model says later what it means. Repeated keys, anchors,
aliases, tags and merge keys are refused, each with its place and what to write instead. So is what YAML would lose or
join without a word: text after `` #``, a figure like ``48,613`` in brackets, a list item glued to the text above it.

The tree is built from the parser's events in a loop, so no depth of nesting can exhaust the stack.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml
from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from build_tools.book.content import FileRefused, content_of
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.visible_text import bidi_control
from build_tools.book.yaml_errors import explain_error
from build_tools.book.yaml_losses import Losses

LARGEST = 2_000_000
"""Bytes: a procedure is some ten thousand; what is a hundred times that is no procedure."""
DEEPEST = 40
NOTHING = {"", "~", "null", "Null", "NULL"}
CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ufffe\uffff]")
"""What no page, workbook or calendar can hold. A text gets it through an escape in double quotes."""
NOT_YAML = re.compile("[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_Loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

Place = tuple[int, int]
Location = tuple[str | int, ...]


@dataclass(slots=True)
class Document:
    """One YAML file: its data, the diagnostics met while reading, and where everything stands.

    ``file`` is the path as it is shown to people. ``losses`` knows the comments that follow
    values, where there are any.
    """

    file: str
    text: str
    data: Any = None
    diagnostics: list[Diagnostic] = field(default_factory=list)
    losses: Losses | None = None
    _places: dict[Location, Place] | None = None

    def place(self, location: Location) -> Place:
        """Line and column of that field, counted from 1; of the nearest thing around it where it is absent."""
        if self._places is None:
            self._places = _Tree(self.file, self.text, with_places=True).places
        while location and location not in self._places:
            location = location[:-1]
        return self._places.get(location, (1, 1))

    def error(self, location: Location, message: str, hint: str = "") -> Diagnostic:
        """An error at that field."""
        return Diagnostic(self.file, *self.place(location), "error", message, hint)

    def warning(self, location: Location, message: str, hint: str = "") -> Diagnostic:
        """A warning at that field."""
        return Diagnostic(self.file, *self.place(location), "warning", message, hint)


def read_document(path: Path, file: str) -> Document:
    """Read one file. A file that cannot be read at all gives a document without data and with the diagnostic."""
    try:
        raw = content_of(path, LARGEST)
    except FileRefused as error:
        return _refused(file, error.strerror)
    except OSError as error:
        return _refused(file, f"cannot be read: {error.strerror or error}")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = error.object[: error.start].decode("utf-8")
        place = _end_of(before)
        return Document(
            file,
            "",
            diagnostics=[Diagnostic(file, *place, "error", "is not UTF-8 text here", "save the file as UTF-8")],
        )
    return read_text(text, file)


def _end_of(text: str) -> Place:
    """Line and column of the character that stands behind this text."""
    lines = f"{text}.".splitlines()
    return len(lines), len(lines[-1])


def read_text(text: str, file: str) -> Document:
    """Read YAML text; ``file`` is its name in messages.

    >>> read_text("slope: 1:48", "demo.yaml").data
    {'slope': '1:48'}
    """
    tree = _Tree(file, text, with_places=False)
    losses = tree.losses if tree.losses and tree.losses.comments else None
    return Document(file, text, tree.data, tree.diagnostics, losses)


def _refused(file: str, message: str) -> Document:
    return Document(file, "", diagnostics=[Diagnostic(file, 1, 1, "error", message)])


@dataclass(slots=True)
class _Open:
    """A mapping or sequence that is being filled. ``keys`` holds where each key of a mapping stands.

    ``flow``: it stands in brackets.
    """

    items: dict[str, Any] | list[Any]
    location: Location
    key: str | None = None
    keys: dict[str, Any] = field(default_factory=dict)
    skip: bool = False
    flow: bool = False


class _Tree:
    """Builds the data from the parser's events, and where asked the place of every field."""

    def __init__(self, file: str, text: str, *, with_places: bool) -> None:
        self.file = file
        self.data: Any = None
        self.diagnostics: list[Diagnostic] = []
        self.places: dict[Location, Place] = {}
        self._with_places = with_places
        self._stack: list[_Open] = []
        self._documents = 0
        self._ended = False
        self.losses = None if with_places else Losses(text)
        take: dict[type, Callable[[Any], None]] = {
            ScalarEvent: self._scalar,
            MappingStartEvent: self._start,
            SequenceStartEvent: self._start,
            MappingEndEvent: self._end,
            SequenceEndEvent: self._end,
            AliasEvent: self._alias,
            DocumentStartEvent: self._document,
        }
        try:
            loader = _Loader(text)  # `yaml.parse` asks it twice for each event
            while not self._ended and (event := loader.get_event()) is not None:
                if type(event) in take:
                    take[type(event)](event)
        except yaml.MarkedYAMLError as error:
            line, column, message, hint = explain_error(text, error)
            if not self.diagnostics:  # a bracket or a line that was lost above is missed here
                self.diagnostics.append(Diagnostic(file, line, column, "error", message, hint))
        except yaml.YAMLError:
            wrong = NOT_YAML.search(text)
            self._control(text[: wrong.start()] if wrong else "", wrong[0] if wrong else "")
        if self.diagnostics:
            self.data = None

    def _error(self, mark: Any, message: str, hint: str = "") -> None:
        line, column = (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)
        self.diagnostics.append(Diagnostic(self.file, line, column, "error", message, hint))

    def _control(self, before: str, sign: str) -> None:
        line, column = _end_of(before)
        message = f"holds a control character (U+{ord(sign):04X})" if sign else "holds a character that YAML refuses"
        self.diagnostics.append(Diagnostic(self.file, line, column, "error", message, "take it out"))

    def _scalar(self, event: Any) -> None:
        if event.anchor is not None or event.tag is not None:
            self._refuse_marks(event)
        text = event.value
        plain = not event.style  # '' from the parser that is written in C, None from that in Python
        if event.style == '"' and (wrong := CONTROL.search(text)):
            self._error(event.start_mark, f"holds a control character (U+{ord(wrong[0]):04X})", "take it out")
        if wrong_way := bidi_control(text):
            self._error(event.start_mark, wrong_way, "take it out")
        losses = self.losses
        if losses is None or (
            event.start_mark.line not in losses.suspect and event.start_mark.line == event.end_mark.line
        ):
            self._put(None if plain and text in NOTHING else text, event.start_mark, text)
            return
        inside = self._stack[-1] if self._stack else None
        is_key = inside is not None and isinstance(inside.items, dict) and inside.key is None
        for place, message, hint in losses.of(event, is_key=is_key, in_brackets=inside is not None and inside.flow):
            self.diagnostics.append(Diagnostic(self.file, *place, "error", message, hint))
        self._put(None if plain and text in NOTHING else text, event.start_mark, text)

    def _start(self, event: Any) -> None:
        if event.anchor is not None or event.tag is not None:
            self._refuse_marks(event)
        if len(self._stack) >= DEEPEST:
            self._error(event.start_mark, f"is nested more than {DEEPEST} deep")
            self._ended = True
            return
        items: dict[str, Any] | list[Any] = {} if isinstance(event, MappingStartEvent) else []
        self._stack.append(_Open(items, self._put(items, event.start_mark, None), flow=event.flow_style))

    def _end(self, event: Any) -> None:
        self._stack.pop()

    def _alias(self, event: Any) -> None:
        self._error(event.start_mark, f"an alias ('*{event.anchor}') is not used in this book", _in_quotes("*"))
        self._put(None, event.start_mark, f"*{event.anchor}")

    def _document(self, event: Any) -> None:
        self._documents += 1
        if self._documents > 1:
            self._error(event.start_mark, "starts a second document ('---')", "put it into a file of its own")
            self._ended = True

    def _refuse_marks(self, event: Any) -> None:
        if event.anchor is not None:
            self._error(event.start_mark, f"an anchor ('&{event.anchor}') is not used in this book", _in_quotes("&"))
        if event.tag is not None:
            self._error(event.start_mark, f"a tag ('{event.tag}') is not used in this book", _in_quotes("!"))

    def _put(self, value: Any, mark: Any, text: str | None) -> Location:
        """Put a value where it belongs and say its location; a scalar, whose text is given, may turn out to be a key.

        Locations are made only where places are asked for.
        """
        if not self._stack:
            self.data = value
            return self._note((), mark)
        inside = self._stack[-1]
        if isinstance(inside.items, list):
            inside.items.append(value)
            return self._note((*inside.location, len(inside.items) - 1), mark) if self._with_places else ()
        if inside.key is None:
            self._take_key(inside, text, mark)
            return ()
        key, inside.key = inside.key, None
        if not inside.skip:
            inside.items[key] = value
        if not self._with_places:
            return ()
        location = (*inside.location, key)
        return location if inside.skip else self._note(location, mark)

    def _take_key(self, inside: _Open, key: str | None, mark: Any) -> None:
        if key is None:
            self._error(
                mark, "a name is wanted here, not a list or a group", "put a text that begins with a bracket in quotes"
            )
            key = "?"
        if key == "<<":
            self._error(mark, "a merge key ('<<') is not used in this book", "write the fields out")
        if key.strip() != key:
            odd = ord(key[0] if key[0].isspace() else key[-1])
            message = f"'{key.strip()}' stands beside a space that is not a plain one (U+{odd:04X})"
            self._error(mark, message, "indent with plain spaces, and take other ones out")
        inside.key = key
        inside.skip = key in inside.keys
        if inside.skip:
            first = inside.keys[key].line + 1
            self._error(mark, f"'{key}' is written twice; it stands already in line {first}", "keep one")
            return
        inside.keys[key] = mark
        if self._with_places:
            self._note((*inside.location, key, ""), mark)

    def _note(self, location: Location, mark: Any) -> Location:
        if self._with_places:
            self.places[location] = (mark.line + 1, mark.column + 1)
        return location


def _in_quotes(sign: str) -> str:
    return f"leave it out; put a text that begins with '{sign}' in quotes"
