"""The plan of a job: who is where on which day, as dates. How it is made stands in :mod:`build_tools.plan.planning`."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date, datetime

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.job import Job
from build_tools.plan.critical_path import Dependency, may_start
from build_tools.plan.prepared import Prepared
from build_tools.plan.problem import Solution
from build_tools.plan.worktime import Worktime, is_weekday


@dataclass(frozen=True, slots=True)
class Stretch:
    """Work of a task without a break: an activity with its times, or a visit by somebody from outside.

    ``trip`` is the number of the trip that it belongs to.
    """

    activity: str
    task: str
    starts: datetime
    ends: datetime
    people: tuple[str, ...]
    visit: str = ""
    trip: int = 0


@dataclass(frozen=True, slots=True)
class Closed:
    """A place that is shut to everybody, from when to when, and after which task; its own later trips go on in it."""

    place: str
    task: str
    starts: datetime
    ends: datetime


@dataclass(slots=True)
class Plan:
    """When everything happens. ``context`` is the book as it holds on this job."""

    context: Context
    entry: Entry[Job]
    prepared: Prepared
    solution: Solution
    stretches: list[Stretch] = field(default_factory=list)
    closed: list[Closed] = field(default_factory=list)
    total_float: dict[str, int] = field(default_factory=dict)
    critical_path: list[tuple[str, Dependency | None]] = field(default_factory=list)

    @property
    def job(self) -> Job:
        """The job itself."""
        return self.entry.item

    @property
    def worktime(self) -> Worktime:
        """The axis of time."""
        return self.prepared.worktime

    @property
    def end(self) -> datetime:
        """When the last task ends."""
        return self.worktime.ends(self.solution.end.value)

    @property
    def days_to_spare(self) -> int:
        """Weekdays that are no holidays between the end and the deadline; less than nothing when it is late."""
        one, other = sorted((self.end.date(), self.job.deadline))
        days = [date.fromordinal(day) for day in range(one.toordinal() + 1, other.toordinal() + 1)]
        count = sum(is_weekday(day, self.job.holidays) for day in days)
        return count if self.end.date() <= self.job.deadline else -max(count, 1)

    def of_task(self, task: str) -> list[Stretch]:
        """The stretches of a task in their order."""
        return [stretch for stretch in self.stretches if stretch.task == task]

    def starts(self, task: str) -> datetime:
        """When a task starts."""
        return self.of_task(task)[0].starts

    def ends(self, task: str) -> datetime:
        """When a task ends, its last visit with it."""
        return self.of_task(task)[-1].ends

    def may_start(self, activity: str, slot: int) -> bool:
        """Whether an activity may start then, for its own sake: it is allowed, and its people are there."""
        return may_start(self.prepared.problem, self.solution, activity, slot)

    def total_float_of(self, task: str) -> int:
        """The slots by which a task could start later, all else in its order, before the end date moves."""
        return min(self.total_float[activity] for activity in self.prepared.activities[task])


def planned_from(job: Job, today: date) -> date:
    """The day from which a job is planned: its start until something is done or begun, then today."""
    begun = any(task.done or task.started for task in job.tasks.values())
    return max(today, job.start) if begun else job.start
