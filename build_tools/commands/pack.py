"""``pack``: one procedure as one file that can be sent in a message and opened without network."""

from __future__ import annotations

import argparse
import sys
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from build_tools.commands.command import FAILURE, SUCCESS, Command, add_book, book_folder, refuse_in_book
from build_tools.commands.settings import settings
from build_tools.commands.usage_error import UsageError
from build_tools.environment import ROOT

if TYPE_CHECKING:
    from build_tools.book.book import Book
    from build_tools.book.diagnostics import Diagnostic

LARGE = 1_000_000
"""Bytes from which a file is slow to send on a phone's network, and some mail servers and messengers refuse it."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of ``pack``."""
    parser.add_argument("procedure", metavar="PROCEDURE", help="its name, like toilet-set")
    parser.add_argument("--to", type=Path, metavar="FILE", help="the file to write (PROCEDURE.html here, if left out)")
    add_book(parser)


def run(arguments: argparse.Namespace) -> int:
    """Write the file and say its size; 1 when the book has mistakes."""
    from build_tools.book.files import hand_out

    name = arguments.procedure.removesuffix(".yaml").rpartition("/")[2]
    target: Path = arguments.to or Path(f"{name}.html")
    if target.is_dir() or not target.absolute().parent.is_dir():
        raise UsageError(f"'{target}' is no file that could be written: name one in a folder that is there")
    book = book_folder(arguments)
    refuse_in_book(target, book)
    made = packed(book, name, ROOT / ".cache")
    if not isinstance(made, str):
        from build_tools.book.diagnostics import listed

        for diagnostic in listed(made):
            print(diagnostic, file=sys.stderr)
        return FAILURE
    content = made.encode()
    hand_out(target, content)
    print(f"{target}: {_size(len(content))}")
    return SUCCESS


def packed(folder: Path, name: str, cache: Path) -> str | list[Diagnostic]:
    """The file for one procedure of the book in that folder, or what is wrong with the book."""
    from build_tools.pages.pack import Packer
    from build_tools.pages.site_files import site_files
    from build_tools.pipeline import Options, read_checked

    own = settings()
    checked = read_checked(folder, Options(cache, own.site_name, site_url=own.site_url))
    renderer, book = checked.renderer, checked.context.book
    _refuse_unknown(book, name)
    errors = [diagnostic for diagnostic in sorted(checked.diagnostics) if diagnostic.severity == "error"]
    if errors:
        return errors
    today = date.today().isoformat()
    files = site_files(checked.context, renderer.pictures, today, cache)
    return Packer(renderer, book.procedures[name], files, today).whole()


def _refuse_unknown(book: Book, name: str) -> None:
    from build_tools.book.diagnostics import did_you_mean

    if name not in book.procedures:
        hint = did_you_mean(name, book.procedures) or f"the procedures are {', '.join(sorted(book.procedures))}"
        raise UsageError(f"there is no procedure '{name}' in the book\n    {hint}")


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
