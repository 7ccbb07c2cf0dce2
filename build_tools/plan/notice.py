"""How long ahead somebody from outside is called, and when he may come."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from math import ceil

from build_tools.book import quantities
from build_tools.book.book import Book
from build_tools.book.model.job import Job
from build_tools.plan.office_hours import A_CALL, add_weekdays, answered_from


@dataclass(frozen=True, slots=True)
class Notice:
    """How long ahead somebody is called: as it is written, in weekdays where it is given in days, and in hours."""

    text: str
    weekdays: int | None
    hours: float

    @property
    def days(self) -> int:
        """The days that pass at most, where each day of work is one."""
        return ceil(self.hours / 24) if self.weekdays is None else self.weekdays

    def over(self, moment: datetime, holidays: Collection[date]) -> datetime:
        """When somebody may come who can be called from a moment on: his notice counts from the end of the call."""
        if not self.hours:
            return moment
        called = answered_from(moment, holidays) + A_CALL
        if self.weekdays is None:
            return called + timedelta(hours=self.hours)
        return datetime.combine(add_weekdays(called.date(), self.weekdays, holidays), called.time())


def notice_of(book: Book, job: Job, inspection: str) -> Notice:
    """The notice of an inspection on a job, which may have its own."""
    usual = book.inspections[inspection].item.notice
    notice = next((visit.notice for visit in job.visits if visit.inspection == inspection), usual)
    text, hours = quantities.text(book, notice), quantities.hours(book, notice)
    return Notice(text, round(hours / 24) if "day" in text else None, hours)
