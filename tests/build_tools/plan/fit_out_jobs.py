"""Small jobs of the book itself: closets, trim and a floor in a room or two."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import lru_cache
from typing import Any

from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.commands.site import BOOK
from build_tools.plan.plan import Plan
from build_tools.plan.planning import plan_job
from tests.build_tools.plan.drawn_jobs import job_of

MONDAY = date(2026, 12, 7)
ROOM = {"title": "Room", "dwelling": "house", "length": "20 ft", "width": "15 ft"}
BATH = {"title": "Bath", "dwelling": "house", "length": "8 ft", "width": "5 ft"}
PEOPLE = [{"person": "ida-marsh"}, {"person": "tobin-reyes"}, {"person": "wren-okafor"}]
FLOOR = {"procedure": "flooring-receiving", "inputs": {"strip-floor-take-off": {"rooms": "space:rooms"}}}
TILE = {
    "procedure": "tile-floor",
    "inputs": {"tile-take-off": {"length": "space:length", "width": "space:width"}},
    "serves": {"doorways": "1", "sealed-joints": "8 ft"},
}
PAD = {"length": "20'", "width": "10'", "ends": "2", "reinforced": "no"}


@lru_cache
def book() -> Context:
    """The book of this project."""
    return Context.of(load_book(BOOK).book, Memo())


def closet(width: str, **more: Any) -> dict[str, Any]:
    """A task that fits out a closet."""
    return {"procedure": "closet-shelf-pole", "inputs": {"closet": {"width": width}}, **more}


def planned(tasks: dict[str, Any], spaces: dict[str, Any] | None = None, today: date = MONDAY, **job: Any) -> Plan:
    """A plan of these tasks by the crew, its end alone."""
    entry = job_of(tasks, spaces=spaces or {"room": ROOM}, people=PEOPLE, **job)
    here = replace(book().book, jobs={"drawn": entry}, _standards=None)
    return plan_job(Context.of(here, book().memo), entry, today, objectives=1)
