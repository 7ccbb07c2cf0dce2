"""Photos and drawings are files beside the YAML file, neither missing nor huge; drawings draw and do nothing else."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.content import NO_FILE, content_of
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.files import OUTSIDE, leads_out
from build_tools.book.svg import Drawing

PHOTOS = (".jpg", ".jpeg", ".png", ".webp")
DRAWINGS = (".svg",)
LARGEST = 30_000_000
"""Bytes: a phone's photo has some five million."""

LONGEST_NAME = 240
"""Bytes: no system holds longer names than 255, and the site puts a little before and after."""


def files(context: Context) -> Iterator[Diagnostic]:
    """The file of each photo and drawing; files change without the YAML, so nothing of this is remembered."""
    for entry in context.book.procedures.values():
        yield from _files(context, entry)


def _files(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    for index, step in enumerate(entry.item.steps):
        for field in ("photo", "drawing"):
            picture = getattr(step, field)
            if picture is None:
                continue
            at = ("steps", index, field, "file")
            path = Path(entry.folder) / picture.file
            if wrong := unfit(path, picture.file, field):
                yield entry.error(at, *wrong)
            elif not picture.alt.inside(context.book.language).strip():
                yield entry.error(("steps", index, field, "alt"), f"the {field} has no words that say what it shows")
            elif field == "drawing":
                yield from _drawing(entry, path)


def unfit(path: Path, name: str, field: str) -> tuple[str, str] | None:
    """Why a file that a step names is not read as its photo or drawing, and what to do; None where it may be."""
    kinds = DRAWINGS if field == "drawing" else PHOTOS
    if "/" in name or "\\" in name:
        return f"'{name}' is a path; a {field} lies beside the YAML file", ""
    if len(os.fsencode(name)) > LONGEST_NAME:
        return f"the name of this {field} is too long: at most {LONGEST_NAME} letters", ""
    if path.suffix.lower() not in kinds:
        return f"'{name}' is no {field}: it ends in {' or '.join(kinds)}", ""
    if leads_out(path, path.parent.parent):
        return f"'{name}' {OUTSIDE}", f"put the {field} itself here"
    if not path.exists():
        beside = sorted(other.name for other in path.parent.iterdir() if other.suffix.lower() in kinds)
        return f"there is no file '{name}' beside this one", did_you_mean(path.name, beside)
    if not path.is_file():
        return f"'{name}' {NO_FILE}", f"put the {field} itself here"
    if path.stat().st_size > LARGEST:
        return f"'{name}' has {path.stat().st_size / 1e6:.0f} MB; at most {LARGEST / 1e6:.0f} MB", "save it smaller"
    return None


def _drawing(entry: ProcedureEntry, path: Path) -> Iterator[Diagnostic]:
    """What of a drawing is no drawing, by its own lines."""
    file = str(PurePosixPath(entry.document.file).with_name(path.name))
    try:
        raw = content_of(path, LARGEST)
    except OSError:
        return  # named where pictures are made
    for line, column, message in Drawing(raw).wrong:
        yield Diagnostic(file, line, column, "error", message, "take it out, or save the drawing as plain SVG")
