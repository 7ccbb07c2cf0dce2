"""When to finish a floor. Common practice: last, with the other trades done on the bare wood.

Three coats a day apart keep everybody out of the house for three days, so what can be done before them is done before.
"""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path

import pytest

from build_tools.book.checks.context import Context
from build_tools.commands.site import BOOK
from build_tools.plan.compare import figures
from build_tools.plan.plan import Plan
from build_tools.plan.planning import plan_job
from build_tools.plan.what_if import varied
from tests.builds import context_of

JOB = "garden-studio"
TODAY = date(2026, 12, 1)


@pytest.fixture(scope="module")
def context() -> Context:
    return context_of(BOOK)


@pytest.fixture(scope="module")
def plans(context: Context, kept: Path) -> dict[str, Plan]:
    """The job with the floor finished before the cabinets come, and last, as the site has them."""
    entry = context.book.jobs[JOB]
    return {
        name: plan_job(context, varied(entry, entry.item.variants[name]), TODAY, cache=kept, objectives=2)
        for name in ("floor-before-cabinets", "floor-last")
    }


def test_the_coats_shut_the_house_for_three_days(context: Context, plans: dict[str, Plan]) -> None:
    """From the end of the first coat, by the standard and by the calculator."""
    assert context.book.values["floor-closed"].item.quantity == "72 h"
    answer = context.call_with("floor-finish", {"measured_area": "400 sq ft"}).answer
    assert answer is not None
    assert answer["closed"] == 72
    for plan in plans.values():
        shut = [one for one in plan.closed if one.task == "finish"]
        assert {one.place for one in shut} == {"studio", *plan.job.spaces}
        assert all((one.ends - one.starts).total_seconds() / 3600 >= 72 for one in shut)
        assert figures(plan).closed_days >= 1


def test_a_coat_is_laid_on_each_of_three_days(plans: dict[str, Plan]) -> None:
    """Common practice, and the can: a day between coats. The book's own calculator counts alike."""
    for plan in plans.values():
        coats = plan.of_task("finish")
        assert len({one.starts.date() for one in coats}) == len(coats) == 3
        assert all(other.starts - one.starts >= timedelta(hours=24) for one, other in pairwise(coats))
        assert len({one.ends - one.starts for one in coats}) == 1


def test_the_floor_last_ends_the_job_sooner(plans: dict[str, Plan]) -> None:
    early, last = plans["floor-before-cabinets"], plans["floor-last"]
    assert early.solution.end.proved
    assert last.solution.end.proved
    assert last.end.date() < early.end.date()
