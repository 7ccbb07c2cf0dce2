"""A job as a problem to be solved, with what the names of the problem mean."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from build_tools.book.book import Entry
from build_tools.book.model.job import Hand, Job
from build_tools.book.model.procedure import Closes
from build_tools.plan.needs import TakeOff
from build_tools.plan.precedence import TaskPrecedence
from build_tools.plan.problem import Problem
from build_tools.plan.trips import PlannedTrip
from build_tools.plan.worktime import Worktime


@dataclass(frozen=True, slots=True)
class InspectionVisit:
    """Somebody from outside looks at a task: which inspection, at which step, and how long ahead he is called."""

    activity: str
    task: str
    step: str
    inspection: str
    notice: str
    weekdays: int | None
    hours: float
    when_ready: bool


@dataclass(slots=True)
class Prepared:
    """The problem with what its names mean. ``trip_of`` is the number of the trip of each activity of work."""

    job: Entry[Job]
    worktime: Worktime
    problem: Problem
    take_offs: dict[str, TakeOff]
    precedences: list[TaskPrecedence]
    activities: dict[str, list[str]] = field(default_factory=dict)
    trips: dict[str, list[PlannedTrip]] = field(default_factory=dict)
    trip_of: dict[str, int] = field(default_factory=dict)
    visits: list[InspectionVisit] = field(default_factory=list)
    hands: list[Hand] = field(default_factory=list)
    closings: dict[str, list[Closes]] = field(default_factory=dict)
    today: date = date.min
