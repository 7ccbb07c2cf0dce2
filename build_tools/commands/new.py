"""``new``: write the starting file of a procedure, with a word on each field."""

from __future__ import annotations

import argparse
import re
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from build_tools.commands.command import FINE, Command, Wrong, add_book, book_folder

if TYPE_CHECKING:
    from build_tools.book.book import Book

NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
STARTING_FILE = Path(__file__).parent / "new_procedure.yaml"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of ``new``."""
    parser.add_argument("procedure", metavar="TRADE/NAME", help="the trade's folder and the procedure's name")
    add_book(parser)


def run(arguments: argparse.Namespace) -> int:
    """Write ``<trade>/<name>.yaml`` into the book, unless the name is taken."""
    from build_tools.book.load import load_book

    folder = book_folder(arguments)
    trade, name = _split(arguments.procedure.removeprefix(f"{folder.name}/"))
    book = load_book(folder).book
    _refuse_unknown_trade(book, trade)
    path = folder / trade / f"{name}.yaml"
    if path.exists():
        raise Wrong(f"{_shown(path, folder)} is there already, and is left as it is")
    if name in book.procedures:
        other = book.procedures[name].document.file
        raise Wrong(f"'{name}' is taken: {other} has that name, and each name stands once in the book")
    path.parent.mkdir(exist_ok=True)
    text = starting_text(name.replace("-", " ").capitalize(), _approver(book), date.today())
    with path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
    print(f"{_shown(path, folder)} is written: fill in the places marked FILL IN, then run 'check'")
    return FINE


def starting_text(title: str, approver: str, today: date) -> str:
    """The starting file, which passes the checks as it is."""
    text = STARTING_FILE.read_text(encoding="utf-8")
    return text.replace("{title}", title).replace("{approver}", approver).replace("{today}", today.isoformat())


def _split(written: str) -> tuple[str, str]:
    trade, slash, name = written.removesuffix(".yaml").partition("/")
    if not (trade and slash and name):
        raise Wrong(f"'{written}' is not TRADE/NAME: write the trade's folder and a name, like 'plumbing/set-faucet'")
    if not NAME.fullmatch(name):
        better = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
        hint = f"\n    write '{trade}/{better}'?" if NAME.fullmatch(better) else ""
        raise Wrong(f"'{name}' cannot be a name: small letters, digits and single hyphens between them{hint}")
    return trade, name


def _refuse_unknown_trade(book: Book, trade: str) -> None:
    from build_tools.book.problems import did_you_mean

    if trade not in book.trades:
        known = ", ".join(sorted(book.trades)) or "none: write them in reference/trades/"
        hint = did_you_mean(trade, book.trades) or f"the trades of the book are {known}"
        raise Wrong(f"there is no trade '{trade}' in the book\n    {hint}")


def _approver(book: Book) -> str:
    """Who approves a first revision: the owner, or else the first of the crew."""
    if not book.people:
        raise Wrong("the book has nobody in crew/people.yaml, and a procedure says who approved it")
    owners = [id for id, entry in book.people.items() if entry.item.role == "owner"]
    return (owners or list(book.people))[0]


def _shown(path: Path, folder: Path) -> str:
    return (Path(folder.name) / path.relative_to(folder)).as_posix()


COMMAND = Command(
    name="new",
    help="write the starting file of a procedure",
    description="Writes a file for a new procedure into the folder of its trade, with a word on each field and the\n"
    "places to fill in. A name is small letters, digits and single hyphens. Nothing is overwritten.",
    add_arguments=add_arguments,
    run=run,
    examples=("new plumbing/set-faucet",),
)
