"""What a command is, and how it says that it was called wrongly."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from build_tools.commands.settings import settings
from build_tools.commands.usage_error import UsageError

SUCCESS, FAILURE, USAGE_ERROR, INTERRUPTED = 0, 1, 2, 130
"""Exit codes: all is well; the book has mistakes or a check failed; the command was called wrongly; Ctrl-C."""


@dataclass(frozen=True, slots=True)
class Command:
    """One command: its help, the extras of the environment that it needs, its arguments, and what it does."""

    name: str
    help: str
    description: str
    add_arguments: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], int]
    extras: tuple[str, ...] = ()
    examples: tuple[str, ...] = ()


def add_book(parser: argparse.ArgumentParser) -> None:
    """The option that names the book's folder."""
    parser.add_argument(
        "--book",
        type=Path,
        metavar="FOLDER",
        help="the folder of the book (the docs_dir of mkdocs.yml, if left out: procedures)",
    )


def refuse_in_book(target: Path, book: Path) -> None:
    """Nothing that a command hands out lies among the sources of the book, or replaces one."""
    if target.resolve().is_relative_to(book.resolve()):
        raise UsageError(f"'{target}' lies in the book, whose sources are kept: name a file elsewhere")


def book_folder(arguments: argparse.Namespace) -> Path:
    """The folder that ``--book`` names, or else the settings; it must be there."""
    folder: Path = arguments.book or settings().book
    if not folder.is_dir():
        raise UsageError(f"there is no folder '{folder}' that the book could be read from")
    return folder.resolve()
