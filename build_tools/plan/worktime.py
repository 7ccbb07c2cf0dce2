"""Working time as one axis: the quarter hours in which somebody may work, one after another, nights left out.

Slot 0 is the first quarter hour of the first working day. An activity of work that ends at slot 3 fills slots 0 to 2.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

SLOT = timedelta(minutes=15)
SLOTS_PER_HOUR = 4
"""Slots in an hour."""
WEEK = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


@dataclass(frozen=True, slots=True)
class Worktime:
    """The working days and the slots of each: ``slots_per_day`` slots from ``begins`` on.

    >>> made = working_days(date(2026, 12, 4), 3, time(7, 30), 32, ["monday", "friday"])
    >>> [day.isoformat() for day in made.days]
    ['2026-12-04', '2026-12-07', '2026-12-11']
    >>> made.starts(32).isoformat(), made.ends(32).isoformat()
    ('2026-12-07T07:30:00', '2026-12-04T15:30:00')
    """

    days: tuple[date, ...]
    begins: time
    slots_per_day: int

    @property
    def slots(self) -> int:
        """All slots."""
        return len(self.days) * self.slots_per_day

    def starts(self, slot: int) -> datetime:
        """When work that starts in that slot starts."""
        day, inside = divmod(slot, self.slots_per_day)
        return datetime.combine(self.days[day], self.begins) + inside * SLOT

    def ends(self, slot: int) -> datetime:
        """When work that ends with that slot ends: the evening before where the slot is a morning's first."""
        return self.starts(slot - 1) + SLOT if slot else self.starts(0)

    def slot_at(self, moment: datetime) -> int:
        """The first slot that starts at that moment or later; one past the last where there is none."""
        return bisect_left(range(self.slots), moment, key=self.starts)

    def first_of(self, day: date) -> int:
        """The first slot of that day, or of the working day after it."""
        return bisect_left(self.days, day) * self.slots_per_day

    def ready(self, wait: timedelta) -> list[int]:
        """For each slot at which work may end, the first slot in which work may start after waiting that long."""
        if not wait:
            return list(range(self.slots + 1))
        found, at = [], 0
        for slot in range(self.slots + 1):
            moment = self.ends(slot) + wait
            while at < self.slots and self.starts(at) < moment:
                at += 1
            found.append(at)
        return found

    def hours_of(self, day: date) -> tuple[datetime, datetime]:
        """From when to when work goes on, on a working day."""
        begins = datetime.combine(day, self.begins)
        return begins, begins + self.slots_per_day * SLOT

    def blocked(self, days: Iterable[date]) -> list[tuple[int, int]]:
        """The slots of those days, as spans from start to end; days that follow each other make one span."""
        spans: list[tuple[int, int]] = []
        for day in sorted(set(days)):
            index = bisect_left(self.days, day)
            if index < len(self.days) and self.days[index] == day:
                start = index * self.slots_per_day
                if spans and spans[-1][1] == start:
                    spans[-1] = (spans[-1][0], start + self.slots_per_day)
                else:
                    spans.append((start, start + self.slots_per_day))
        return spans


def is_working_day(day: date, week: Collection[str], holidays: Collection[date]) -> bool:
    """Whether anybody works on that day: its name is one of the week's, and it is no holiday."""
    return WEEK[day.weekday()] in week and day not in holidays


def is_weekday(day: date, off: Collection[date] = ()) -> bool:
    """Whether offices work on that day."""
    return day.weekday() < 5 and day not in off


def working_days(
    start: date, count: int, begins: time, slots_per_day: int, week: Collection[str], off: Collection[date] = ()
) -> Worktime:
    """So many working days from ``start`` on: days of that week that are not off."""
    days: list[date] = []
    day = start
    while len(days) < count:
        if WEEK[day.weekday()] in week and day not in off:
            days.append(day)
        day += timedelta(days=1)
    return Worktime(tuple(days), begins, slots_per_day)
