"""Traverses an entry of the book and says what stands where: prose, names, references and measures.

Checks, back-links and pages all use this one traversal, so that a field added to the model is seen by all of them.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any, get_origin

from build_tools.book.memo import Memo
from build_tools.book.model.base import IsMeasure, Part, Prose, RefersTo, Text
from build_tools.book.model.table import Call, Form, Table
from build_tools.book.yaml_reader import Location

CALLS = (Call, Form, Table)
"""The parts that call a calculator."""

Located = tuple[Location, Any, Any]
"""Location, what it is (``Prose``, ``Text``, a call, :class:`RefersTo`, :class:`IsMeasure`), and the value itself."""


def traverse(part: Part, location: Location = ()) -> tuple[Located, ...]:
    """Everything of interest inside a part of the book, in the order of the fields."""
    found: list[Located] = []
    _collect(part, location, found)
    return tuple(found)


def _collect(part: Part, location: Location, found: list[Located]) -> None:
    for name, written, marker in _fields(type(part)):
        value = getattr(part, name)
        if value is not None:
            _visit(value, (*location, written), marker, found)


def _visit(value: Any, location: Location, marker: Any, found: list[Located]) -> None:
    kind = type(value)
    if kind is str:
        if marker is not None:
            found.append((location, marker, value))
    elif kind is Prose or kind is Text:
        found.append((location, kind, value))
    elif kind is list:
        for index, item in enumerate(value):
            _visit(item, (*location, index), marker, found)
    elif kind is dict:
        keys, values = (marker.keys, marker.values) if isinstance(marker, _Keyed) else (None, marker)
        for key, item in value.items():
            if keys is not None:
                found.append(((*location, key), keys, key))
            _visit(item, (*location, key), values, found)
    elif isinstance(value, Part):
        if kind in CALLS:
            found.append((location, kind, value))
        _collect(value, location, found)


@dataclass(frozen=True, slots=True)
class _Keyed:
    """The markers of a mapping: that of its keys and that of the texts under them."""

    keys: Any
    values: Any


@cache
def _fields(model: type[Part]) -> list[tuple[str, str, Any]]:
    """Field name, the name as written in YAML, and the marker of the texts in it."""
    return [
        (name, field.alias or name, _marker(field.annotation, field.metadata))
        for name, field in model.model_fields.items()
    ]


def _marker(annotation: Any, metadata: list[Any] | tuple[Any, ...]) -> Any:
    for mark in metadata:
        if isinstance(mark, RefersTo | IsMeasure):
            return mark
    if get_origin(annotation) is dict:
        keys, values = (_marker(inner, getattr(inner, "__metadata__", ())) for inner in annotation.__args__)
        return _Keyed(keys, values) if keys is not None else values
    for inner in getattr(annotation, "__args__", ()):
        found = _marker(inner, getattr(inner, "__metadata__", ()))
        if found is not None:
            return found
    return None


def traversed(part: Part, memo: Memo) -> tuple[Located, ...]:
    """The same as :func:`traverse`, remembered: several checks go over each procedure."""
    return memo.of("traverse", part, None, lambda: traverse(part))
