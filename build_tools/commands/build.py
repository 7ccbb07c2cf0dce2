"""``build``: write the site into a folder and stop."""

from __future__ import annotations

import argparse
import logging
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from build_tools.commands.command import FAILURE, SUCCESS, Command, add_book, book_folder
from build_tools.commands.settings import settings
from build_tools.commands.site import add_jobs, extra_of, mkdocs
from build_tools.commands.usage_error import UsageError
from build_tools.environment import ROOT
from build_tools.site_folder import SiteFolder


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The options of ``build``."""
    parser.add_argument("--strict", action="store_true", help="stop at warnings as well")
    parser.add_argument(
        "--site",
        type=Path,
        metavar="FOLDER",
        help="where the site is written (the site_dir of mkdocs.yml, if left out: site)",
    )
    add_jobs(parser)
    add_book(parser)


def run(arguments: argparse.Namespace) -> int:
    """Build the site; 1 when the book has mistakes."""
    from build_tools.commands.unchanged import BuildNote

    book = book_folder(arguments)
    named: Path = arguments.site or settings().site
    site = named.resolve()
    if site.exists() and not site.is_dir():
        raise UsageError(f"'{named}' is a file; the site needs a folder")
    if site in (book, ROOT) or site in book.parents or book in site.parents or site in ROOT.parents:
        raise UsageError(f"the site cannot be written to '{named}': that folder would be removed")
    if site.is_dir() and any(site.iterdir()) and not (site / "index.html").exists():
        raise UsageError(f"'{named}' holds other files than a site, and would be removed; name another folder")
    SiteFolder(site).check()
    strict, extra = ["--strict"] if arguments.strict else [], extra_of(arguments)
    last = BuildNote(settings(), site, [*strict, *map(str, extra.items())]) if book == settings().book else None
    if last and last.stands():
        print(f"{_pages(site)} in {_short(site)}, as they were: nothing has changed")
        return SUCCESS
    with _listening() as said:
        code = mkdocs(["build", "--clean", "--site-dir", str(site), *strict], book, **extra)
    if code != 0:
        return FAILURE
    if last and not said:
        last.keep()
    print(f"{_pages(site)} in {_short(site)}")
    return SUCCESS


@contextmanager
def _listening() -> Iterator[list[str]]:
    """The warnings that a build gives."""
    said: list[str] = []

    class Listener(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            said.append(record.getMessage())

    listener, log = Listener(logging.WARNING), logging.getLogger("mkdocs")
    log.addHandler(listener)
    try:
        yield said
    finally:
        log.removeHandler(listener)


def _pages(site: Path) -> str:
    return f"{sum(1 for _ in site.rglob('*.html'))} pages"


def _short(folder: Path) -> str:
    try:
        return str(folder.relative_to(Path.cwd()))
    except ValueError:
        return str(folder)


COMMAND = Command(
    name="build",
    help="write the site into a folder and stop",
    description="Reads and checks the book, computes its tables, and writes the site. Any mistake stops it.",
    add_arguments=add_arguments,
    run=run,
    examples=("build", "build --strict --site ../book-site", "build --for crew --site ../crew-site"),
)
