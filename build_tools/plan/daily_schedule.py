"""A plan day by day: the work, the visits, what is closed and what waits."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import date, datetime

from build_tools.plan.lags import Lag, lags
from build_tools.plan.person_days import by_day
from build_tools.plan.plan import Closed, Plan, Stretch


@dataclass(frozen=True, slots=True)
class WorkBlock:
    """Work on one trip of a task, by its number, on one day without a break. ``goes_on``: more follows another day."""

    task: str
    people: tuple[str, ...]
    starts: datetime
    ends: datetime
    goes_on: bool = False
    trip: int = 0


@dataclass(slots=True)
class ScheduleDay:
    """A working day of the job, each list in the order of the clock."""

    day: date
    work: list[WorkBlock] = field(default_factory=list)
    visits: list[Stretch] = field(default_factory=list)
    closed: list[Closed] = field(default_factory=list)
    lags: list[Lag] = field(default_factory=list)

    def of(self, person: str) -> list[WorkBlock]:
        """What somebody does on this day."""
        return [part for part in self.work if person in part.people]


def daily_schedule(plan: Plan) -> list[ScheduleDay]:
    """The working days of a job from the first to its end; what is closed or waits stands on each that it reaches.

    A working day on which nothing is done is among them, since something dries or somebody is waited for.
    """
    days = {day: ScheduleDay(day) for day in plan.worktime.days if day <= plan.end.date()}
    for stretch in sorted(plan.stretches, key=lambda one: (one.starts, one.ends, one.activity)):
        for starts, ends in by_day(plan, stretch):
            if stretch.visit:
                days[starts.date()].visits.append(stretch)
            else:
                _add(plan, days[starts.date()], stretch, starts, ends)
    for each in days.values():
        begins, over = plan.worktime.hours_of(each.day)
        each.closed = [one for one in plan.closed if one.starts < over and one.ends > begins]
        each.lags = [one for one in lags(plan) if one.starts < over and one.ends > begins]
    return list(days.values())


def _add(plan: Plan, day: ScheduleDay, stretch: Stretch, starts: datetime, ends: datetime) -> None:
    goes_on = plan.ends(stretch.task).date() > day.day
    part = WorkBlock(stretch.task, stretch.people, starts, ends, goes_on, stretch.trip)
    for index, other in enumerate(day.work):
        if (other.task, other.trip, other.people, other.ends) == (part.task, part.trip, part.people, starts):
            day.work[index] = replace(part, starts=other.starts)
            return
    day.work.append(part)
