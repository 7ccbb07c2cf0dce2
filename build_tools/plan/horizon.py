"""How many days the axis of a job needs: those of a plan in which one task is done after the other, all waits between.

Such a plan keeps every rule, so the best one ends no later.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, field
from datetime import date, timedelta
from math import ceil

from build_tools.book.model.job import Hand
from build_tools.plan.crew import EligibleCrew, common_days, teams
from build_tools.plan.problem import Infeasible
from build_tools.plan.worktime import WEEK, is_weekday

MOST = timedelta(days=5 * 365)
"""A job is over by then."""
NO_TEAM = "those who may do it never work on the same day"
NO_WEEKDAY = "somebody from outside comes on Monday to Friday, and nobody works on those days"
TOO_LONG = "it would end more than five years from now"


@dataclass(slots=True)
class SerialSchedule:
    """One task after another: ``day`` is the first on which the next may start, ``room`` is left of the day before.

    ``slots_per_day`` is the slots of a day; ``off`` are the holidays.
    """

    today: date
    hands: list[Hand]
    slots_per_day: int
    off: Collection[date] = ()
    day: date = field(init=False)
    room: int = field(init=False, default=0)

    def __post_init__(self) -> None:
        self.day = self.today

    def work(self, task: str, able: EligibleCrew, slots: int) -> None:
        """Work of so many slots by one team of those who may."""
        before = self.day - timedelta(days=1)
        team = self._team(task, able)
        if slots <= self.room and _there(team, before, self.off):
            self.room -= slots
            return
        while slots > 0:
            while not _there(team, self.day, self.off):
                self._next(task)
            self.room = max(0, self.slots_per_day - slots)
            slots -= self.slots_per_day
            self._next(task)

    def not_before(self, task: str, day: date) -> None:
        """Nothing starts before that day."""
        if day >= self.day:
            self.room = 0
            self.day = day
            self._check(task)

    def wait(self, task: str, hours: float) -> None:
        """A wait by the clock."""
        if hours > MOST / timedelta(hours=1):
            raise Infeasible(TOO_LONG, (task,))
        if hours:
            self.not_before(task, self.day + timedelta(days=ceil(hours / 24)))

    def visit(self, task: str, days: int, work_days: Collection[str]) -> None:
        """Somebody from outside comes, so many weekdays after he is called."""
        if not set(work_days) & set(WEEK[:5]):
            raise Infeasible(NO_WEEKDAY, (task,))
        self.room = 0
        left = days
        while left > 0:
            left -= is_weekday(self.day, self.off)
            self._next(task)
        while not (is_weekday(self.day, self.off) and WEEK[self.day.weekday()] in work_days):
            self._next(task)
        self._next(task)

    def _next(self, task: str) -> None:
        self.day += timedelta(days=1)
        self._check(task)

    def _check(self, task: str) -> None:
        if self.day - self.today > MOST:
            raise Infeasible(TOO_LONG, (task,))

    def _team(self, task: str, able: EligibleCrew) -> list[Hand]:
        """Of the teams that the task may have, the one with the most days in common."""
        best = max(teams(able, self.hands), key=lambda team: len(common_days(team)), default=())
        if not best or not common_days(best):
            raise Infeasible(NO_TEAM, (task,))
        return list(best)


def _there(team: list[Hand], day: date, off: Collection[date]) -> bool:
    return day not in off and all(WEEK[day.weekday()] in hand.days and day not in hand.off for hand in team)
