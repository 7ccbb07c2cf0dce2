"""What is done and what is started: days that have come, and places and people that are free for it today."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from itertools import combinations

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, stops
from build_tools.book.model.job import Job, Task
from build_tools.plan.crew import eligible_crew, hands_of, teams
from build_tools.plan.plan import planned_from
from build_tools.plan.precedence import closed_places
from build_tools.plan.standards import context_of
from build_tools.plan.still_closed import still_closed
from calculators.reading import read


def of_progress(context: Context, entry: Entry[Job], today: date) -> Iterator[Diagnostic]:
    """The mistakes in what a job says of its progress, and a deadline that has passed."""
    found = list(_days(entry, today))
    yield from found
    if not stops(found):
        started = {id: task for id, task in entry.item.tasks.items() if task.started}
        yield from _closed(context, entry, started, planned_from(entry.item, today))
        yield from _crowded(entry, started)
        yield from _same_person(context, entry, started)


def _days(entry: Entry[Job], today: date) -> Iterator[Diagnostic]:
    job = entry.item
    begun = False
    for id, task in job.tasks.items():
        begun = begun or bool(task.done or task.started)
        if task.done and task.started:
            yield entry.error(("tasks", id, "started"), "it is done already", "leave out 'started'")
        if task.left and not task.started:
            hint = "leave it out" if task.done else "write 'started' too, or 'hours' for the whole"
            yield entry.error(("tasks", id, "left"), "only what is started has something left", hint)
        for name in ("done", "started"):
            day = getattr(task, name)
            if day and day > today:
                yield entry.error(("tasks", id, name), f"{day} has not come yet: today is {today}")
            elif day and day < job.start - timedelta(days=365):
                yield entry.error(
                    ("tasks", id, name), f"{day} lies more than a year before the start {job.start}: is the year right?"
                )
    still = sum(task.done is None for task in job.tasks.values())
    if begun and still and job.deadline < today:
        tasks = "1 task is" if still == 1 else f"{still} tasks are"
        yield entry.warning(
            ("deadline",),
            f"the deadline {job.deadline} has passed, and {tasks} not done",
            "write the day that is agreed now",
        )


def _closed(context: Context, entry: Entry[Job], started: dict[str, Task], today: date) -> Iterator[Diagnostic]:
    """Work is started where something that is done keeps everybody out."""
    job = entry.item
    book = context_of(context, entry).book
    hour, minute = (int(part) for part in job.begins.split(":"))
    begins = timedelta(hours=hour, minutes=minute)
    day_long = timedelta(hours=read(job.hours, "time", "h"))

    def evening(day: date) -> datetime:
        return datetime.combine(day, datetime.min.time()) + begins + day_long

    morning = datetime.combine(today, datetime.min.time()) + begins
    for id, task in started.items():
        until = still_closed(book, job, evening).get(task.space)
        if until is None or until <= morning:
            continue
        by = [
            other
            for other, each in job.tasks.items()
            if each.done
            and any(
                task.space in closed_places(job, each.space, closing.where)
                for closing in book.procedures[each.procedure].item.closes
                if closing.shuts_out == "everybody"
            )
        ]
        lines = ", ".join(f"'{other}' in line {_line(entry, other)}" for other in by)
        yield entry.error(
            ("tasks", id, "started"),
            f"'{task.space}' is closed to everybody until {until:%Y-%m-%d %H:%M}, and this is started there",
            f"closed by {lines}",
        )


def _crowded(entry: Entry[Job], started: dict[str, Task]) -> Iterator[Diagnostic]:
    """More is started in a space than crews find room in it."""
    job = entry.item
    for place in dict.fromkeys(task.space for task in started.values()):
        here = [id for id, task in started.items() if task.space == place]
        room = job.spaces[place].crews if place in job.spaces else 1
        if len(here) > room:
            lines = ", ".join(f"'{id}' in line {_line(entry, id)}" for id in here[:-1])
            crews = "one crew" if room == 1 else f"{room} crews"
            yield entry.error(
                ("tasks", here[-1], "started"),
                f"'{place}' has room for {crews}, and there is more started in it: {lines}",
                "mark as done what is finished, or take 'started' out",
            )


def _same_person(context: Context, entry: Entry[Job], started: dict[str, Task]) -> Iterator[Diagnostic]:
    """Two started tasks go on at once, so no person may be needed for both."""
    hands = hands_of(entry.item)
    who = {id: eligible_crew(context.book, hands, task) for id, task in started.items()}
    for one, other in combinations(started, 2):
        ones, others = ([{hand.person for hand in team} for team in teams(who[id], hands)] for id in (one, other))
        if all(team & rest for team in ones for rest in others):
            needed = set.intersection(*ones, *others)
            person = f" ('{min(needed)}')" if needed else ""
            yield entry.error(
                ("tasks", other, "started"),
                f"needs the same people as '{one}' in line {_line(entry, one)}, which is started too{person}",
                "leave 'started' at the one that goes on first",
            )


def _line(entry: Entry[Job], task: str) -> int:
    return entry.document.place(("tasks", task, ""))[0]
