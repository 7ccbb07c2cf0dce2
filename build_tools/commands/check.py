"""``check``: read the book and name every mistake, without building."""

from __future__ import annotations

import argparse
import sys

from build_tools.commands.command import FAILURE, SUCCESS, Command, add_book, book_folder
from build_tools.commands.site import CACHE
from build_tools.commands.usage_error import UsageError


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The options of ``check``."""
    parser.add_argument("--strict", action="store_true", help="warnings count as mistakes")
    add_book(parser)


def run(arguments: argparse.Namespace) -> int:
    """Print every diagnostic with its place; 1 when there is an error, or under ``--strict`` a warning."""
    from build_tools.book.diagnostics import count_line, listed, stops
    from build_tools.pipeline import Options, read_checked
    from build_tools.plan.checks import check_jobs

    folder = book_folder(arguments)
    checked = read_checked(folder, Options(CACHE))
    if not checked.context.book.procedures and not checked.diagnostics:
        raise UsageError(f"there is no procedure in '{folder}': 'new TRADE/PROCEDURE --book {folder}' writes the first")
    found = set(checked.diagnostics)
    if not stops(found):
        found |= set(check_jobs(checked.context))
    for diagnostic in listed(found):
        print(diagnostic, file=sys.stderr)
    count = len(checked.context.book.procedures)
    print(f"{count_line(found)} in {count} procedure{'' if count == 1 else 's'}", file=sys.stderr)
    return FAILURE if stops(found, strict=arguments.strict) else SUCCESS


COMMAND = Command(
    name="check",
    help="name every mistake in the book, without building",
    description="Reads the whole book, checks it, and prints each mistake with its file, line and column.",
    add_arguments=add_arguments,
    run=run,
    examples=("check", "check --strict"),
)
