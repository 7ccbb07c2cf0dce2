"""Everything that is worked out for one job: its plan, its variants, and what would bring a late end in."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from build_tools.book.book import Entry
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.job import Job
from build_tools.plan.plan import Plan
from build_tools.plan.problem import Infeasible
from build_tools.plan.what_if import Acceleration, VariantPlan


@dataclass(slots=True)
class PlannedJob:
    """A job with all that is known of it. ``today`` is the day on which it was worked out."""

    plan: Plan
    variants: list[VariantPlan] = field(default_factory=list)
    accelerations: list[Acceleration] = field(default_factory=list)
    today: date = date.min


def cannot_be_planned(entry: Entry[Job], infeasible: Infeasible) -> Diagnostic:
    """The diagnostic of a job that has no plan, at the first of the tasks concerned, with the lines of the others."""
    tasks = [task for task in infeasible.tasks if task in entry.item.tasks]
    at = ("tasks", tasks[0], "") if tasks else ()
    lines = ", ".join(f"'{task}' in line {entry.document.place(('tasks', task, ''))[0]}" for task in tasks)
    hint = f"the tasks concerned: {lines}" if tasks else ""
    return entry.error(at, f"this job cannot be planned: {infeasible.message}", hint)
