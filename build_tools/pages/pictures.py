"""Photos sized and compressed for the page, drawings as they are."""

from __future__ import annotations

import hashlib
import re
from contextlib import suppress
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

from PIL import Image, ImageOps

from build_tools.book.book import Book
from build_tools.book.checks.pictures import LARGEST, unfit
from build_tools.book.content import FileRefused, content_of
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.files import write_whole
from build_tools.book.svg import Drawing

WIDEST = 1280
"""Pixels: twice the width of a phone's column, sharp on its screen."""
QUALITY = 72
NOT_IN_ADDRESSES = re.compile(r"[^A-Za-z0-9_-]+")


@dataclass(frozen=True, slots=True)
class SitePicture:
    """A picture as the site carries it."""

    url: str
    content: bytes
    width: int
    height: int


class DrawingRefused(Exception):
    """A drawing that does more than draw."""


def make_pictures(book: Book, cache: Path) -> tuple[dict[tuple[str, str], SitePicture], list[Diagnostic]]:
    """Every picture of the book by folder and file name, and those that cannot be read.

    ``cache`` is a folder where compressed photos are kept between builds, by the digest of what they were made from.
    """
    made: dict[tuple[str, str], SitePicture] = {}
    diagnostics: list[Diagnostic] = []
    for entry in book.procedures.values():
        for index, step in enumerate(entry.item.steps):
            for field in ("photo", "drawing"):
                picture = getattr(step, field)
                if picture is None:
                    continue
                path = Path(entry.folder) / picture.file
                if unfit(path, picture.file, field):
                    continue  # a check names it
                try:
                    made[entry.folder, picture.file] = _make(path, cache)
                except (FileNotFoundError, FileRefused, DrawingRefused):
                    continue  # changed a moment ago, or named by the check of drawings
                except Exception:  # a broken file raises whatever its decoder stumbles over
                    at = ("steps", index, field, "file")
                    diagnostics.append(entry.error(at, f"'{picture.file}' cannot be read as a {field}"))
    return made, diagnostics


def _make(path: Path, cache: Path) -> SitePicture:
    raw = content_of(path, LARGEST)
    digest = hashlib.sha256(raw + bytes([QUALITY])).hexdigest()[:16]
    if path.suffix.lower() == ".svg":
        drawing = Drawing(raw)
        if drawing.wrong:
            raise DrawingRefused
        width, height = map(round, drawing.size)
        return SitePicture(_address(path, digest, "svg"), raw, width, height)
    held = cache / f"{digest}.webp"
    try:
        content = held.read_bytes()
    except FileNotFoundError:
        with Image.open(BytesIO(raw)) as opened:
            photo = _on_paper(ImageOps.exif_transpose(opened))
        photo.thumbnail((WIDEST, WIDEST * 2))
        written = BytesIO()
        photo.save(written, "WEBP", quality=QUALITY, method=6)
        content = written.getvalue()
        with suppress(OSError):  # a full disk is no broken photo; it is told where the site is written
            write_whole(held, content)
    with Image.open(BytesIO(content)) as photo:
        width, height = photo.size
    return SitePicture(_address(path, digest, "webp"), content, width, height)


def _address(path: Path, digest: str, kind: str) -> str:
    """Where a picture lies on the site. A file may be named ``step #2 (why?).jpg``; an address holds no such signs,
    so it reads alike in a link, in a script and on every disk, and nothing has to be escaped."""
    name = NOT_IN_ADDRESSES.sub("-", path.stem).strip("-")[:60]
    return f"pictures/{name and f'{name}-'}{digest}.{kind}"


def _on_paper(photo: Image.Image) -> Image.Image:
    """The photo without transparency: white where it was see-through."""
    if not photo.has_transparency_data:
        return photo.convert("RGB")
    paper = Image.new("RGBA", photo.size, "white")
    return Image.alpha_composite(paper, photo.convert("RGBA")).convert("RGB")
