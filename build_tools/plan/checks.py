"""The checks of jobs. They run after those of the book, on a job whose references lead somewhere.

First what the job says of itself, then what each task takes, then whether it fits together; a job with mistakes of one
kind is not tried for the next, so that one slip does not print ten problems.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from build_tools.book.amounts import read_figure
from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.job import Job
from build_tools.book.problems import Problem, did_you_mean
from build_tools.book.uses import uses_of
from build_tools.plan.crew import cannot
from build_tools.plan.links import circles, links, missing, unknown_tasks
from build_tools.plan.measures import sizes
from build_tools.plan.standards import context_of
from build_tools.plan.take_off import take_off
from build_tools.plan.worktime import WEEK
from calculators.reading import Unreadable, read


def check_jobs(context: Context) -> list[Problem]:
    """The problems of every job of the book."""
    return sorted(problem for entry in context.book.jobs.values() for problem in check_job(context, entry))


def check_job(context: Context, entry: Entry[Job]) -> list[Problem]:
    """The problems of one job."""
    if any((use.scheme, use.target) not in context.index.targets for use in uses_of(entry, context.book, context.memo)):
        return []  # the reference check has named them
    for stage in (_itself, _tasks, _together):
        problems = list(dict.fromkeys(stage(context, entry)))
        if any(problem.severity == "error" for problem in problems):
            return problems
    return problems


def _itself(context: Context, entry: Entry[Job]) -> Iterator[Problem]:
    """Dates, names and measures that the job says of itself."""
    job = entry.item
    if job.deadline < job.start:
        yield entry.error(("deadline",), f"the deadline {job.deadline} lies before the start {job.start}")
    yield from _reads(entry, ("hours",), job.hours, "time")
    if not _is_time_of_day(job.begins):
        yield entry.error(("begins",), f"'{job.begins}' is not a time of day", "write it like 7:30")
    for name, space in job.spaces.items():
        if name in job.dwellings:
            yield entry.error(("spaces", name), f"'{name}' is a dwelling too", "give one of them another name")
        yield from _known(entry, ("spaces", name, "dwelling"), space.dwelling, job.dwellings, "dwelling")
        for index, other in enumerate(space.reached_through):
            yield from _known(entry, ("spaces", name, "reached_through", index), other, job.spaces, "space")
        try:
            sizes(space)
        except Unreadable as trouble:
            yield entry.error(("spaces", name), str(trouble))
    for name, opening in job.openings.items():
        yield from _known(entry, ("openings", name, "space"), opening.space, job.spaces, "space")
    for id, task in job.tasks.items():
        places = {**job.spaces, **job.dwellings}
        yield from _known(entry, ("tasks", id, "space"), task.space, places, "space or dwelling")
        yield from _known(entry, ("tasks", id, "opening"), task.opening, job.openings, "opening")
        if task.done and task.started:
            yield entry.error(("tasks", id, "started"), "it is done already", "leave out 'started'")
        for index, person in enumerate(task.who):
            names = [hand.person for hand in job.people]
            yield from _known(entry, ("tasks", id, "who", index), person, names, "person of this job")
    for name, variant in job.variants.items():
        for index, change in enumerate(variant.tasks):
            yield from _known(entry, ("variants", name, "tasks", index, "task"), change.task, job.tasks, "task")
    for index, price in enumerate(job.prices):
        if price.lead_time:
            yield from _reads(entry, ("prices", index, "lead_time"), price.lead_time, "time")
    for index, visit in enumerate(job.visits):
        yield from _reads(entry, ("visits", index, "notice"), visit.notice, "time")
    for index, each in enumerate(job.standards):
        yield from _same_kind(context, entry, index, each.value, each.is_)
    yield from unknown_tasks(entry)
    yield from _away(entry)


def _tasks(context: Context, entry: Entry[Job]) -> Iterator[Problem]:
    """What each task takes can be worked out."""
    here = context_of(context, entry)
    for id in entry.item.tasks:
        yield from take_off(here, entry, id).problems


def _together(context: Context, entry: Entry[Job]) -> Iterator[Problem]:
    """What must come first is there, there are people for everything, and nothing goes in a circle."""
    yield from missing(context.book, entry)
    yield from cannot(context.book, entry)
    yield from circles(entry, links(context.book, entry.item))


def _known(
    entry: Entry[Job], at: tuple[str | int, ...], name: str | None, known: object, what: str
) -> Iterator[Problem]:
    names = list(known)  # type: ignore[call-overload]
    if name is not None and name not in names:
        yield entry.error(at, f"there is no {what} '{name}' in this job", did_you_mean(name, names))


def _reads(entry: Entry[Job], at: tuple[str | int, ...], text: str, quantity: str) -> Iterator[Problem]:
    try:
        read(text, quantity, "h")
    except Unreadable as trouble:
        yield entry.error(at, str(trouble))


def _same_kind(context: Context, entry: Entry[Job], index: int, value: str, here: str) -> Iterator[Problem]:
    usual = context.book.values[value].item.quantity
    try:
        wanted, given = read_figure(usual)[1], read_figure(here)[1]
    except Unreadable as trouble:
        yield entry.error(("standards", index, "is"), str(trouble))
        return
    if wanted != given:
        yield entry.error(("standards", index, "is"), f"'{here}' cannot stand for '{usual}': it is of another kind")


def _away(entry: Entry[Job]) -> Iterator[Problem]:
    """People of whom the job has nothing, since they are away from its start to its deadline."""
    job = entry.item
    days = [date.fromordinal(day) for day in range(job.start.toordinal(), job.deadline.toordinal() + 1)]
    for index, hand in enumerate(job.people):
        there = [d for d in days if WEEK[d.weekday()] in hand.days and d not in hand.off and d not in job.holidays]
        if days and not there:
            yield entry.warning(
                ("people", index), f"'{hand.person}' is away on every working day of this job", "leave the line out"
            )


def _is_time_of_day(text: str) -> bool:
    hour, colon, minute = text.partition(":")
    return bool(colon) and hour.isdecimal() and minute.isdecimal() and int(hour) < 24 and int(minute) < 60
