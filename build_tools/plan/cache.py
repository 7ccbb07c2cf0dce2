"""Planned jobs kept on disk, so that a job is planned again only after an edit that its plan can see.

Most edits are of the words of a step. A plan reads who works, how long, with what and what holds a task up; it never
reads a sentence of a step. So those alone are left out, and any other edit of the book has its jobs planned again.
"""

from __future__ import annotations

import hashlib
import pickle
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from functools import lru_cache, partial
from importlib.metadata import version
from pathlib import Path
from typing import Any, cast

from pydantic import BaseModel

from build_tools.book.book import Entry, ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, stops
from build_tools.book.files import write_whole
from build_tools.book.model.base import Text
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Procedure
from build_tools.environment import ROOT
from build_tools.plan.checks import check_job
from build_tools.plan.planned_job import PlannedJob, cannot_be_planned
from build_tools.plan.problem import Infeasible
from build_tools.plan.standards import context_of

PLANS_PER_JOB = 4
"""Plans kept of one job: for the owner and for the crew, of two days."""
CODE = ("build_tools/book", "build_tools/plan", "calculators")
LIBRARIES = ("ortools", "pydantic")
"""What makes plans, beside the book itself."""
CachedJob = tuple[PlannedJob, list[Diagnostic]]


def plan_jobs(context: Context, today: date, cache: Path) -> tuple[dict[str, PlannedJob], list[Diagnostic]]:
    """Every job of the book checked and planned, by its id, and the diagnostics of all.

    Where a job has a mistake, none is planned. ``cache`` is the folder that holds what builds keep; a file of it that
    cannot be read is made again.
    """
    if not context.book.jobs:
        return {}, []
    files = {id: cache / "jobs" / id / name for id, name in cache_names(context, today).items()}
    jobs, diagnostics = context.memo.named("plans", files, partial(_plan_jobs, context, today, cache, files))
    return {
        id: _with_context(made, context_of(context, context.book.jobs[id])) for id, made in jobs.items()
    }, diagnostics


def _plan_jobs(
    context: Context, today: date, cache: Path, files: dict[str, Path]
) -> tuple[dict[str, PlannedJob], list[Diagnostic]]:
    held = {id: found for id, file in files.items() if (found := _read(file))}
    warnings = {id: check_job(context, context.book.jobs[id], today) for id in files if id not in held}
    diagnostics = [diagnostic for found in warnings.values() for diagnostic in found]
    if stops(diagnostics):
        return {}, sorted(diagnostics)
    if warnings:
        from build_tools.plan import planning  # brings the solver, which is large

        planning.presolve(context, today, cache, [context.book.jobs[id] for id in warnings])
    for id in warnings:
        try:
            held[id] = planning.plan_with_variants(context, context.book.jobs[id], today, cache), warnings[id]
        except Infeasible as infeasible:
            diagnostics.append(cannot_be_planned(context.book.jobs[id], infeasible))
        else:
            _write(files[id], held[id])
    diagnostics += [diagnostic for id, (_, found) in held.items() if id not in warnings for diagnostic in found]
    return {id: held[id][0] for id in files if id in held}, sorted(diagnostics)


def cache_names(context: Context, today: date) -> dict[str, str]:
    """By job, the name of the file of its plan: another one after any edit that the plan can see."""
    book = repr((_code_hash(), today, context.book.language, list(_entries(context))))
    return {id: _cache_name(book, entry) for id, entry in sorted(context.book.jobs.items())}


def _cache_name(book: str, entry: Entry[Job]) -> str:
    read = repr((book, entry.item, entry.document.file, entry.document.text))
    return f"{hashlib.sha256(read.encode()).hexdigest()[:32]}.pickle"


def _entries(context: Context) -> Iterator[object]:
    for scheme, entry in context.book.entries():
        if isinstance(entry, ProcedureEntry):
            yield (
                entry.trade,
                entry.id,
                context.memo.of("unworded", entry.item, (), partial(_without_words, entry.item)),
            )
        elif scheme != "job":
            yield scheme, entry.id, entry.item


def _without_words(procedure: Procedure) -> str:
    """A procedure without the words of its steps."""
    return repr((procedure.model_copy(update={"steps": []}), _without_texts(procedure.steps)))


def _without_texts(part: Any) -> object:
    """A part of a step without its texts."""
    if isinstance(part, Text):
        return None
    if isinstance(part, BaseModel):
        return type(part), [_without_texts(value) for _, value in part]
    return [_without_texts(each) for each in part] if isinstance(part, list) else part


@lru_cache
def _code_hash() -> str:
    """Changes with the code and the libraries that make plans."""
    made = hashlib.sha256(" ".join(map(version, LIBRARIES)).encode())
    for path in sorted(path for folder in CODE for path in (ROOT / folder).rglob("*.py")):
        made.update(path.read_bytes())
    return made.hexdigest()


def _read(file: Path) -> CachedJob | None:
    try:
        return cast(CachedJob, pickle.loads(file.read_bytes()))
    except Exception:  # there is none, or it is not whole: reading that can raise anything
        return None


def _write(file: Path, planned: CachedJob) -> None:
    """Without the book, whose words a plan shows as they are when it is read again."""
    made, warnings = planned
    write_whole(file, pickle.dumps((_with_context(made, cast(Context, None)), warnings)))
    for older in sorted(file.parent.iterdir(), key=lambda each: -each.stat().st_mtime_ns)[PLANS_PER_JOB:]:
        older.unlink(missing_ok=True)


def _with_context(planned: PlannedJob, context: Context) -> PlannedJob:
    """The same plans, with the words of that book."""
    others = [replace(one, plan=one.plan and replace(one.plan, context=context)) for one in planned.variants]
    accelerations = [
        replace(one, plan=one.plan and replace(one.plan, context=context)) for one in planned.accelerations
    ]
    return replace(planned, plan=replace(planned.plan, context=context), variants=others, accelerations=accelerations)
