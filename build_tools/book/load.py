"""Reads the folder of the book: ``<trade>/<procedure>.yaml``, ``reference/<kind>/*.yaml``, ``crew/people.yaml``.

Files are remembered by their size and time, so that a preview reads again only what was edited.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError

from build_tools.book.book import FIELD, Book, Entry, ProcedureEntry
from build_tools.book.files import Stamp, is_yaml, read_ahead, shown_path, stamp_of
from build_tools.book.model.base import IDENTIFIER, Part
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.reference import KINDS, Person
from build_tools.book.problems import Problem, did_you_mean
from build_tools.book.yaml_reader import Document, Location, read_document

NOT_TRADES = {"reference", "crew", "jobs"}
BY_HAND = "nobody can reach this page: the book is YAML alone"
NOT_BY_HAND = "write it as a procedure or as an entry of reference, or move it out of this folder"


@dataclass(slots=True)
class Loaded:
    """A book as far as it could be read, and the mistakes met on the way."""

    book: Book
    problems: list[Problem]


@dataclass(slots=True)
class Cache:
    """What each file held when it was last read, by path.

    ``ahead`` holds the documents of this time that were read on several cores.
    """

    files: dict[Path, tuple[Stamp, _Parsed]] = field(default_factory=dict)
    ahead: dict[Path, tuple[Stamp, Document]] = field(default_factory=dict)


@dataclass(slots=True)
class _Parsed:
    """The entries of one file by id (``""`` for a procedure), its problems, and the ids that are wrong."""

    document: Document
    items: dict[str, Part]
    problems: list[Problem]
    unread: list[str] = field(default_factory=list)


def load_book(folder: Path, cache: Cache | None = None) -> Loaded:
    """Read the whole book.

    ``folder`` is shown in messages by its own name (``procedures/plumbing/toilet-set.yaml:41:7``). Files that are
    wrong are left out of the book and named in the problems.
    """
    cache = cache if cache is not None else Cache()
    book = Book()
    problems: list[Problem] = []
    if not folder.is_dir():
        return Loaded(book, [Problem(str(folder), 1, 1, "error", "there is no such folder")])
    paths = sorted(folder.rglob("*"))
    cache.ahead = read_ahead((path for path in paths if path not in cache.files), folder)
    for path in paths:
        inside = path.relative_to(folder)
        file = shown_path(path, folder)
        if any(part.startswith(".") for part in inside.parts):
            continue
        if is_yaml(path):
            problems += _take_file(path, inside.parts, file, book, cache)
        elif path.suffix == ".md":
            problems.append(Problem(file, 1, 1, "error", BY_HAND, NOT_BY_HAND))
    cache.ahead = {}
    return Loaded(book, problems)


def _take_file(path: Path, parts: tuple[str, ...], file: str, book: Book, cache: Cache) -> list[Problem]:
    match parts:
        case ("reference", kind, _) if kind in KINDS:
            parsed = _parse(path, file, KINDS[kind], cache, many=True)
            return parsed.problems + _add_entries(book, kind, parsed)
        case ("crew", "people.yaml"):
            parsed = _parse(path, file, Person, cache, many=True)
            return parsed.problems + _add_entries(book, "people", parsed)
        case ("jobs", name):
            parsed = _parse(path, file, Job, cache, many=False)
            return parsed.problems + _add_job(book, path.stem, name, parsed)
        case (trade, name) if trade not in NOT_TRADES:
            parsed = _parse(path, file, Procedure, cache, many=False)
            return parsed.problems + _add_procedure(book, trade, path.stem, name, parsed, path)
    kinds = ", ".join(sorted(KINDS))
    hint = (
        f"reference entries stand in reference/<kind>/, where kind is one of {kinds}" if parts[0] == "reference" else ""
    )
    return [
        Problem(
            file,
            1,
            1,
            "error",
            "stands where the book does not look for it: procedures are <trade>/<procedure>.yaml",
            hint,
        )
    ]


def _parse(path: Path, file: str, model: type[Part], cache: Cache, *, many: bool) -> _Parsed:
    stamp = stamp_of(path)
    kept = cache.files.get(path)
    if kept is not None and kept[0] == stamp:
        return kept[1]
    read, document = cache.ahead.pop(path, (None, None))
    if document is None or read != stamp:
        document = read_document(path, file)
    parsed = _parse_document(document, model, many=many)
    cache.files[path] = (stamp, parsed)
    return parsed


def _parse_document(document: Document, model: type[Part], *, many: bool) -> _Parsed:
    parsed = _Parsed(document, {}, list(document.problems))
    data = document.data
    if document.problems:
        parsed.unread.append("*")
        return parsed
    if not isinstance(data, dict):
        what = "ids with their entries" if many else "the fields of a procedure"
        parsed.problems.append(document.error((), f"holds no mapping: {what} are wanted, one 'name: ...' a line"))
        parsed.unread.append("*")
        return parsed
    for name, fields in data.items() if many else [("", data)]:
        at: Location = (name,) if many else ()
        if many and not re.fullmatch(IDENTIFIER, name):
            parsed.problems.append(
                document.error((*at, ""), f"'{name}' is not an id: small letters, digits and single hyphens")
            )
            continue
        try:
            parsed.items[name] = model.model_validate(fields)
        except ValidationError as mistakes:
            parsed.unread.append(name)
            parsed.problems += [_explained(document, at, mistake, model, fields) for mistake in _once(mistakes, fields)]
    return parsed


def _add_entries(book: Book, kind: str, parsed: _Parsed) -> list[Problem]:
    entries: dict[str, Entry[Any]] = getattr(book, kind)
    problems = []
    scheme = next(scheme for scheme, field in FIELD.items() if field == kind)
    book.unread.update((scheme, name) for name in parsed.unread)
    for name, item in parsed.items.items():
        entry = Entry(name, item, parsed.document, (name,))
        if name in entries:
            problems.append(_taken(entry, name, entries[name]))
        else:
            entries[name] = entry
    return problems


def _add_procedure(book: Book, trade: str, id: str, name: str, parsed: _Parsed, path: Path) -> list[Problem]:
    if not re.fullmatch(IDENTIFIER, id):
        return [
            parsed.document.error(
                (), f"the name of the file, '{name}', is not an id: small letters, digits and single hyphens"
            )
        ]
    if "" not in parsed.items:
        book.unread.add(("procedure", id))
        return []
    item = parsed.items[""]
    assert isinstance(item, Procedure)
    entry = ProcedureEntry(id, item, parsed.document, (), trade, str(path.parent))
    if id in book.procedures:
        return [_taken(entry, id, book.procedures[id])]
    book.procedures[id] = entry
    return []


def _add_job(book: Book, id: str, name: str, parsed: _Parsed) -> list[Problem]:
    if not re.fullmatch(IDENTIFIER, id):
        return [parsed.document.error((), f"the name of the file, '{name}', is not an id")]
    if "" not in parsed.items:
        book.unread.add(("job", id))
        return []
    item = parsed.items[""]
    assert isinstance(item, Job)
    book.jobs[id] = Entry(id, item, parsed.document)
    return []


def _taken(entry: Entry[Any], id: str, first: Entry[Any]) -> Problem:
    line, _ = first.document.place(first.at)
    place = f"{first.document.file}:{line}"
    return entry.error(
        ("",) if entry.at else (), f"the id '{id}' is taken already by {place}", "give one of them another id"
    )


def _once(mistakes: ValidationError, data: Any) -> list[dict[str, Any]]:
    """Pydantic's mistakes, one a field: of a field that may take several shapes, the one that came nearest."""
    kept: dict[Location, dict[str, Any]] = {}
    for mistake in mistakes.errors(include_url=False):
        where = _existing(data, mistake["loc"])
        if mistake["type"] == "missing":
            where = (*where, str(mistake["loc"][-1]))
        kept.setdefault(where, dict(mistake))
    return [
        mistake
        for where, mistake in kept.items()
        if not any(other[: len(where)] == where and other != where for other in kept)
    ]


def _explained(document: Document, at: Location, mistake: dict[str, Any], model: type[Part], data: Any) -> Problem:
    """Pydantic's mistake in the words of the book."""
    location = _existing(data, mistake["loc"])
    given = mistake.get("input")
    last = str(mistake["loc"][-1]) if mistake["loc"] else ""
    match mistake["type"]:
        case "extra_forbidden":
            known = _fields_at(model, mistake["loc"][:-1])
            hint = did_you_mean(last, known) or (f"known here: {', '.join(sorted(known))}" if known else "")
            return document.error((*at, *location, ""), f"there is no field '{last}' here", hint)
        case "missing":
            where = f" of '{location[-1]}'" if location and isinstance(location[-1], str) else ""
            return document.error((*at, *location), f"the field '{last}'{where} is missing")
        case "literal_error":
            expected = mistake["ctx"]["expected"]
            words = re.findall(r"'((?:[^'\\]|\\.)*?)'(?:,| or|$)", expected)
            return document.error(
                (*at, *location),
                f"'{given}' is not one of {expected}",
                did_you_mean(str(given), words),
            )
        case "string_pattern_mismatch":
            return document.error(
                (*at, *location), f"'{given}' is not a name here: small letters, digits and single hyphens are wanted"
            )
        case "value_error":
            return document.error((*at, *location), str(mistake["ctx"]["error"]))
        case "too_short":
            return document.error((*at, *location), f"'{last}' is empty; at least one is wanted")
    shown = "nothing" if given is None else f"'{given}'" if isinstance(given, str) else f"a {_shape(given)}"
    return document.error((*at, *location), f"{shown} does not fit '{_field(location)}': {_wanted(mistake)}")


def _wanted(mistake: dict[str, Any]) -> str:
    words = {
        "string_type": "a text is wanted",
        "list_type": "a list is wanted, each item after a hyphen",
        "dict_type": "a mapping is wanted",
        "model_type": "a mapping is wanted, one 'name: ...' a line",
        "int_parsing": "a whole number is wanted",
        "greater_than": "a number above nought is wanted",
        "bool_parsing": "true or false is wanted",
        "date_from_datetime_parsing": "a date is wanted, like 2026-03-14",
        "date_type": "a date is wanted, like 2026-03-14",
        "date_parsing": "a date is wanted, like 2026-03-14",
    }
    return words.get(mistake["type"], str(mistake["msg"]).lower())


def _shape(given: Any) -> str:
    return "list" if isinstance(given, list) else "mapping" if isinstance(given, dict) else type(given).__name__


def _field(location: Location) -> str:
    return ".".join(str(part + 1) if isinstance(part, int) else part for part in location) or "file"


def _existing(data: Any, loc: tuple[Any, ...]) -> Location:
    """The part of pydantic's location that names fields which were written."""
    location: list[str | int] = []
    for part in loc:
        in_list = isinstance(data, list) and isinstance(part, int) and part < len(data)
        if in_list or (isinstance(data, dict) and part in data):
            location.append(part)
            data = data[part]
    return tuple(location)


def _fields_at(model: type[BaseModel], loc: tuple[Any, ...]) -> list[str]:
    """The names of the fields that may stand at that location of a model."""
    models = [model]
    for part in loc:
        if isinstance(part, int):
            continue
        models = _models_below(models, part) or models
    names = []
    for found in models:
        names += [field.alias or name for name, field in found.model_fields.items()]
    return names


def _models_below(models: list[type[BaseModel]], part: str) -> list[type[BaseModel]]:
    found: list[type[BaseModel]] = []
    for model in models:
        if model.__name__ == part:
            return [model]
        for name, declared in model.model_fields.items():
            if part in (name, declared.alias):
                found += _models_in(declared.annotation)
    return found


def _models_in(annotation: Any) -> list[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [annotation]
    return [model for inner in getattr(annotation, "__args__", ()) for model in _models_in(inner)]


__all__ = ["FIELD", "Cache", "Loaded", "load_book"]
