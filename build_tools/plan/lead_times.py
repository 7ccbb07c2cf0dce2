"""How long what is ordered takes to come."""

from __future__ import annotations

from datetime import date
from math import ceil

from build_tools.book.book import Book
from build_tools.book.model.job import Job, Task
from build_tools.plan.office_hours import add_weekdays
from calculators.reading import read


def lead_days(job: Job, thing: str) -> int:
    """The working days from an order to the delivery of a material or a tool; 0 where nothing is said."""
    times = [price.lead_time for price in job.prices if thing in (price.material, price.tool) and price.lead_time]
    return max((ceil(read(text, "time", "h") / 24) for text in times), default=0)


def delivery_day(book: Book, job: Job, task: Task, today: date) -> date:
    """The day on which what a task uses can be there, if it is ordered today."""
    procedure = book.procedures[task.procedure].item
    used = {line.material for line in procedure.materials} | {line.tool for line in procedure.tools}
    longest = max((lead_days(job, thing) for thing in used), default=0)
    return add_weekdays(today, longest, job.holidays)
