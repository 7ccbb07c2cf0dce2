"""What each person does on each day of a plan."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, datetime

from build_tools.plan.plan import Plan, Stretch
from build_tools.plan.worktime import SLOT


@dataclass(slots=True)
class PersonWork:
    """What is done of one trip of a task on one day: from when to when, and by whom.

    ``before``: it was begun on an earlier day. ``after``: it goes on on a later one.
    """

    task: str
    people: tuple[str, ...]
    times: list[tuple[datetime, datetime]] = field(default_factory=list)
    before: bool = False
    after: bool = False
    trip: int = 0


@dataclass(frozen=True, slots=True)
class ExpectedVisit:
    """Somebody from outside comes to look at a task."""

    task: str
    inspection: str
    starts: datetime


@dataclass(slots=True)
class PersonDay:
    """One day of one person: his parts in the order in which he comes to them, and who comes to look at them."""

    person: str
    day: date
    parts: list[PersonWork] = field(default_factory=list)
    comes: list[ExpectedVisit] = field(default_factory=list)


def person_days(plan: Plan, person: str) -> list[PersonDay]:
    """The days on which somebody works, each with what he does."""
    teams = {stretch.task: stretch.people for stretch in plan.stretches if not stretch.visit}
    found: dict[date, PersonDay] = {}
    for stretch in sorted(plan.stretches, key=lambda one: (one.starts, one.activity)):
        if stretch.visit:
            if person in teams.get(stretch.task, ()):
                day = found.setdefault(stretch.starts.date(), PersonDay(person, stretch.starts.date()))
                day.comes.append(ExpectedVisit(stretch.task, stretch.visit, stretch.starts))
        elif person in stretch.people:
            for starts, ends in by_day(plan, stretch):
                day = found.setdefault(starts.date(), PersonDay(person, starts.date()))
                _add(plan, day, stretch, starts, ends)
    return [found[day] for day in sorted(found)]


def _add(plan: Plan, day: PersonDay, stretch: Stretch, starts: datetime, ends: datetime) -> None:
    part = next((one for one in day.parts if (one.task, one.trip) == (stretch.task, stretch.trip)), None)
    if part is None:
        part = PersonWork(stretch.task, stretch.people, trip=stretch.trip)
        day.parts.append(part)
    if part.times and part.times[-1][1] == starts:
        part.times[-1] = (part.times[-1][0], ends)
    else:
        part.times.append((starts, ends))
    work = [one for one in plan.of_task(stretch.task) if not one.visit]
    part.before = plan.job.tasks[stretch.task].started is not None or work[0].starts.date() < day.day
    part.after = work[-1].ends.date() > day.day


def by_day(plan: Plan, stretch: Stretch) -> Iterator[tuple[datetime, datetime]]:
    """A stretch cut at the evenings: its times on each of its days."""
    worktime = plan.worktime
    length = worktime.slots_per_day * SLOT
    for day in worktime.days:
        if stretch.starts.date() <= day <= stretch.ends.date():
            begins = datetime.combine(day, worktime.begins)
            starts, ends = max(stretch.starts, begins), min(stretch.ends, begins + length)
            if starts < ends:
                yield starts, ends
