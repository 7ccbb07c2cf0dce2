"""Prints everything that is worked out for the jobs of the book as data: run as a program of its own.

The solver may do a part of its usual work alone, so that this is soon done; most searches end at that limit.
"""

from __future__ import annotations

import json
from datetime import date
from typing import Any

from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.commands.site import BOOK
from build_tools.plan import left_shift, solve
from build_tools.plan.data import plan_as_data
from build_tools.plan.order_quantities import ordered
from build_tools.plan.planning import plan_accelerations, plan_with_variants

PART = 0.05


def every_plan(context: Context, job: str) -> dict[str, Any]:
    """The plan of a job, its variants, what would bring it in (late or not), what it takes, and how that is cut."""
    entry = context.book.jobs[job]
    today: date = entry.item.start
    made = plan_with_variants(context, entry, today)
    return {
        "plan": plan_as_data(made.plan, accelerations=plan_accelerations(context, entry, made.plan, today)),
        "variants": {other.id: plan_as_data(other.plan, other.id) if other.plan else "" for other in made.variants},
        "takes": repr(made.plan.prepared.take_offs),
        "cuts": {what.material: what.cuts.answer for what in ordered(made.plan) if what.cuts},
    }


if __name__ == "__main__":
    solve.CLOSED, solve.MOVES, left_shift.EFFORT = PART * solve.CLOSED, PART * solve.MOVES, PART * left_shift.EFFORT
    book = Context.of(load_book(BOOK).book, Memo())
    print(json.dumps({job: every_plan(book, job) for job in book.book.jobs}, indent=1))
