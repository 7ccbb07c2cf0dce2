"""When work may start within its day: cut at the evening, or done before it, or while offices are open."""

from __future__ import annotations

from collections.abc import Collection
from datetime import date

from build_tools.plan.problem import Spans
from build_tools.plan.worktime import Worktime, is_weekday

VISIT = 2
"""Slots that an inspector's visit takes."""
LEAST = 2
"""Slots: so much of a work is done at least before a night and after it; else it is not cut there."""


def least_slots(slots_per_day: int) -> int:
    """The least of a work on each side of a night, half of a short day."""
    return min(LEAST, slots_per_day // 2)


def day_chunks(slots: int, slots_per_day: int) -> list[int]:
    """A part cut at the length of a day; no crumb of it is left for another one."""
    full, rest = divmod(slots, slots_per_day)
    more = max(least_slots(slots_per_day) - rest, 0) if full and rest else 0
    chunks = [*[slots_per_day] * full, rest + more]
    if more:
        chunks[-2] -= more
    return [chunk for chunk in chunks if chunk]


def within_a_day(worktime: Worktime, slots: int) -> Spans:
    """When work may start that is done before the evening."""
    slots_per_day = worktime.slots_per_day
    return [(index * slots_per_day, (index + 1) * slots_per_day - slots + 1) for index in range(len(worktime.days))]


def not_cut_short(worktime: Worktime, slots: int) -> Spans:
    """When work may start that goes on over a night, if at all, with the least on both sides of it."""
    slots_per_day, least = worktime.slots_per_day, least_slots(worktime.slots_per_day)
    spans = []
    for day in range(0, worktime.slots, slots_per_day):
        spans.append((day, day + slots_per_day - slots + 1))
        if day + slots_per_day - slots + least <= day + slots_per_day - least:
            spans.append((day + slots_per_day - slots + least, day + slots_per_day - least + 1))
    return spans


def office_visits(worktime: Worktime, holidays: Collection[date]) -> Spans:
    """When somebody from outside may come: weekdays that are no holidays, so that he is done before evening."""
    slots_per_day = worktime.slots_per_day
    return [
        (index * slots_per_day, (index + 1) * slots_per_day - VISIT + 1)
        for index, day in enumerate(worktime.days)
        if is_weekday(day, holidays)
    ]
