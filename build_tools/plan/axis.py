"""The axis of time of a job: the working days that a plan with one task after another would take."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, time
from graphlib import TopologicalSorter

from build_tools.book import quantities
from build_tools.book.book import Book
from build_tools.book.model.job import Hand, Job
from build_tools.plan.crew import EligibleCrew
from build_tools.plan.horizon import SerialSchedule
from build_tools.plan.lead_times import delivery_day
from build_tools.plan.notice import notice_of
from build_tools.plan.precedence import TaskPrecedence
from build_tools.plan.segments import Segment
from build_tools.plan.start_windows import day_chunks
from build_tools.plan.trips import PlannedTrip
from build_tools.plan.worktime import WEEK, Worktime, is_working_day, working_days


@dataclass(frozen=True, slots=True)
class OpenTask:
    """A task that is not done: its trips, what is left of them, and who may do it."""

    trips: Sequence[PlannedTrip]
    segments: Sequence[Segment]
    crew: EligibleCrew


def axis_of(
    book: Book,
    job: Job,
    open_tasks: Mapping[str, OpenTask],
    precedences: Sequence[TaskPrecedence],
    hands: list[Hand],
    today: date,
    closed: date | None,
    begins: time,
    slots_per_day: int,
) -> Worktime:
    """The axis from today on. ``closed`` is the last day on which something is still closed by what is done."""
    week = week_of(job, hands)
    serial = SerialSchedule(today, hands, slots_per_day, job.holidays)
    if closed is not None:
        serial.not_before(next(iter(job.tasks)), date.fromordinal(closed.toordinal() + 1))
    for id in _in_order(job, open_tasks, precedences):
        _one_after_another(book, job, id, open_tasks[id], serial, week)
    days = range(today.toordinal(), serial.day.toordinal() + 1)
    count = sum(is_working_day(date.fromordinal(day), week, job.holidays) for day in days)
    return working_days(today, count + 1, begins, slots_per_day, week, job.holidays)


def week_of(job: Job, hands: Collection[Hand]) -> list[str]:
    """The days of the week on which somebody works on a job."""
    return sorted({*job.days, *(day for hand in hands for day in hand.days)}, key=WEEK.index)


def _in_order(job: Job, open_tasks: Collection[str], precedences: Sequence[TaskPrecedence]) -> list[str]:
    """The open tasks, those that are started first, each before what comes after it."""
    graph: dict[str, list[str]] = {id: [] for id in open_tasks}
    for link in precedences:
        if link.successor in graph and link.predecessor in graph and job.tasks[link.successor].started is None:
            graph[link.successor].append(link.predecessor)
    order = list(TopologicalSorter(graph).static_order())
    return sorted(order, key=lambda id: job.tasks[id].started is None)


def _one_after_another(
    book: Book, job: Job, id: str, open_task: OpenTask, serial: SerialSchedule, week: Collection[str]
) -> None:
    task = job.tasks[id]
    serial.not_before(id, max(task.not_before or serial.today, delivery_day(book, job, task, serial.today)))
    for segment in open_task.segments:
        if segment.begins:
            serial.wait(id, open_task.trips[segment.trip].wait + (24 if task.started else 0))
        for slots in day_chunks(segment.slots, serial.slots_per_day):
            serial.work(id, open_task.crew, slots)
        if segment.hold_point is not None:
            days = notice_of(book, job, segment.hold_point[0]).days
            serial.visit(id, days + 1, week)  # a call in the evening is made in the morning
    closes = book.procedures[task.procedure].item.closes
    waits = [quantities.hours(book, closing.time) for closing in closes if closing.shuts_out != "users"]
    serial.wait(id, max(waits, default=0))
    if waits and len(open_task.segments) > 1:
        serial.visit(id, 0, week)  # a look waits until its place is open again
