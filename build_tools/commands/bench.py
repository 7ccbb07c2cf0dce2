"""``bench``: how fast a large book builds, beside bare MkDocs over the same text, held against the budgets."""

from __future__ import annotations

import argparse
import json
import sys
import tempfile
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

from build_tools.commands.command import FAILURE, SUCCESS, Command
from build_tools.commands.serve import free_port
from build_tools.commands.site import BOOK, QUIET, settings_for
from build_tools.commands.test import have_browser, have_tools
from build_tools.commands.usage_error import UsageError
from build_tools.environment import ROOT

if TYPE_CHECKING:
    from build_tools.bench.pages import Measured
    from build_tools.bench.run import ResultLine

TOOLS = ROOT / "build_tools" / "bench" / "tools"
"""What the pages are measured with comes from npm: its version is pinned there."""
LEAST = 60
PARTS = ("all", "build", "pages")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The options of ``bench``."""
    parser.add_argument("--procedures", type=int, default=1000, metavar="N", help="how many (1000, if left out)")
    parser.add_argument("--part", choices=PARTS, default="all", help="the build, the pages in Chromium, or all (all)")
    parser.add_argument("--json", action="store_true", help="the result as JSON, for programs")
    parser.add_argument("--keep", type=Path, metavar="FOLDER", help="leave the two books and sites in a new folder")


def run(arguments: argparse.Namespace) -> int:
    """Measure and print; 1 when a budget is not kept."""
    if arguments.procedures < LEAST:
        raise UsageError(f"--procedures {arguments.procedures}: at least {LEAST} are wanted")
    kept: Path | None = arguments.keep
    if kept is None:
        with tempfile.TemporaryDirectory() as folder:
            return _bench(arguments, Path(folder).resolve())
    if kept.exists():
        raise UsageError(f"'{kept}' is there already; --keep names a new folder")
    kept.mkdir(parents=True)
    return _bench(arguments, kept.resolve())


def _bench(arguments: argparse.Namespace, folder: Path) -> int:
    from build_tools.bench.measure import Failed
    from build_tools.bench.pages import measure_pages_of
    from build_tools.bench.planning import measure_planning
    from build_tools.bench.racking import measure_racking
    from build_tools.bench.run import Workshop, bench, large_site

    def say(what: str) -> None:
        print(what, file=sys.stderr, flush=True)

    shop = Workshop(folder, BOOK, arguments.procedures, settings_for, QUIET, free_port("127.0.0.1", 8300), say)
    lines: list[ResultLine] = []
    measured: dict[str, list[Measured]] = {}
    try:
        if arguments.part != "pages":
            lines = bench(shop)
            say("racking a room, and the same by first fit")
            measured["racking"] = [measure_racking()]
            say("planning a job")
            measured["planning"] = [measure_planning(BOOK)]
        if arguments.part != "build":
            if not have_browser() or not have_tools(TOOLS):
                return FAILURE
            measured |= measure_pages_of(shop, large_site(shop))
    except Failed as failure:
        print(f"a part of the benchmark failed:\n{failure}", file=sys.stderr)
        return FAILURE
    every = [one for some in measured.values() for one in some]
    if arguments.json:
        data = {name: [{**asdict(one), "passes": one.passes} for one in some] for name, some in measured.items()}
        built = [{**asdict(line), "passes": line.passes} for line in lines]
        print(json.dumps({"procedures": arguments.procedures, "lines": built, **data}, indent=2))
    else:
        print("\n".join([*([table(lines)] if lines else []), *map(str, every)]))
    return SUCCESS if all(one.passes for one in (*lines, *every)) else FAILURE


def table(lines: list[ResultLine]) -> str:
    """The result for people."""
    clock, spent = ["seconds", "of bare", "budget"], ["processor s", "of bare", "budget"]
    heads = ["what", *clock, *spent, "", "pages", "MB, largest process"]
    rows = [heads]
    for line in lines:
        judged = line.budget is not None or line.processor_budget is not None
        verdict = ("pass" if line.passes else "OVER") if judged else ""
        memory = "not told" if line.peak_mb is None else f"{line.peak_mb:.0f}"
        clock = [_figure(line.seconds), _figure(line.ratio, 3), _figure(line.budget)]
        spent = [_figure(line.processor_seconds), _figure(line.processor_ratio, 3), _figure(line.processor_budget)]
        rows.append([line.what, *clock, *spent, verdict, str(line.pages), memory])
    widths = [max(len(row[column]) for row in rows) for column in range(len(heads))]
    return "\n".join(
        "  ".join(
            cell.ljust(width) if column == 0 else cell.rjust(width)
            for column, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        for row in rows
    )


def _figure(number: float | None, places: int = 2) -> str:
    return "" if number is None else f"{number:.{places}f}"


COMMAND = Command(
    name="bench",
    help="measure the build of a large book against its budgets",
    description="Makes up a large book of 15-step procedures, builds it, and builds the same text as Markdown pages\n"
    "with bare MkDocs and the same theme; then serves the book and saves single procedures. Prints the times, by\n"
    "the clock and of the processors, as ratios to the bare build. Then it racks a room and plans a job of 40\n"
    "tasks. It takes some minutes.",
    add_arguments=add_arguments,
    run=run,
    extras=("test",),
    examples=("bench", "bench --procedures 200 --json", "bench --part pages"),
)
