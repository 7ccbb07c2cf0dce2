"""Plans a job: prepares the problem, solves it, and reads the solution back as dates.

A solved problem is kept under ``cache`` by what went into it, so that a build solves only what has changed. Whoever
imports this file loads the solver.
"""

from __future__ import annotations

import hashlib
import json
from contextlib import suppress
from dataclasses import asdict
from datetime import date
from importlib.metadata import version
from pathlib import Path

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.files import write_whole
from build_tools.book.model.job import Job
from build_tools.book.parallel import parallel_map
from build_tools.plan.critical_path import critical_path, dependencies, total_float
from build_tools.plan.infeasible_subset import infeasible_subset
from build_tools.plan.left_shift import left_shift
from build_tools.plan.needs import TakeOff
from build_tools.plan.plan import Closed, Plan, Stretch, planned_from
from build_tools.plan.planned_job import PlannedJob
from build_tools.plan.prepare import prepare
from build_tools.plan.prepared import Prepared
from build_tools.plan.problem import Infeasible, Objective, Problem, Solution
from build_tools.plan.solve import OnImprovement, solve
from build_tools.plan.standards import context_of
from build_tools.plan.what_if import Acceleration, VariantPlan, accelerations, varied

TOGETHER = "these cannot all be done as the job file has them"
AT_ONCE = "these are started, so they go on at once, and they keep each other from their places or people"
VERSION = 11
"""Raised when the solver's model changes, so that plans kept from before are made again."""


def plan_job(
    context: Context,
    entry: Entry[Job],
    today: date,
    *,
    cache: Path | None = None,
    on_improvement: OnImprovement | None = None,
    objectives: int = 3,
    take_offs: dict[str, TakeOff] | None = None,
) -> Plan:
    """The plan of a job whose checks found nothing.

    Raises :class:`~build_tools.plan.problem.Infeasible` where no plan keeps all the rules.
    """
    here = context_of(context, entry)
    prepared = prepare(here, entry, planned_from(entry.item, today), take_offs)
    solution = _solved(prepared.problem, cache, on_improvement, objectives)
    return read_back(here, entry, prepared, solution)


def plan_with_variants(context: Context, entry: Entry[Job], today: date, cache: Path | None = None) -> PlannedJob:
    """Plan a job whose checks found nothing; raises :class:`~build_tools.plan.problem.Infeasible`."""
    plan = plan_job(context, entry, today, cache=cache)
    accelerations = plan_accelerations(context, entry, plan, today, cache) if plan.days_to_spare < 0 else []
    return PlannedJob(plan, variants(context, entry, today, cache), accelerations, today)


def variants(context: Context, entry: Entry[Job], today: date, cache: Path | None = None) -> list[VariantPlan]:
    """Every variant of a job, planned."""
    found = []
    for id, variant in entry.item.variants.items():
        title = variant.title.inside(context.book.language)
        try:
            plan = plan_job(context, varied(entry, variant), today, cache=cache, objectives=2)
            found.append(VariantPlan(id, title, variant.why, plan))
        except Infeasible as infeasible:
            found.append(VariantPlan(id, title, variant.why, None, infeasible.message))
    return found


def plan_accelerations(
    context: Context, entry: Entry[Job], plan: Plan, today: date, cache: Path | None = None
) -> list[Acceleration]:
    """What would let the job end sooner, each tried by planning it."""
    found = []
    for what, other, there in accelerations(context, entry):
        try:
            tried = plan_job(there, other, today, cache=cache, objectives=1)
        except Infeasible:
            continue
        found.append(Acceleration(what, tried))
    return sorted(found, key=lambda each: -each.days_sooner(plan))


def presolve(context: Context, today: date, cache: Path, jobs: list[Entry[Job]]) -> None:
    """Solve the jobs and their variants on every core; each leaves its solution, with which it is planned at once."""
    others = [(varied(entry, variant), 2) for entry in jobs for variant in entry.item.variants.values()]

    def solve(item: tuple[Entry[Job], int]) -> None:
        entry, objectives = item
        with suppress(Infeasible):  # told when it is planned
            plan_job(context, entry, today, cache=cache, objectives=objectives)

    parallel_map(solve, [*((entry, 3) for entry in jobs), *others], min_items=2, chunk_size=1)


def read_back(context: Context, entry: Entry[Job], prepared: Prepared, solution: Solution) -> Plan:
    """A solution as dates, with its critical path and total float."""
    plan = Plan(context, entry, prepared, solution)
    problem, worktime = prepared.problem, prepared.worktime
    visits = {visit.activity: visit.inspection for visit in prepared.visits}
    for task, activities in prepared.activities.items():
        for id in activities:
            start = solution.starts[id]
            end = start + problem.activities[id].duration
            team = solution.teams.get(problem.activities[id].team, ())
            plan.stretches.append(
                Stretch(
                    id,
                    task,
                    worktime.starts(start),
                    worktime.ends(end),
                    team,
                    visits.get(id, ""),
                    prepared.trip_of.get(id, 0),
                )
            )
    for occupancy in problem.occupancies:
        if occupancy.closure_lag:
            end = solution.starts[occupancy.last] + problem.activities[occupancy.last].duration
            until = min(problem.lags[occupancy.closure_lag][end], worktime.slots - 1)
            task = problem.activities[occupancy.last].team
            since = occupancy.since or occupancy.last
            shut = worktime.ends(solution.starts[since] + problem.activities[since].duration)
            plan.closed.append(Closed(occupancy.place, task, shut, worktime.starts(until)))
    found = dependencies(problem, solution)
    plan.total_float = total_float(problem, solution, found)
    plan.critical_path = critical_path(problem, solution, found)
    return plan


def _solved(problem: Problem, cache: Path | None, on_improvement: OnImprovement | None, objectives: int) -> Solution:
    if cache is None:
        return _solved_or_explained(problem, on_improvement, objectives)
    text = json.dumps([VERSION, version("ortools"), asdict(problem), objectives], sort_keys=True)
    file = cache / "plans" / f"{hashlib.sha256(text.encode()).hexdigest()[:32]}.json"
    if file.is_file():
        return _from_json(json.loads(file.read_text(encoding="utf-8")))
    solution = _solved_or_explained(problem, on_improvement, objectives)
    write_whole(file, json.dumps(asdict(solution)))
    return solution


def _solved_or_explained(problem: Problem, on_improvement: OnImprovement | None, objectives: int) -> Solution:
    """Solve; where that is impossible, say which tasks stand in each other's way."""
    try:
        return left_shift(problem, solve(problem, on_improvement, objectives), objectives)
    except Infeasible as infeasible:
        if infeasible.activities or not infeasible.proved:
            raise
        tasks = infeasible_subset(problem)
        begun = {id.partition(" ")[0] for id, activity in problem.activities.items() if activity.start is not None}
        raise Infeasible(AT_ONCE if set(tasks) <= begun else TOGETHER, tasks) from None


def _from_json(data: dict[str, dict[str, object]]) -> Solution:
    teams: dict[str, tuple[str, ...]] = {name: tuple(team) for name, team in data["teams"].items()}  # type: ignore[arg-type]
    objectives = {name: Objective(**data[name]) for name in ("end", "closed", "moves")}  # type: ignore[arg-type]
    return Solution(data["starts"], teams, **objectives)  # type: ignore[arg-type]
