"""``pack``: one procedure as one file that can be sent in a message and opened without network."""

from __future__ import annotations

import argparse
import sys
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from build_tools.commands.command import FINE, MISTAKES, Command, Wrong, add_book, book_folder
from build_tools.commands.site import SETTINGS
from build_tools.environment import ROOT

if TYPE_CHECKING:
    from build_tools.book.book import Book

LARGE = 1_000_000
"""Bytes from which a file is slow to send on a phone's network, and some mail servers and messengers refuse it."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of ``pack``."""
    parser.add_argument("procedure", metavar="PROCEDURE", help="its name, like toilet-set")
    parser.add_argument("--to", type=Path, metavar="FILE", help="the file to write (PROCEDURE.html here, if left out)")
    add_book(parser)


def run(arguments: argparse.Namespace) -> int:
    """Write the file and say its size; 1 when the book has mistakes."""
    from build_tools.book.checks import check
    from build_tools.book.checks.context import Context
    from build_tools.book.load import load_book
    from build_tools.book.memo import Memo
    from build_tools.pages.pack import Packer
    from build_tools.pages.pictures import make_pictures
    from build_tools.pages.site import Maker
    from build_tools.pages.site_files import site_files

    kept, today = ROOT / ".cache", date.today().isoformat()
    loaded = load_book(book_folder(arguments))
    name = _known(loaded.book, arguments.procedure)
    target: Path = arguments.to or Path(f"{name}.html")
    if target.is_dir() or not target.absolute().parent.is_dir():
        raise Wrong(f"'{target}' is no file that could be written: name one in a folder that is there")
    context = Context.of(loaded.book, Memo())
    pictures, unreadable = make_pictures(loaded.book, kept / "pictures")
    errors = [one for one in sorted({*loaded.problems, *check(context), *unreadable}) if one.severity == "error"]
    for problem in errors:
        print(problem, file=sys.stderr)
    if errors:
        return MISTAKES
    site_name, site_url = _settings()
    maker = Maker(context, pictures, site_name, kept / "plots")
    maker.site_url = site_url
    files = site_files(context, pictures, today, kept)
    target.write_text(Packer(maker, loaded.book.procedures[name], files, today).whole(), encoding="utf-8")
    print(f"{target}: {_size(target.stat().st_size)}")
    return FINE


def _known(book: Book, written: str) -> str:
    """The procedure that is meant: its name, with or without the trade's folder before it."""
    from build_tools.book.problems import did_you_mean

    name = written.removesuffix(".yaml").rpartition("/")[2]
    if name in book.procedures:
        return name
    hint = did_you_mean(name, book.procedures) or f"the procedures are {', '.join(sorted(book.procedures))}"
    raise Wrong(f"there is no procedure '{name}' in the book\n    {hint}")


def _settings() -> tuple[str, str]:
    """The name of the site and its address, from ``mkdocs.yml``."""
    import yaml

    settings = yaml.safe_load(SETTINGS.read_text(encoding="utf-8"))
    url = str(settings.get("site_url") or "")
    return str(settings["site_name"]), f"{url.rstrip('/')}/" if url else ""


def _size(count: int) -> str:
    """A size in words.

    >>> _size(234_567), _size(1_400_000)
    ('235 KB', '1.4 MB: large for a message')
    """
    return f"{count / 1000:.0f} KB" if count < LARGE else f"{count / 1e6:.1f} MB: large for a message"


COMMAND = Command(
    name="pack",
    help="write one procedure into a single file to be sent in a message",
    description="Writes one HTML file with everything in it: steps, styles, drawings, pictures and the calculators of\n"
    "the procedure. It opens by double click, without network. Its size is printed.",
    add_arguments=add_arguments,
    run=run,
    examples=("pack toilet-set", "pack lockset-install --to lockset.html"),
)
