"""The checks of jobs. They run after those of the book, on a job whose references lead somewhere.

First what the job says of itself, then what each task takes, then whether it fits together; a job with mistakes of one
kind is not tried for the next, so that one slip does not print ten diagnostics.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime
from functools import partial

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, stops
from build_tools.book.model.job import Job
from build_tools.book.references import references_of
from build_tools.plan.checks.job_file import of_job_file
from build_tools.plan.checks.progress import of_progress
from build_tools.plan.checks.variants import of_variants
from build_tools.plan.crew import understaffed_tasks
from build_tools.plan.needs import TakeOff
from build_tools.plan.precedence import cycles, missing_predecessors, precedences
from build_tools.plan.standards import context_of
from build_tools.plan.take_off import take_off
from build_tools.plan.trips import trips_of
from build_tools.plan.worktime import SLOTS_PER_HOUR
from calculators.reading import read

MOST_HOURS = 4000.0
"""Labour hours of one task: two people for a year. More is a slip of the pen."""


def check_jobs(context: Context, today: date | None = None) -> list[Diagnostic]:
    """The diagnostics of every job of the book; ``today`` is the present day where nothing is given."""
    return sorted(diagnostic for entry in context.book.jobs.values() for diagnostic in check_job(context, entry, today))


def check_job(context: Context, entry: Entry[Job], today: date | None = None) -> list[Diagnostic]:
    """The diagnostics of one job."""
    if any(
        (ref.scheme, ref.target) not in context.index.targets
        for ref in references_of(entry, context.book, context.memo)
    ):
        return []  # the reference check has named them
    now = today or datetime.now().date()
    diagnostics: list[Diagnostic] = []
    for stage in (of_job_file, _tasks, _together, partial(of_progress, today=now), of_variants):
        diagnostics += dict.fromkeys(stage(context, entry))
        if stops(diagnostics):
            return diagnostics
    return diagnostics


def _tasks(context: Context, entry: Entry[Job]) -> Iterator[Diagnostic]:
    """What each task takes can be worked out, and is not beyond all measure."""
    here = context_of(context, entry)
    for id in entry.item.tasks:
        made = take_off(here, entry, id)
        yield from made.diagnostics
        if not made.diagnostics:
            diagnostics = list(_hours(entry, id, made))
            yield from diagnostics or _in_one_day(here, entry, id, made)


def _hours(entry: Entry[Job], id: str, made: TakeOff) -> Iterator[Diagnostic]:
    task = entry.item.tasks[id]
    at = "hours" if task.hours else "quantity" if task.quantity else "count" if task.count > 1 else "procedure"
    if made.hours > MOST_HOURS:
        yield entry.error(("tasks", id, at), f"takes {made.hours:,.0f} labour hours: more than {MOST_HOURS:,.0f}")
    elif made.hours <= 0:
        yield entry.error(("tasks", id, at), "takes no labour at all", "write how much there is to do")


def _in_one_day(context: Context, entry: Entry[Job], id: str, made: TakeOff) -> Iterator[Diagnostic]:
    """What is not left overnight is done within the hours of a day."""
    day = read(entry.item.hours, "time", "h")
    for trip in trips_of(context.book, entry.item, id, made.hours) if entry.item.tasks[id].done is None else []:
        hours = trip.slots / SLOTS_PER_HOUR
        if trip.in_one_day and hours > day:
            of_it = f" for '{trip.name}'" if trip.name else ""
            yield entry.error(
                ("tasks", id, "procedure"),
                f"takes {hours:g} h{of_it} with its people, is not left overnight, and a day has {day:g} h",
                "write more 'people', a longer day, or two tasks with a part each",
            )


def _together(context: Context, entry: Entry[Job]) -> Iterator[Diagnostic]:
    """What must come first is there, there are people for everything, and nothing goes in a circle."""
    yield from missing_predecessors(context.book, entry)
    yield from understaffed_tasks(context.book, entry)
    yield from cycles(entry, precedences(context.book, entry.item))
