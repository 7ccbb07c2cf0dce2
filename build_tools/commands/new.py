"""``new``: write the starting file of a procedure or a job, with a word on each field."""

from __future__ import annotations

import argparse
import re
from datetime import date, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

from build_tools.commands.command import SUCCESS, Command, add_book, book_folder
from build_tools.commands.usage_error import UsageError

if TYPE_CHECKING:
    from build_tools.book.book import Book

NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
STARTING_FILE = Path(__file__).parent / "new_procedure.yaml"
STARTING_JOB = Path(__file__).parent / "new_job.yaml"
JOBS = "jobs"
"""The folder whose files are jobs, in place of a trade."""
TWO_WEEKS = timedelta(days=14)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of ``new``."""
    parser.add_argument(
        "name", metavar="TRADE/NAME", help="the trade's folder and the procedure's name, or jobs/ and the job's name"
    )
    add_book(parser)


def run(arguments: argparse.Namespace) -> int:
    """Write ``<trade>/<name>.yaml`` or ``jobs/<name>.yaml`` into the book, unless the name is taken."""
    from build_tools.book.files import naming
    from build_tools.book.load import load_book

    folder = book_folder(arguments)
    trade, name = _split(arguments.name.removeprefix(f"{folder.name}/"))
    book = load_book(folder).book
    if trade != JOBS:
        _refuse_unknown_trade(book, trade, folder)
    path = folder / trade / f"{name}.yaml"
    if path.exists():
        raise UsageError(f"{_shown(path, folder)} is there already, and is left as it is")
    if trade != JOBS and name in book.procedures:
        other = book.procedures[name].document.file
        raise UsageError(f"'{name}' is taken: {other} has that name, and each name stands once in the book")
    path.parent.mkdir(exist_ok=True)
    title = name.replace("-", " ").capitalize()
    if trade == JOBS:
        text = starting_job(name, title, *_one_task(book), date.today())
    else:
        text = starting_text(title, _approver(book), date.today())
    with naming(path), path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
    print(f"{_shown(path, folder)} is written: fill in the places marked FILL IN; 'check' names those that are left")
    return SUCCESS


def starting_job(name: str, title: str, procedure: str, person: str, today: date) -> str:
    """The starting file of a job of two weeks, which passes the checks once its FILL IN is written."""
    given = {"name": name, "title": title, "procedure": procedure, "person": person}
    given |= {"start": today.isoformat(), "deadline": (today + TWO_WEEKS).isoformat()}
    text = STARTING_JOB.read_text(encoding="utf-8")
    for field, written in given.items():
        text = text.replace(f"{{{field}}}", written)
    return text


def _one_task(book: Book) -> tuple[str, str]:
    """A procedure that needs nothing before it and no sizes, and one of the crew who does it alone."""
    from build_tools.plan.crew import ROLES

    for id, entry in sorted(book.procedures.items(), key=lambda each: each[1].item.who != "helper"):
        item = entry.item
        first = not any(line.procedure and line.needed == "always" for line in item.before)
        sized = any(line.serves or not isinstance(line.quantity, str) for line in item.materials)
        if first and not sized and item.labour.people == 1 and item.labour.per == "1 each":
            for person, crew in book.people.items():
                if id in crew.item.trained_in and crew.item.role in ROLES[item.who]:
                    return id, person
    raise UsageError(
        "a job starts with a task that one person does, and the book has no such procedure with a trained person"
    )


def starting_text(title: str, approver: str, today: date) -> str:
    """The starting file, which passes the checks once each FILL IN is written."""
    text = STARTING_FILE.read_text(encoding="utf-8")
    return text.replace("{title}", title).replace("{approver}", approver).replace("{today}", today.isoformat())


def _split(written: str) -> tuple[str, str]:
    from build_tools.book.checks.reach import OWN_PAGE
    from build_tools.book.load import LONGEST_ID

    trade, slash, name = written.removesuffix(".yaml").partition("/")
    if not (trade and slash and name):
        raise UsageError(
            f"'{written}' is not TRADE/NAME: write the trade's folder and a name, like 'plumbing/set-faucet'"
        )
    if not NAME.fullmatch(name):
        better = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
        hint = f"\n    write '{trade}/{better}'?" if NAME.fullmatch(better) else ""
        raise UsageError(f"'{name}' cannot be a name: small letters, digits and single hyphens between them{hint}")
    if name == OWN_PAGE and trade != JOBS:
        raise UsageError(f"a procedure cannot be called '{name}': it would take the place of the page of its trade")
    if len(name) > LONGEST_ID:
        raise UsageError(f"this name has {len(name)} letters: at most {LONGEST_ID} are wanted")
    return trade, name


def _refuse_unknown_trade(book: Book, trade: str, folder: Path) -> None:
    from build_tools.book.diagnostics import did_you_mean

    if trade in book.trades:
        return
    near = did_you_mean(trade, book.trades)
    known = f"the trades of the book are {', '.join(sorted(book.trades)) or 'none so far'}"
    if near or not NAME.fullmatch(trade):
        raise UsageError(f"there is no trade '{trade}' in the book\n    {near or known}")
    files = sorted({entry.document.file for entry in book.trades.values()})
    file = files[0] if files else f"{folder.name}/reference/trades/trades.yaml"
    order = max((entry.item.order for entry in book.trades.values()), default=0) + 1
    raise UsageError(
        f"there is no trade '{trade}' in the book\n    {known}\n"
        f"    for a new one, add these lines to {file} and try again:\n"
        f"{trade}:\n  title: {trade.replace('-', ' ').capitalize()}\n"
        f"  summary: What this trade does, in one sentence.\n  order: {order}"
    )


def _approver(book: Book) -> str:
    """Who approves a first revision: the owner, or else the first of the crew."""
    if not book.people:
        raise UsageError("the book has nobody in crew/people.yaml, and a procedure says who approved it")
    owners = [id for id, entry in book.people.items() if entry.item.role == "owner"]
    return (owners or list(book.people))[0]


def _shown(path: Path, folder: Path) -> str:
    return (Path(folder.name) / path.relative_to(folder)).as_posix()


COMMAND = Command(
    name="new",
    help="write the starting file of a procedure or a job",
    description="Writes a file for a new procedure into the folder of its trade, or for a new job into jobs, with\n"
    "a word on each field and the places to fill in. A name is small letters, digits and single hyphens. Nothing is\n"
    "overwritten.",
    add_arguments=add_arguments,
    run=run,
    examples=("new plumbing/set-faucet", "new jobs/garden-house"),
)
