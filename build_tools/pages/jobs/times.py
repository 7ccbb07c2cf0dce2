"""Days and times of day as the pages of a job write them."""

from __future__ import annotations

from datetime import date, datetime


def day(moment: date) -> str:
    """A day as people write it.

    >>> day(date(2026, 12, 7))
    'Mon 7 Dec'
    """
    return f"{moment:%a} {moment.day} {moment:%b}"


def clock(moment: datetime) -> str:
    """A time of day.

    >>> clock(datetime(2026, 12, 7, 7, 30))
    '7:30'
    """
    return f"{moment.hour}:{moment:%M}"


def at(moment: datetime) -> str:
    """A day with its time.

    >>> at(datetime(2026, 12, 7, 7, 30))
    'Mon 7 Dec 7:30'
    """
    return f"{day(moment)} {clock(moment)}"
