"""Work that is not left overnight."""

from __future__ import annotations

from datetime import date
from typing import Any

from build_tools.book.model.procedure import Procedure
from build_tools.plan.planning import plan_job
from tests.build_tools.plan.drawn_jobs import book_of, job_of, procedure


def pour(hours: str, in_one_day: bool) -> Procedure:
    made = procedure(hours)
    return made.model_copy(update={"labour": made.labour.model_copy(update={"in_one_day": in_one_day})})


def pours(in_one_day: bool) -> list[tuple[int, int]]:
    """The days on which the second of two pours of five hours begins and ends."""
    context = book_of({"form": procedure("5 h"), "pour": pour("5 h", in_one_day)})
    tasks: dict[str, dict[str, Any]] = {"form": {"procedure": "form"}, "pour": {"procedure": "pour", "after": ["form"]}}
    plan = plan_job(context, job_of(tasks), date(2026, 12, 7), objectives=1)
    return [(one.starts.day, one.ends.day) for one in plan.of_task("pour")]


def test_concrete_is_not_left_overnight() -> None:
    assert pours(in_one_day=True) == [(8, 8)]


def test_other_work_goes_on_in_the_morning() -> None:
    assert pours(in_one_day=False) == [(7, 8)]
