"""Photos and drawings are files beside the YAML file, neither missing nor huge; drawings draw and do nothing else."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.problems import Problem, did_you_mean
from build_tools.book.svg import Drawing

PHOTOS = (".jpg", ".jpeg", ".png", ".webp")
DRAWINGS = (".svg",)
LARGEST = 30_000_000
"""Bytes: a phone's photo has some five million."""

LONGEST_NAME = 240
"""Bytes: no system holds longer names than 255, and the site puts a little before and after."""


def files(context: Context) -> Iterator[Problem]:
    """The file of each photo and drawing; files change without the YAML, so nothing of this is remembered."""
    for entry in context.book.procedures.values():
        yield from _files(context, entry)


def _files(context: Context, entry: ProcedureEntry) -> Iterator[Problem]:
    for index, step in enumerate(entry.item.steps):
        for field, kinds in (("photo", PHOTOS), ("drawing", DRAWINGS)):
            picture = getattr(step, field)
            if picture is None:
                continue
            at = ("steps", index, field, "file")
            path = Path(entry.folder) / picture.file
            if "/" in picture.file or "\\" in picture.file:
                yield entry.error(at, f"'{picture.file}' is a path; a {field} lies beside the YAML file")
            elif len(os.fsencode(picture.file)) > LONGEST_NAME:
                yield entry.error(at, f"the name of this {field} is too long: at most {LONGEST_NAME} letters")
            elif path.suffix.lower() not in kinds:
                yield entry.error(at, f"'{picture.file}' is no {field}: it ends in {' or '.join(kinds)}")
            elif not path.is_file():
                beside = sorted(other.name for other in Path(entry.folder).iterdir() if other.suffix.lower() in kinds)
                yield entry.error(
                    at, f"there is no file '{picture.file}' beside this one", did_you_mean(path.name, beside)
                )
            elif path.stat().st_size > LARGEST:
                megabytes = path.stat().st_size / 1e6
                yield entry.error(
                    at, f"'{picture.file}' has {megabytes:.0f} MB; at most {LARGEST / 1e6:.0f} MB", "save it smaller"
                )
            elif not picture.alt.inside(context.book.language).strip():
                yield entry.error(("steps", index, field, "alt"), f"the {field} has no words that say what it shows")
            elif field == "drawing":
                yield from _drawing(entry, path)


def _drawing(entry: ProcedureEntry, path: Path) -> Iterator[Problem]:
    """What of a drawing is no drawing, by its own lines."""
    file = str(PurePosixPath(entry.document.file).with_name(path.name))
    for line, column, message in Drawing(path.read_bytes()).wrong:
        yield Problem(file, line, column, "error", message, "take it out, or save the drawing as plain SVG")
