"""``bench``: how fast a large book builds, beside bare MkDocs over the same text, held against the budgets."""

from __future__ import annotations

import argparse
import json
import sys
import tempfile
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

from build_tools.commands.command import FINE, MISTAKES, Command, Wrong
from build_tools.commands.serve import free_port
from build_tools.commands.site import BOOK, QUIET, settings_for

if TYPE_CHECKING:
    from build_tools.bench.planning import Planning
    from build_tools.bench.racking import Racking
    from build_tools.bench.run import Line
    from build_tools.bench.script import ScriptWeight

LEAST = 20


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The options of ``bench``."""
    parser.add_argument("--procedures", type=int, default=1000, metavar="N", help="how many (1000, if left out)")
    parser.add_argument("--json", action="store_true", help="the result as JSON, for programs")
    parser.add_argument("--keep", type=Path, metavar="FOLDER", help="leave the two books and sites in a new folder")


def run(arguments: argparse.Namespace) -> int:
    """Measure and print; 1 when a budget is not kept."""
    if arguments.procedures < LEAST:
        raise Wrong(f"--procedures {arguments.procedures}: at least {LEAST} are wanted")
    kept: Path | None = arguments.keep
    if kept is None:
        with tempfile.TemporaryDirectory() as folder:
            return _bench(arguments, Path(folder).resolve())
    if kept.exists():
        raise Wrong(f"'{kept}' is there already; --keep names a new folder")
    kept.mkdir(parents=True)
    return _bench(arguments, kept.resolve())


def _bench(arguments: argparse.Namespace, folder: Path) -> int:
    from build_tools.bench.measure import Failed
    from build_tools.bench.planning import measure_planning
    from build_tools.bench.racking import measure_racking
    from build_tools.bench.run import Workshop, bench
    from build_tools.bench.script import weigh

    def say(what: str) -> None:
        print(what, file=sys.stderr, flush=True)

    port = free_port("127.0.0.1", 8300)
    try:
        lines = bench(Workshop(folder, BOOK, arguments.procedures, settings_for, QUIET, port, say))
    except Failed as failure:
        print(f"a build of the benchmark failed:\n{failure}", file=sys.stderr)
        return MISTAKES
    say("racking a room, and the same by first fit")
    racking = measure_racking()
    say("planning a job")
    planning = measure_planning(BOOK)
    script = weigh(folder / "build-1" / "site")
    if arguments.json:
        measured = [{**asdict(line), "passes": line.passes} for line in lines]
        measured_too: dict[str, Racking | Planning | ScriptWeight]
        measured_too = {"racking": racking, "planning": planning, "script": script}
        others = {name: {**asdict(each), "passes": each.passes} for name, each in measured_too.items()}
        print(json.dumps({"procedures": arguments.procedures, "lines": measured, **others}, indent=2))
    else:
        print(table(lines))
        print(racking)
        print(planning)
        print(script)
    return (
        FINE
        if racking.passes and planning.passes and script.passes and all(line.passes for line in lines)
        else MISTAKES
    )


def table(lines: list[Line]) -> str:
    """The result for people."""
    heads = ["what", "seconds", "of bare", "budget", "", "pages", "pages a second", "MB, largest process"]
    rows = [heads]
    for line in lines:
        verdict = "" if line.budget is None else "pass" if line.passes else "OVER"
        budget = "" if line.budget is None else f"{line.budget:.2f}"
        memory = "not told" if line.peak_mb is None else f"{line.peak_mb:.0f}"
        speed = f"{line.pages / line.seconds:.1f}"
        ratio = f"{line.ratio:.3f}"
        rows.append([line.what, f"{line.seconds:.2f}", ratio, budget, verdict, str(line.pages), speed, memory])
    widths = [max(len(row[column]) for row in rows) for column in range(len(heads))]
    return "\n".join(
        "  ".join(
            cell.ljust(width) if column == 0 else cell.rjust(width)
            for column, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        for row in rows
    )


COMMAND = Command(
    name="bench",
    help="measure the build of a large book against its budgets",
    description="Makes up a large book of 15-step procedures, builds it, and builds the same text as Markdown pages\n"
    "with bare MkDocs and the same theme; then serves the book and saves single procedures. Prints the times as\n"
    "ratios to the bare build. Then it racks a room and plans a job of 40 tasks. It takes some minutes.",
    add_arguments=add_arguments,
    run=run,
    examples=("bench", "bench --procedures 200 --json"),
)
