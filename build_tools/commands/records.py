"""``records``: the records that came from the site, read together."""

from __future__ import annotations

import argparse
import sys
from datetime import UTC, datetime
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

from build_tools.book.printable import printable
from build_tools.commands.command import FAILURE, SUCCESS, Command, refuse_in_book
from build_tools.commands.settings import settings
from build_tools.commands.usage_error import UsageError

if TYPE_CHECKING:
    from build_tools.records.lines import RecordLine
    from build_tools.records.model import Record


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of ``records``."""
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="the folder of the files, with the folders in it")
    parser.add_argument("--csv", type=Path, metavar="FILE", help="write every line into a table too")
    parser.add_argument("--ahead", action="store_true", help="take entries too whose time is still to come")


def run(arguments: argparse.Namespace) -> int:
    """Print what is done, by whom, what was outside and what is open; 1 where a file could not be read."""
    from build_tools.book.files import hand_out
    from build_tools.records.lines import csv_of, lines_of
    from build_tools.records.reading import merged, read_records, without_future_entries

    if not arguments.folder.is_dir():
        raise UsageError(f"there is no folder '{arguments.folder}'")
    read, refused = read_records(arguments.folder)
    if arguments.csv:
        refuse_in_book(arguments.csv, settings().book)
        if arguments.csv.resolve() in {path.resolve() for path, _ in [*read, *refused]}:
            raise UsageError(f"'{arguments.csv}' is one of the files that are read: name another one for the table")
    records, left_out = [], []
    for path, given in read:
        made, ahead = without_future_entries(datetime.now(UTC), given)
        records += given if arguments.ahead else made
        left_out += [(path, ahead)] if ahead and not arguments.ahead else []
    works = [(record, lines_of(record)) for record in merged(records)]
    for job, group in groupby(works, key=lambda work: work[0].job.id):
        found = list(group)
        print(printable(found[0][0].job.title or job or "no job chosen"))
        for record, lines in found:
            print("\n".join(printable(summary) for summary in _summary_lines(record, lines)))
    if not works:
        print(f"no record in {arguments.folder}")
    if arguments.csv:
        text = csv_of(line for _, lines in works for line in lines)
        # The mark at the start tells a spreadsheet that it is UTF-8.
        hand_out(arguments.csv, text.encode("utf-8-sig"))
        print(f"{arguments.csv}: {text.count(chr(13))} lines")
    for path, ahead in left_out:
        entries = "1 entry has a time" if len(ahead) == 1 else f"{len(ahead)} entries have a time"
        words = f"{entries} still to come, up to {max(ahead)}, and would count over all that is entered until then"
        print(printable(f"{path}: warning: {words}"), file=sys.stderr)
        print("    left out: was a clock wrong? --ahead takes them all the same", file=sys.stderr)
    for path, why in refused:
        print(printable(f"{path}: error: {why}"), file=sys.stderr)
    return FAILURE if refused else SUCCESS


def _summary_lines(record: Record, lines: list[RecordLine]) -> list[str]:
    """One work in a few lines."""
    ticks = [line for line in lines if line.kind == "step" and not line.state.startswith("no longer")]
    steps = [line for line in ticks if line.step]  # the checks at the end have no number
    done = sum(line.state != "open" for line in steps)
    open_checks = done == len(steps) and any(not line.step and line.state == "open" for line in ticks)
    checks = ", checks at the end open" if open_checks else ""
    people = ", ".join(sorted({item.by for item in record.items if item.by})) or "no name given"
    last = max((item.at[:10] for item in record.items), default="nothing entered")
    place = f", {record.space.title or record.space.id}" if record.space.id else ""
    summary = [f"  {record.procedure.title}{place}: {done} of {len(steps)} steps done{checks}, {people}, {last}"]
    for line in lines:
        if line.state.startswith("outside"):
            summary.append(f"    outside: {line.what}: {line.entry} (asked for: {line.limits}) {line.by}".rstrip())
        elif line.kind == "hold" and line.state == "open":
            summary.append(f"    hold open after step {line.step}: {line.what}")
        elif line.state == "passed by another":
            summary.append(f"    hold after step {line.step} looked at by somebody else: {line.what}, {line.entry}")
        elif line.state == "changed since":
            number = f"step {line.step}, " if line.step else ""
            summary.append(f"    ticked before it changed: {number}{line.title}")
    return summary


COMMAND = Command(
    name="records",
    help="read the records that came from the site: what is done, outside, open",
    description="Reads the record files in a folder, puts those of the same work together, and says for each job what\n"
    "is done, by whom, which readings were outside and which hold points are open. An entry whose time is\n"
    "still to come is left out, and said.",
    add_arguments=add_arguments,
    run=run,
    examples=("records from-site", "records from-site --csv records.csv"),
)
