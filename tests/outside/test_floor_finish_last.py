"""When to finish a floor: common practice among flooring crews, worked out by hand on a calendar.

Three coats a day apart shut a house for three days. A crew that finishes the floor before the cabinets stands outside
for those days. One that leaves the finish to the end, and does the other trades on the bare wood, has nobody who needs
to get in. No published source is known for it; the days are counted here.
"""

from __future__ import annotations

from datetime import date, datetime

from build_tools.book.book import Entry
from build_tools.book.model.job import Job
from build_tools.plan.plan import Plan
from build_tools.plan.planning import plan_job, variants
from tests.build_tools.plan.drawn_jobs import Fields, before, book_of, closes, job_of, procedure

MONDAY = date(2026, 12, 7)
BOOK = book_of(
    {
        "sand": procedure("8 h"),
        "coats": procedure("8 h", before=[before("sand")], closes=[closes("72 h", where="same dwelling")]),
        "cabinets": procedure("16 h"),
        "trim": procedure("8 h"),
        "keys": procedure("1 h"),
    }
)
FIRST = {"title": "Floor before the cabinets", "why": "Empty.", "tasks": [{"task": "cabinets", "after": ["coats"]}]}
LAST = {"title": "Floor last", "why": "Nobody is shut out.", "tasks": [{"task": "sand", "after": ["trim"]}]}


def job(*names: str, **after: list[str]) -> Entry[Job]:
    """One house, one crew, those tasks, and the two ways to do them; the trim goes on when the cabinets stand."""
    tasks: dict[str, Fields] = {name: {"procedure": name, "after": after.get(name, [])} for name in names}
    return job_of(tasks, variants={"first": FIRST, "last": LAST})


def both(entry: Entry[Job]) -> tuple[Plan, Plan]:
    """The plans of the two variants."""
    first, last = (other.plan for other in variants(BOOK, entry, MONDAY))
    assert first is not None
    assert last is not None
    assert first.solution.end.proved
    assert last.solution.end.proved
    return first, last


def test_a_floor_that_is_finished_last_ends_the_job_three_working_days_sooner() -> None:
    """First: sand Mon, coats Tue, shut until Fri evening, cabinets Mon and Tue, trim Wed. Last: Mon to Fri in a row."""
    first, last = both(job("sand", "coats", "cabinets", "trim", trim=["cabinets"]))
    assert first.end == datetime(2026, 12, 16, 15, 30)
    assert last.end == datetime(2026, 12, 11, 15, 30)
    assert first.days_to_spare + 3 == last.days_to_spare


def test_only_the_first_way_has_days_on_which_nobody_works() -> None:
    """Five days of work each: in eight weekdays, or in five."""
    first, last = both(job("sand", "coats", "cabinets", "trim", trim=["cabinets"]))
    assert weekdays(first) - 3 == weekdays(last) == len({stretch.starts.date() for stretch in last.stretches}) == 5


def weekdays(plan: Plan) -> int:
    """The weekdays from the start of the job to its end."""
    days = range(MONDAY.toordinal(), plan.end.toordinal() + 1)
    return sum(date.fromordinal(day).weekday() < 5 for day in days)


def test_the_plan_itself_leaves_the_finish_to_the_end() -> None:
    """Nobody told it so: with the order left open the earliest end has the coats last."""
    entry = job("sand", "coats", "cabinets", "trim", trim=["cabinets"])
    plan = plan_job(BOOK, entry, MONDAY)
    assert plan.end == datetime(2026, 12, 11, 15, 30)
    assert plan.ends("coats") == plan.end


def test_who_wants_the_keys_waits_for_the_coats_either_way() -> None:
    """With the keys handed over in the house the last way is still no later: the coats dry over the weekend."""
    entry = job("sand", "coats", "cabinets", "trim", "keys", trim=["cabinets"], keys=["trim", "coats"])
    first, last = both(entry)
    assert first.end == datetime(2026, 12, 17, 8, 30)
    assert last.end == datetime(2026, 12, 15, 8, 30)
