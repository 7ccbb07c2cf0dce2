"""Reads YAML safely, keeping each scalar as the text that was written and the place of everything.

The book's rules are narrower than YAML's, because YAML walks this trade into traps: ``1:48`` unquoted is a number to
base 60, ``1.10`` loses its nought, ``no`` is a boolean, and a repeated key silently wins. Here every scalar is text
(``~``, ``null`` and an empty one are nothing), and the model says later what it means. Repeated keys, anchors,
aliases, tags and merge keys are refused, each with its place and what to write instead.

The tree is built from the parser's events in a loop, so no depth of nesting can exhaust the stack.
"""

from __future__ import annotations

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

from build_tools.book.problems import Problem

LARGEST = 2_000_000
"""Bytes: a procedure is some ten thousand; what is a hundred times that is no procedure."""
DEEPEST = 40
NOTHING = {"", "~", "null"}
_Loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

Place = tuple[int, int]
Location = tuple[str | int, ...]


@dataclass(slots=True)
class Document:
    """One YAML file: its data, the problems met while reading, and where everything stands.

    ``file`` is the path as it is shown to people.
    """

    file: str
    text: str
    data: Any = None
    problems: list[Problem] = field(default_factory=list)
    _places: dict[Location, Place] | None = None

    def place(self, location: Location) -> Place:
        """Line and column of that field, counted from 1; of the nearest thing around it where it is absent."""
        if self._places is None:
            self._places = _Tree(self.file, self.text, with_places=True).places
        while location and location not in self._places:
            location = location[:-1]
        return self._places.get(location, (1, 1))

    def error(self, location: Location, message: str, hint: str = "") -> Problem:
        """An error at that field."""
        return Problem(self.file, *self.place(location), "error", message, hint)

    def warning(self, location: Location, message: str, hint: str = "") -> Problem:
        """A warning at that field."""
        return Problem(self.file, *self.place(location), "warning", message, hint)


def read_document(path: Path, file: str) -> Document:
    """Read one file. A file that cannot be read at all gives a document without data and with the problem."""
    try:
        raw = path.read_bytes()
    except OSError as problem:
        return _refused(file, f"cannot be read: {problem.strerror or problem}")
    if len(raw) > LARGEST:
        return _refused(file, f"is {len(raw) / 1e6:.1f} MB long; a file of the book has at most {LARGEST / 1e6:.0f} MB")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        before = raw[: problem.start]
        line = before.count(b"\n") + 1
        column = len(before) - before.rfind(b"\n")
        return Document(
            file,
            "",
            problems=[Problem(file, line, column, "error", "is not UTF-8 text here", "save the file as UTF-8")],
        )
    return read_text(text, file)


def read_text(text: str, file: str) -> Document:
    """Read YAML text; ``file`` is its name in messages.

    >>> read_text("slope: 1:48", "demo.yaml").data
    {'slope': '1:48'}
    """
    tree = _Tree(file, text, with_places=False)
    return Document(file, text, tree.data, tree.problems)


def _refused(file: str, message: str) -> Document:
    return Document(file, "", problems=[Problem(file, 1, 1, "error", message)])


@dataclass(slots=True)
class _Open:
    """A mapping or sequence that is being filled. ``keys`` holds where each key of a mapping stands."""

    items: dict[str, Any] | list[Any]
    location: Location
    key: str | None = None
    keys: dict[str, Any] = field(default_factory=dict)
    skip: bool = False


class _Tree:
    """Builds the data from the parser's events, and where asked the place of every field."""

    def __init__(self, file: str, text: str, *, with_places: bool) -> None:
        self.file = file
        self.data: Any = None
        self.problems: list[Problem] = []
        self.places: dict[Location, Place] = {}
        self._with_places = with_places
        self._stack: list[_Open] = []
        self._documents = 0
        self._ended = False
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
            for event in yaml.parse(text, Loader=_Loader):
                if type(event) in take:
                    take[type(event)](event)
                if self._ended:
                    break
        except yaml.MarkedYAMLError as problem:
            mark = problem.problem_mark or problem.context_mark
            said = " ".join(part for part in (problem.context, problem.problem) if part)
            self._error(mark, f"is not YAML: {said}", _mend(said))
        except yaml.YAMLError as problem:
            position = getattr(problem, "position", 0)
            before = text[:position]
            place = (before.count("\n") + 1, position - before.rfind("\n"))
            self.problems.append(Problem(file, *place, "error", "holds a character that YAML does not allow"))
        if self.problems:
            self.data = None

    def _error(self, mark: Any, message: str, hint: str = "") -> None:
        line, column = (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)
        self.problems.append(Problem(self.file, line, column, "error", message, hint))

    def _scalar(self, event: Any) -> None:
        if event.anchor is not None or event.tag is not None:
            self._refuse_marks(event)
        text = event.value
        plain = event.style is None
        self._put(None if plain and text in NOTHING else text, event.start_mark, text)

    def _start(self, event: Any) -> None:
        if event.anchor is not None or event.tag is not None:
            self._refuse_marks(event)
        if len(self._stack) >= DEEPEST:
            self._error(event.start_mark, f"is nested more than {DEEPEST} deep")
            self._ended = True
            return
        items: dict[str, Any] | list[Any] = {} if isinstance(event, MappingStartEvent) else []
        self._stack.append(_Open(items, self._put(items, event.start_mark, None)))

    def _end(self, event: Any) -> None:
        self._stack.pop()

    def _alias(self, event: Any) -> None:
        self._error(event.start_mark, f"an alias ('*{event.anchor}') is not used in this book", "write it out")
        self._put(None, event.start_mark, f"*{event.anchor}")

    def _document(self, event: Any) -> None:
        self._documents += 1
        if self._documents > 1:
            self._error(event.start_mark, "starts a second document ('---')", "put it into a file of its own")
            self._ended = True

    def _refuse_marks(self, event: Any) -> None:
        if event.anchor is not None:
            self._error(event.start_mark, f"an anchor ('&{event.anchor}') is not used in this book", "leave it out")
        if event.tag not in (None, "!"):
            self._error(event.start_mark, f"a tag ('{event.tag}') is not used in this book", "leave it out")

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
            self._error(mark, "a key must be a plain word", "put the list or mapping after a key and a colon")
            key = "?"
        if key == "<<":
            self._error(mark, "a merge key ('<<') is not used in this book", "write the fields out")
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


def _mend(said: str) -> str:
    if "mapping values are not allowed" in said:
        return "text that holds ': ' stands in quotes, or after '>-' on lines of its own"
    if "cannot start any token" in said and "\\t" in said:
        return "indent with spaces, not tabs"
    if "could not find expected ':'" in said:
        return "a key is followed by a colon and a space; go on with long text indented, after '>-'"
    if "did not find expected" in said:
        return "look at the indentation and the quotes of this line and the one before"
    return ""
