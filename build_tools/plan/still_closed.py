"""What tasks that are done leave closed."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, timedelta

from build_tools.book.book import Book
from build_tools.book.model.job import Job
from build_tools.plan.precedence import closed_places
from build_tools.plan.trips import left_when_done


def still_closed(book: Book, job: Job, evening: Callable[[date], datetime]) -> dict[str, datetime]:
    """Until when each place is closed by what is done already; ``evening`` is when work ends on a day."""
    found: dict[str, datetime] = {}
    for id, task in job.tasks.items():
        for closing in book.procedures[task.procedure].item.closes if task.done else []:
            if closing.shuts_out == "everybody" and task.done:
                until = evening(task.done) + timedelta(hours=left_when_done(book, job, id, closing))
                for place in closed_places(job, task.space, closing.where):
                    found[place] = max(until, found.get(place, until))
    return found
