"""When offices can be called: the hours in which somebody answers, and days counted as offices count them."""

from __future__ import annotations

from collections.abc import Collection
from datetime import date, datetime, time, timedelta

from build_tools.plan.worktime import is_weekday

OPENS, CLOSES = time(8), time(16)
"""The hours in which somebody answers at an office, a plant and a counter; this crew's rule."""
A_CALL = timedelta(minutes=30)
"""Time for a call with its waiting."""


def add_weekdays(day: date, count: int, off: Collection[date]) -> date:
    """The weekday so many weekdays later (before, for a negative count).

    >>> add_weekdays(date(2026, 12, 4), 2, [])
    datetime.date(2026, 12, 8)
    """
    step = timedelta(days=1 if count >= 0 else -1)
    left = abs(count)
    while left:
        day += step
        left -= is_weekday(day, off)
    return day


def weekday_up_to(day: date, off: Collection[date]) -> date:
    """The day itself where offices work on it, or the last such day before.

    >>> weekday_up_to(date(2026, 12, 6), []).isoformat()
    '2026-12-04'
    """
    while not is_weekday(day, off):
        day -= timedelta(days=1)
    return day


def ends_by(latest: datetime, off: Collection[date]) -> datetime:
    """By when a call has to be over that may end at ``latest``: in office hours, with time for it before.

    >>> ends_by(datetime(2026, 12, 7, 7, 30), []).isoformat()
    '2026-12-04T16:00:00'
    """
    day = weekday_up_to(latest.date(), off)
    if day == latest.date() and latest < datetime.combine(day, OPENS) + A_CALL:
        day = add_weekdays(day, -1, off)
    return min(latest, datetime.combine(day, CLOSES))


def answered_from(moment: datetime, off: Collection[date]) -> datetime:
    """When a call can begin at that moment or after it: at once in office hours, else when they begin next.

    >>> answered_from(datetime(2026, 12, 4, 15, 45), []).isoformat()
    '2026-12-07T08:00:00'
    """
    day = moment.date()
    if is_weekday(day, off) and moment <= datetime.combine(day, CLOSES) - A_CALL:
        return max(moment, datetime.combine(day, OPENS))
    return datetime.combine(add_weekdays(day, 1, off), OPENS)
