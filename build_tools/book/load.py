"""Reads the folder of the book: ``<trade>/<procedure>.yaml``, ``reference/<kind>/*.yaml``, ``crew/people.yaml``.

Files are remembered by their size and time, so that a preview reads again only what was edited.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from build_tools.book.book import FIELD, Book, Entry, ProcedureEntry
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.files import Stamp, is_yaml, listed_files, read_in_parallel, shown_path, stamp_of
from build_tools.book.model.base import IDENTIFIER, Part
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.reference import KINDS, Person
from build_tools.book.text_checks import unfinished, unseen
from build_tools.book.validation_messages import validation_diagnostics
from build_tools.book.yaml_reader import Document, Location, read_document

LONGEST_ID = 80
"""An id becomes the name of a page's file, and of folders in which others lie."""
NOT_TRADES = {"reference", "crew", "jobs"}
BY_HAND = "nobody can reach this page: the book is YAML alone"
NOT_BY_HAND = "write it as a procedure or as an entry of reference, or move it out of this folder"


@dataclass(slots=True)
class LoadedBook:
    """A book as far as it could be read, and the mistakes met on the way."""

    book: Book
    diagnostics: list[Diagnostic]


@dataclass(slots=True)
class DocumentCache:
    """What each file held when it was last read, by path.

    ``read_already`` holds the documents of this time that were read on several cores.
    """

    files: dict[Path, tuple[Stamp, _Parsed]] = field(default_factory=dict)
    read_already: dict[Path, tuple[Stamp, Document]] = field(default_factory=dict)


@dataclass(slots=True)
class _Parsed:
    """The entries of one file by id (``""`` for a procedure), its diagnostics, and the ids that are wrong."""

    document: Document
    items: dict[str, Part]
    diagnostics: list[Diagnostic]
    unread: list[str] = field(default_factory=list)


def load_book(folder: Path, cache: DocumentCache | None = None) -> LoadedBook:
    """Read the whole book.

    ``folder`` is shown in messages by its own name (``procedures/plumbing/toilet-set.yaml:41:7``). Files that are
    wrong are left out of the book and named in the diagnostics.
    """
    cache = cache if cache is not None else DocumentCache()
    book = Book()
    diagnostics: list[Diagnostic] = []
    if not folder.is_dir():
        return LoadedBook(book, [Diagnostic(str(folder), 1, 1, "error", "there is no such folder")])
    paths, refused = listed_files(folder)
    diagnostics += refused
    cache.read_already = read_in_parallel((path for path in paths if path not in cache.files), folder)
    for path in paths:
        inside = path.relative_to(folder)
        file = shown_path(path, folder)
        if is_yaml(path):
            diagnostics += _take_file(path, inside.parts, file, book, cache)
        elif path.suffix == ".md":
            diagnostics.append(Diagnostic(file, 1, 1, "error", BY_HAND, NOT_BY_HAND))
    cache.read_already = {}
    return LoadedBook(book, diagnostics)


def _take_file(path: Path, parts: tuple[str, ...], file: str, book: Book, cache: DocumentCache) -> list[Diagnostic]:
    match parts:
        case ("reference", kind, _) if kind in KINDS:
            parsed = _parse(path, file, KINDS[kind], cache, many=True)
            return parsed.diagnostics + _add_entries(book, kind, parsed)
        case ("crew", "people.yaml"):
            parsed = _parse(path, file, Person, cache, many=True)
            return parsed.diagnostics + _add_entries(book, "people", parsed)
        case ("jobs", name):
            parsed = _parse(path, file, Job, cache, many=False)
            return parsed.diagnostics + _add_job(book, path.stem, name, parsed)
        case (trade, name) if trade not in NOT_TRADES:
            parsed = _parse(path, file, Procedure, cache, many=False)
            return parsed.diagnostics + _add_procedure(book, trade, path.stem, name, parsed, path)
    kinds = ", ".join(sorted(KINDS))
    hint = (
        f"reference entries stand in reference/<kind>/, where kind is one of {kinds}" if parts[0] == "reference" else ""
    )
    return [
        Diagnostic(
            file,
            1,
            1,
            "error",
            "stands where the book does not look for it: procedures are <trade>/<procedure>.yaml",
            hint,
        )
    ]


def _parse(path: Path, file: str, model: type[Part], cache: DocumentCache, *, many: bool) -> _Parsed:
    stamp = stamp_of(path)
    kept = cache.files.get(path)
    if kept is not None and kept[0] == stamp:
        return kept[1]
    read, document = cache.read_already.pop(path, (None, None))
    if document is None or read != stamp:
        document = read_document(path, file)
    parsed = _parse_document(document, model, many=many)
    cache.files[path] = (stamp, parsed)
    return parsed


def _parse_document(document: Document, model: type[Part], *, many: bool) -> _Parsed:
    parsed = _Parsed(document, {}, [*document.diagnostics, *unfinished(document)])
    data = document.data
    if document.diagnostics:
        parsed.unread.append("*")
        return parsed
    if not isinstance(data, dict):
        what = "ids with their entries" if many else f"the fields of a {model.__name__.lower()}"
        parsed.diagnostics.append(document.error((), f"holds no fields: {what} are wanted, one 'name: ...' to a line"))
        parsed.unread.append("*")
        return parsed
    for name, fields in data.items() if many else [("", data)]:
        at: Location = (name,) if many else ()
        if many and (wrong := _no_id(name)):
            parsed.diagnostics.append(document.error((*at, ""), f"'{name}' {wrong}"))
            continue
        try:
            parsed.items[name] = model.model_validate(fields)
        except ValidationError as mistakes:
            parsed.unread.append(name)
            parsed.diagnostics += validation_diagnostics(document, at, mistakes, model, fields)
        else:
            parsed.diagnostics += unseen(document, at, parsed.items[name])
    return parsed


def _add_entries(book: Book, kind: str, parsed: _Parsed) -> list[Diagnostic]:
    entries: dict[str, Entry[Any]] = getattr(book, kind)
    diagnostics = []
    scheme = next(scheme for scheme, field in FIELD.items() if field == kind)
    book.unread.update((scheme, name) for name in parsed.unread)
    for name, item in parsed.items.items():
        entry = Entry(name, item, parsed.document, (name,))
        if name in entries:
            diagnostics.append(_taken(entry, name, entries[name]))
        else:
            entries[name] = entry
    return diagnostics


def _add_procedure(book: Book, trade: str, id: str, name: str, parsed: _Parsed, path: Path) -> list[Diagnostic]:
    if wrong := _no_id(id):
        return [parsed.document.error((), f"the name of the file, '{name}', {wrong}")]
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


def _add_job(book: Book, id: str, name: str, parsed: _Parsed) -> list[Diagnostic]:
    if wrong := _no_id(id):
        return [parsed.document.error((), f"the name of the file, '{name}', {wrong}")]
    if "" not in parsed.items:
        book.unread.add(("job", id))
        return []
    item = parsed.items[""]
    assert isinstance(item, Job)
    book.jobs[id] = Entry(id, item, parsed.document)
    return []


def _no_id(text: str) -> str:
    """Why a text is no id, or nothing where it is one."""
    if not re.fullmatch(IDENTIFIER, text):
        return "is not an id: small letters, digits and single hyphens"
    return f"is too long for an id: at most {LONGEST_ID} letters" if len(text) > LONGEST_ID else ""


def _taken(entry: Entry[Any], id: str, first: Entry[Any]) -> Diagnostic:
    line, _ = first.document.place(first.at)
    place = f"{first.document.file}:{line}"
    return entry.error(
        ("",) if entry.at else (), f"the id '{id}' is taken already by {place}", "give one of them another id"
    )


__all__ = ["FIELD", "DocumentCache", "LoadedBook", "load_book"]
