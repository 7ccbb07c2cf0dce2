"""Which edits plan a job again: all but those of the words of steps. And what is read of a plan that was kept."""

from __future__ import annotations

import ast
import subprocess
import sys
from dataclasses import replace
from datetime import date
from pathlib import Path
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
from build_tools.environment import ROOT
from build_tools.plan import planning
from build_tools.plan.cache import PLANS_PER_JOB, cache_names, plan_jobs
from build_tools.plan.checks import check_jobs
from build_tools.plan.data import plan_as_data
from build_tools.plan.prepare import prepare
from build_tools.plan.standards import context_of
from tests import builds

pytestmark = pytest.mark.slow

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
    assert cache_names(other, TODAY) == cache_names(context, TODAY)
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
    now = cache_names(context, TODAY)
    assert all(cache_names(other, TODAY) != now for other in others)
    assert not set(cache_names(context, date(2026, 12, 8)).values()) & set(now.values())


def test_a_job_s_edit_plans_that_job_alone(context: Context) -> None:
    """A job file may say what the book reads otherwise: its lines count too, since diagnostics name them."""
    book = context.book
    id, entry = next(iter(book.jobs.items()))
    document = replace(entry.document, text=f"# a comment\n{entry.document.text}")
    other = replace(context, book=replace(book, jobs={**book.jobs, id: replace(entry, document=document)}))
    before, now = cache_names(context, TODAY), cache_names(other, TODAY)
    assert [each for each in before if before[each] != now[each]] == [id]


def test_the_name_of_a_plan_is_the_same_in_another_process(context: Context) -> None:
    """No name hangs on where a thing lies in memory, nor on the order of a set, which differs from run to run."""
    code = (
        "import datetime, pathlib; from tests import builds; from build_tools.plan.cache import cache_names;"
        f"print(cache_names(builds.context_of(pathlib.Path({str(BOOK)!r})), datetime.date({TODAY:%Y, %-m, %-d})))"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT).stdout
    assert ast.literal_eval(told) == cache_names(context, TODAY)


@pytest.fixture
def small() -> Path:
    """A small book with one job."""
    return Path(__file__).parent / "small"


def test_a_plan_that_is_kept_is_the_one_that_was_made(
    small: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made, diagnostics = plan_jobs(builds.context_of(small, {}), TODAY, tmp_path)
    monkeypatch.setattr(planning, "plan_with_variants", lambda *_: pytest.fail("planned again"))
    here = builds.context_of(small, {})
    again, diagnostics_again = plan_jobs(here, TODAY, tmp_path)
    assert diagnostics_again == diagnostics
    assert {id: plan_as_data(job.plan) for id, job in again.items()} == {
        id: plan_as_data(job.plan) for id, job in made.items()
    }
    assert all(job.plan.context.book.procedures is here.book.procedures for job in again.values())


def test_what_is_solved_ahead_is_what_is_planned(small: Path, tmp_path: Path) -> None:
    """One solution for each job and each variant, whichever core found it: nothing is solved twice."""
    context = builds.context_of(small, {})
    plan_jobs(context, TODAY, tmp_path)
    jobs = context.book.jobs.values()
    assert len(list(tmp_path.glob("plans/*.json"))) == sum(1 + len(entry.item.variants) for entry in jobs) > len(jobs)


def test_what_cannot_be_read_is_made_again_and_old_plans_go(small: Path, tmp_path: Path) -> None:
    context = builds.context_of(small, {})
    for day in range(1, PLANS_PER_JOB + 3):
        plan_jobs(context, date(2026, 12, day), tmp_path)
    files = list(tmp_path.glob("jobs/*/*.pickle"))
    assert len(files) == PLANS_PER_JOB * len(context.book.jobs)
    for file in files:
        file.write_bytes(file.read_bytes()[:100])
    jobs, _ = plan_jobs(builds.context_of(small, {}), date(2026, 12, PLANS_PER_JOB + 2), tmp_path)
    assert jobs.keys() == context.book.jobs.keys()
