"""The plan of a job: prepared, solved, and read back as dates.

A solved problem is kept under ``kept`` by what went into it, so that a build solves only what has changed.
"""

from __future__ import annotations

import hashlib
import json
from dataclasses import asdict, dataclass, field
from datetime import date, datetime
from importlib.metadata import version
from pathlib import Path

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.files import write_whole
from build_tools.book.model.job import Job
from build_tools.plan.chain import Hold, chain, holds, may_start, slack
from build_tools.plan.conflict import in_the_way
from build_tools.plan.prepare import Prepared, prepare
from build_tools.plan.problem import Aim, Impossible, Problem, Solution
from build_tools.plan.settle import settle
from build_tools.plan.solve import Told, solve
from build_tools.plan.standards import context_of
from build_tools.plan.take_off import TakeOff
from build_tools.plan.worktime import Worktime, is_weekday

TOGETHER = "these cannot all be done as the job file has them"
AT_ONCE = "these are started, so they go on at once, and they keep each other from their places or people"
VERSION = 11
"""Raised when the solver's model changes, so that plans kept from before are made again."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Work of a task without a break: a piece with its times, or a visit by somebody from outside.

    ``trip`` is the number of the trip that it belongs to.
    """

    piece: str
    task: str
    starts: datetime
    ends: datetime
    people: tuple[str, ...]
    visit: str = ""
    trip: int = 0


@dataclass(frozen=True, slots=True)
class Closed:
    """A place that is shut to everybody, from when to when, and after which task; its own later trips go on in it."""

    place: str
    task: str
    starts: datetime
    ends: datetime


@dataclass(slots=True)
class Plan:
    """When everything happens. ``context`` is the book as it holds on this job."""

    context: Context
    entry: Entry[Job]
    prepared: Prepared
    solution: Solution
    stretches: list[Stretch] = field(default_factory=list)
    closed: list[Closed] = field(default_factory=list)
    slack: dict[str, int] = field(default_factory=dict)
    chain: list[tuple[str, Hold | None]] = field(default_factory=list)

    @property
    def job(self) -> Job:
        """The job itself."""
        return self.entry.item

    @property
    def worktime(self) -> Worktime:
        """The axis of time."""
        return self.prepared.worktime

    @property
    def end(self) -> datetime:
        """When the last task ends."""
        return self.worktime.ends(self.solution.end.value)

    @property
    def days_to_spare(self) -> int:
        """Weekdays that are no holidays between the end and the deadline; less than nothing when it is late."""
        one, other = sorted((self.end.date(), self.job.deadline))
        days = [date.fromordinal(day) for day in range(one.toordinal() + 1, other.toordinal() + 1)]
        count = sum(is_weekday(day, self.job.holidays) for day in days)
        return count if self.end.date() <= self.job.deadline else -max(count, 1)

    def of_task(self, task: str) -> list[Stretch]:
        """The stretches of a task in their order."""
        return [stretch for stretch in self.stretches if stretch.task == task]

    def starts(self, task: str) -> datetime:
        """When a task starts."""
        return self.of_task(task)[0].starts

    def ends(self, task: str) -> datetime:
        """When a task ends, its last visit with it."""
        return self.of_task(task)[-1].ends

    def may_start(self, piece: str, slot: int) -> bool:
        """Whether a piece may start then, for its own sake: it is allowed, and its people are there."""
        return may_start(self.prepared.problem, self.solution, piece, slot)

    def slack_of(self, task: str) -> int:
        """The slots by which a task could start later, all else in its order, before the end date moves."""
        return min(self.slack[piece] for piece in self.prepared.pieces[task])


def planned_from(job: Job, today: date) -> date:
    """The day from which a job is planned: its start until something is done or begun, then today."""
    begun = any(task.done or task.started for task in job.tasks.values())
    return max(today, job.start) if begun else job.start


def plan_job(
    context: Context,
    entry: Entry[Job],
    today: date,
    *,
    kept: Path | None = None,
    told: Told | None = None,
    aims: int = 3,
    take_offs: dict[str, TakeOff] | None = None,
) -> Plan:
    """The plan of a job whose checks found nothing.

    Raises :class:`~build_tools.plan.problem.Impossible` where no plan keeps all the rules.
    """
    here = context_of(context, entry)
    prepared = prepare(here, entry, planned_from(entry.item, today), take_offs)
    solution = _solved(prepared.problem, kept, told, aims)
    return read_back(here, entry, prepared, solution)


def read_back(context: Context, entry: Entry[Job], prepared: Prepared, solution: Solution) -> Plan:
    """A solution as dates, with its chain and slack."""
    plan = Plan(context, entry, prepared, solution)
    problem, worktime = prepared.problem, prepared.worktime
    visits = {visit.piece: visit.inspection for visit in prepared.visits}
    for task, pieces in prepared.pieces.items():
        for id in pieces:
            start = solution.starts[id]
            end = start + problem.pieces[id].slots
            team = solution.teams.get(problem.pieces[id].team, ())
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
    for stay in problem.stays:
        if stay.closed:
            end = solution.starts[stay.last] + problem.pieces[stay.last].slots
            until = min(problem.waits[stay.closed][end], worktime.slots - 1)
            task = problem.pieces[stay.last].team
            since = stay.since or stay.last
            shut = worktime.ends(solution.starts[since] + problem.pieces[since].slots)
            plan.closed.append(Closed(stay.place, task, shut, worktime.starts(until)))
    found = holds(problem, solution)
    plan.slack = slack(problem, solution, found)
    plan.chain = chain(problem, solution, found)
    return plan


def _solved(problem: Problem, kept: Path | None, told: Told | None, aims: int) -> Solution:
    if kept is None:
        return _explained(problem, told, aims)
    text = json.dumps([VERSION, version("ortools"), asdict(problem), aims], sort_keys=True)
    file = kept / "plans" / f"{hashlib.sha256(text.encode()).hexdigest()[:32]}.json"
    if file.is_file():
        return _from_json(json.loads(file.read_text(encoding="utf-8")))
    solution = _explained(problem, told, aims)
    write_whole(file, json.dumps(asdict(solution)))
    return solution


def _explained(problem: Problem, told: Told | None, aims: int) -> Solution:
    """Solve; where that is impossible, say which tasks stand in each other's way."""
    try:
        return settle(problem, solve(problem, told, aims), aims)
    except Impossible as impossible:
        if impossible.pieces or not impossible.proved:
            raise
        tasks = in_the_way(problem)
        begun = {id.partition(" ")[0] for id, piece in problem.pieces.items() if piece.start is not None}
        raise Impossible(AT_ONCE if set(tasks) <= begun else TOGETHER, tasks) from None


def _from_json(data: dict[str, dict[str, object]]) -> Solution:
    teams: dict[str, tuple[str, ...]] = {name: tuple(team) for name, team in data["teams"].items()}  # type: ignore[arg-type]
    aims = {name: Aim(**data[name]) for name in ("end", "closed", "moves")}  # type: ignore[arg-type]
    return Solution(data["starts"], teams, **aims)  # type: ignore[arg-type]
