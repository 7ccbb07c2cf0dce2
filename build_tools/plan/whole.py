"""Everything that is worked out for one job: its plan, its variants, and what would bring a late end in."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.job import Job
from build_tools.book.problems import Problem
from build_tools.plan.plan import Plan, plan_job
from build_tools.plan.problem import Impossible
from build_tools.plan.what_if import Other, Try, bring_in, variants


@dataclass(slots=True)
class Whole:
    """A job with all that is known of it. ``today`` is the day on which it was worked out."""

    plan: Plan
    variants: list[Other] = field(default_factory=list)
    tries: list[Try] = field(default_factory=list)
    today: date = date.min


def whole(context: Context, entry: Entry[Job], today: date, kept: Path | None = None) -> Whole:
    """Plan a job whose checks found nothing; raises :class:`~build_tools.plan.problem.Impossible`."""
    plan = plan_job(context, entry, today, kept=kept)
    tries = bring_in(context, entry, plan, today, kept) if plan.days_to_spare < 0 else []
    return Whole(plan, variants(context, entry, today, kept), tries, today)


def cannot_be_planned(entry: Entry[Job], impossible: Impossible) -> Problem:
    """The problem of a job that has no plan, at the first of the tasks concerned, with the lines of the others."""
    tasks = [task for task in impossible.tasks if task in entry.item.tasks]
    at = ("tasks", tasks[0], "") if tasks else ()
    lines = ", ".join(f"'{task}' in line {entry.document.place(('tasks', task, ''))[0]}" for task in tasks)
    hint = f"the tasks concerned: {lines}" if tasks else ""
    return entry.error(at, f"this job cannot be planned: {impossible.message}", hint)
