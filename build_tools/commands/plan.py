"""``plan``: plan a job and print it day by day, or as data for programs."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterable
from datetime import date, datetime
from typing import TYPE_CHECKING

from build_tools.book.printable import printable, printable_lines
from build_tools.commands.command import FAILURE, SUCCESS, Command, add_book, book_folder
from build_tools.commands.site import CACHE, add_today
from build_tools.commands.usage_error import UsageError
from build_tools.progress import Progress

if TYPE_CHECKING:
    from build_tools.book.book import Entry
    from build_tools.book.checks.context import Context
    from build_tools.book.diagnostics import Diagnostic
    from build_tools.book.model.job import Job


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of ``plan``."""
    parser.add_argument("job", nargs="?", metavar="JOB", help="its name; left out, all are listed")
    parser.add_argument("--variant", metavar="NAME", help="the job as one of its variants has it")
    add_today(parser)
    parser.add_argument("--json", action="store_true", help="the plan as JSON, for programs")
    add_book(parser)


def run(arguments: argparse.Namespace) -> int:
    """Print the plan; 1 where the book has mistakes or the job cannot be planned."""
    from build_tools.book.load import load_book
    from build_tools.pipeline import Options, read_checked

    folder, options = book_folder(arguments), Options(CACHE)
    if arguments.job is None:
        loaded = load_book(folder)
        for id, entry in loaded.book.jobs.items():
            print(printable(f"{id:24} {entry.item.title.inside(loaded.book.language)}"))
        return _print_diagnostics(loaded.diagnostics)
    checked = read_checked(folder, options)
    jobs = checked.context.book.jobs
    if checked.context.book.unread and arguments.job not in jobs:
        return _print_diagnostics(checked.diagnostics)
    _must_be_there("job", arguments.job, jobs, "'plan' without a name lists the jobs")
    entry = jobs[arguments.job]
    if arguments.variant is not None:
        named = ", ".join(entry.item.variants) or "none"
        _must_be_there("variant", arguments.variant, entry.item.variants, f"the variants of this job: {named}")
    if _print_diagnostics(checked.diagnostics):
        return FAILURE
    today = arguments.today or datetime.now().date()
    return _plan(checked.context, entry, arguments.variant, today, as_json=arguments.json)


def _plan(context: Context, entry: Entry[Job], variant: str | None, today: date, *, as_json: bool) -> int:
    from build_tools.plan.checks import check_job
    from build_tools.plan.data import plan_as_data
    from build_tools.plan.planned_job import cannot_be_planned
    from build_tools.plan.planning import plan_accelerations, plan_job
    from build_tools.plan.problem import Infeasible
    from build_tools.plan.what_if import varied

    if _print_diagnostics(check_job(context, entry, today)):
        return FAILURE
    if variant is not None:
        entry = varied(entry, entry.item.variants[variant])
    progress = Progress(f"planning {entry.id}")
    progress.show("reading its tasks")

    def show_improvement(objective: str, value: int) -> None:
        progress.show(f"{OBJECTIVES[objective]}: {value / PARTS[objective]:g}")

    try:
        plan = plan_job(context, entry, today, cache=CACHE, on_improvement=show_improvement)
    except Infeasible as infeasible:
        progress.end("no plan")
        return _print_diagnostics([cannot_be_planned(entry, infeasible)])
    accelerations = []
    if plan.days_to_spare < 0:
        progress.show("it is late: trying what would bring it in")
        accelerations = plan_accelerations(context, entry, plan, today, CACHE)
    progress.end("done")
    if as_json:
        print(printable_lines(json.dumps(plan_as_data(plan, variant, accelerations), indent=2, ensure_ascii=False)))
    else:
        from build_tools.commands.plan_text import plan_text

        print(printable_lines(plan_text(plan, variant, accelerations)))
    return SUCCESS


OBJECTIVES = {"end": "working hours to the end", "closed": "closed hours", "moves": "changes of place"}
"""What is told of each aim while it is sought."""
PARTS = {"end": 4, "closed": 4, "moves": 1}


def _print_diagnostics(diagnostics: Iterable[Diagnostic]) -> int:
    """Print the diagnostics in their order; 1 where one of them is an error."""
    from build_tools.book.diagnostics import listed, stops

    found = listed(diagnostics)
    for diagnostic in found:
        print(diagnostic, file=sys.stderr)
    return FAILURE if stops(found) else SUCCESS


def _must_be_there(what: str, name: str, known: Iterable[str], otherwise: str) -> None:
    from build_tools.book.diagnostics import did_you_mean

    known = list(known)
    if name not in known:
        raise UsageError(f"there is no {what} '{name}'\n    {did_you_mean(name, known) or otherwise}")


COMMAND = Command(
    name="plan",
    help="plan a job and print it day by day",
    description="Plans a job and prints who does what where on each day, what sets the end date, how much time each\n"
    "task has in hand, and how sure that is. A plan that was made once is kept. Without a name it lists the jobs.\n"
    "What the JSON holds stands at the top of build_tools/plan/data.py.",
    add_arguments=add_arguments,
    run=run,
    examples=("plan garden-studio", "plan garden-studio --variant floor-last --json"),
)
