"""What a preview takes for unchanged, so that it does not plan again: the words of steps, and nothing else."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from pydantic import BaseModel

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.memo import Memo
from build_tools.book.model.base import Prose, Text
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.step import Step
from build_tools.commands.site import BOOK
from build_tools.plan.again import read_by_plans
from build_tools.plan.checks import check_jobs
from build_tools.plan.prepare import prepare
from build_tools.plan.standards import context_of
from tests import builds

TODAY = date(2026, 12, 7)


@pytest.fixture(scope="module")
def context() -> Context:
    """The book."""
    return builds.context_of(BOOK)


def with_procedures(context: Context, change: Any) -> Context:
    """The book with each of its procedures changed."""
    changed = {
        id: replace(entry, item=change(entry.item)) if isinstance(entry, ProcedureEntry) else entry
        for id, entry in context.book.procedures.items()
    }
    return Context.of(replace(context.book, procedures=changed, _standards=None), Memo())


def silent(part: Any) -> Any:
    """A part of a step in which every text says something else."""
    if isinstance(part, Text):
        return Prose("Something else.") if isinstance(part, Prose) else Text("Something else")
    if isinstance(part, BaseModel):
        return part.model_copy(update={name: silent(value) for name, value in part})
    return [silent(each) for each in part] if isinstance(part, list) else part


def reworded(procedure: Procedure) -> Procedure:
    """A procedure whose steps are the same, in other words."""
    return procedure.model_copy(update={"steps": silent(procedure.steps)})


def test_no_word_of_a_step_counts_for_a_plan(context: Context) -> None:
    """Every job of the book with all its steps reworded has the same problem to solve, and takes the same."""
    other = with_procedures(context, reworded)
    assert other.book.procedures["toilet-set"].item != context.book.procedures["toilet-set"].item
    assert read_by_plans(other, TODAY) == read_by_plans(context, TODAY)
    assert check_jobs(other, TODAY) == check_jobs(context, TODAY)
    for entry in context.book.jobs.values():
        before, now = (prepare(context_of(one, entry), entry, entry.item.start) for one in (context, other))
        assert (now.problem, now.take_offs, now.visits) == (before.problem, before.take_offs, before.visits)


def test_everything_else_counts(context: Context) -> None:
    """A hold or a reading that is gone, hours, a standard, a person, the job, the day: each plans anew."""
    book = context.book

    def steps(change: dict[str, Any]) -> Context:
        def changed(step: Step) -> Step:
            return step.model_copy(update=change) if step.hold else step

        return with_procedures(
            context, lambda one: one.model_copy(update={"steps": [changed(step) for step in one.steps]})
        )

    def entries(field: str, **change: Any) -> Context:
        id, entry = next(iter(getattr(book, field).items()))
        new: Any = {field: {**getattr(book, field), id: replace(entry, item=entry.item.model_copy(update=change))}}
        return replace(context, book=replace(book, **new))

    job: Job = next(iter(book.jobs.values())).item
    hours = book.procedures["toilet-set"].item.labour.model_copy(update={"hours": "99 h"})
    others = [
        steps({"hold": None}),
        steps({"id": "another"}),
        steps({"measurements": []}),
        entries("procedures", labour=hours),
        entries("procedures", title=Text("Another")),
        entries("values", quantity="3 in"),
        entries("people", trained_in=[]),
        entries("jobs", deadline=date.fromordinal(job.deadline.toordinal() + 1)),
    ]
    read = read_by_plans(context, TODAY)
    assert all(read_by_plans(other, TODAY) != read for other in others)
    assert read_by_plans(context, date(2026, 12, 8)) != read
