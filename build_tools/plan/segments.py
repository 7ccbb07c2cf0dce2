"""The parts of a task that are each done without waiting: its trips, cut where somebody from outside looks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from build_tools.book.book import Book
from build_tools.book.model.job import Job
from build_tools.plan.trips import PlannedTrip
from build_tools.plan.worktime import SLOTS_PER_HOUR
from calculators.reading import read


@dataclass(frozen=True, slots=True)
class Segment:
    """A part of a task that is done without waiting: a trip, or what a look from outside cuts it into.

    ``trip`` is the number of the trip; ``begins``, whether it begins with this part. ``hold_point`` is the inspection
    that ends the part, with its step.
    """

    slots: int
    trip: int
    begins: bool
    hold_point: tuple[str, str] | None


def segments_of(book: Book, job: Job, id: str, trips: Sequence[PlannedTrip]) -> list[Segment]:
    """The parts of a task in their order; the last has no look from outside at its end, and may be empty.

    Of a started task those that are left; an inspection at its very beginning is still to come.
    """
    steps = book.procedures[job.tasks[id].procedure].item.steps
    whole, used = _used(book, job, id, trips)
    looks: list[tuple[int, tuple[str, str]]] = []
    for number, step in enumerate(steps, 1):
        if step.hold and book.inspections[step.hold.inspection].item.by == "outside":
            until = max(round(whole * number / len(steps)), 1)
            if until >= used:
                looks.append((max([until, *(at for at, _ in looks)]), (step.hold.inspection, step.id)))
    segments: list[Segment] = []
    at, begins = used, 0
    for number, trip in enumerate(trips):
        last = number == len(trips) - 1
        ends = whole if last else begins + trip.slots
        while looks and looks[0][0] <= ends:
            until, look = looks.pop(0)
            segments.append(Segment(until - at, number, at == begins, look))
            at = until
        if at < ends or last:
            segments.append(Segment(ends - at, number, at == begins, None))
            at = ends
        begins = ends
    return segments


def _used(book: Book, job: Job, id: str, trips: Sequence[PlannedTrip]) -> tuple[int, int]:
    """How long a task takes with its people, in slots, and how much of that is done of one that is started."""
    task = job.tasks[id]
    whole = sum(trip.slots for trip in trips)
    if task.left is None:
        return whole, 0
    people = task.people or book.procedures[task.procedure].item.labour.people
    left = max(1, ceil(round(read(task.left, "time", "h") / people * SLOTS_PER_HOUR, 6)))
    return max(whole, left), max(whole - left, 0)
