"""The trips of a task: how often the crew comes, how long each time, and how long it waits in between."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from build_tools.book import quantities
from build_tools.book.book import Book
from build_tools.book.model.base import Text
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Closes, Procedure
from build_tools.plan.measures import substitute_measures
from build_tools.plan.worktime import SLOTS_PER_HOUR


@dataclass(frozen=True, slots=True)
class PlannedTrip:
    """One time that the crew comes, ``slots`` long.

    ``nth`` counts those of one name from 1, and is 0 where there is one alone. ``wait`` are hours after the trip of
    that number, ``since``: from its end, or from its start. A work without trips is one, without a ``title``.
    """

    name: str
    title: Text | None
    nth: int
    slots: int
    wait: float = 0.0
    since: int = 0
    from_start: bool = False
    shut: bool = False
    in_one_day: bool = False


def trips_of(book: Book, job: Job, id: str, hours: float) -> list[PlannedTrip]:
    """The trips of a task that takes so many labour hours of all its people, in their order.

    Each is rounded up to whole slots by itself: nobody goes home in the middle of a quarter hour.
    """
    task = job.tasks[id]
    labour = book.procedures[task.procedure].item.labour
    people = task.people or labour.people
    if not labour.trips:
        return [PlannedTrip("", None, 0, _slots(hours / people), in_one_day=labour.in_one_day)]
    made: list[PlannedTrip] = []
    ends: dict[str, int] = {}
    for name, trip in labour.trips.items():
        times = times_of(book, job, id, trip.times)
        part = quantities.percent(book, trip.part) / 100
        wait = quantities.hours(book, trip.wait) if trip.wait else 0.0
        slots = _slots(hours * part / times / people)
        for nth in range(1, times + 1):
            since = ends[trip.since] if trip.since and nth == 1 else max(len(made) - 1, 0)
            made.append(
                PlannedTrip(
                    name,
                    trip.title,
                    nth if times > 1 else 0,
                    slots,
                    wait if made else 0.0,
                    since,
                    trip.counted_from == "start",
                    trip.shut and bool(made),
                    trip.in_one_day,
                )
            )
        ends[name] = len(made) - 1
    return made


def times_of(book: Book, job: Job, id: str, written: str) -> int:
    """How often a trip is made: what the task gives a calculator goes before the standard that is its default."""
    scheme, _, value = written.partition(":")
    if scheme == "value" and value in book.values:
        for start in book.values[value].item.starts():
            given = job.tasks[id].inputs.get(start.calculator, {}).get(start.input)
            if isinstance(given, str):
                written = str(substitute_measures(given, job, job.tasks[id].space))
    return max(1, quantities.count(book, written))


def last_of(procedure: Procedure, closing: Closes, trips: Sequence[PlannedTrip]) -> int:
    """The number of the trip from whose end a closing counts."""
    if closing.after is None:
        return len(trips) - 1
    return max(number for number, trip in enumerate(trips) if trip.name == closing.after)


def left_when_done(book: Book, job: Job, id: str, closing: Closes) -> float:
    """The hours of a closing that may be left when the last trip of its task is over."""
    trips = trips_of(book, job, id, 1.0)
    hours = quantities.hours(book, closing.time)
    return max(0.0, hours - hours_after(trips, last_of(book.procedures[job.tasks[id].procedure].item, closing, trips)))


def hours_after(trips: Sequence[PlannedTrip], number: int) -> float:
    """The hours that go by at least from the end of that trip to the end of the last one."""
    passed = {number: 0.0}
    for later in range(number + 1, len(trips)):
        trip = trips[later]
        waited = passed[trip.since] + trip.wait if trip.since in passed and not trip.from_start else 0.0
        passed[later] = max(passed[later - 1], waited)
    return passed[len(trips) - 1]


def _slots(hours: float) -> int:
    return max(1, ceil(round(hours * SLOTS_PER_HOUR, 6)))
