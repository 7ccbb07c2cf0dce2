"""Why each link of the critical path that sets the end date starts when it does."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Literal

from build_tools.plan.critical_path import Dependency
from build_tools.plan.lead_times import lead_days
from build_tools.plan.plan import Plan

Kind = Literal[
    "start", "not before", "delivery", "notice", "away", "free", "task", "visit", "wait", "call", "person", "place",
    "closed",
]  # fmt: skip
"""What a link waited for.

The first link of a critical path waited for no other: ``start`` begins with the job, ``not before`` has its day in the
job file, ``delivery`` is not there sooner, ``notice`` cannot be called sooner, ``away`` wants people who are not there,
``free`` could begin sooner and gains nothing by it. The others follow a task: by its result (``task``), after somebody
has looked (``visit``), when it has set or dried (``wait``), when the visit that it calls may come (``call``), when a
person is free (``person``), when a place is free (``place``) or open again (``closed``).
"""


@dataclass(frozen=True, slots=True)
class CriticalLink:
    """A stretch of work or a visit of the critical path, and what it waited for.

    ``trip`` is the number of its trip. ``predecessor`` is the task before it, ``predecessor_trip`` the trip of that,
    ``what`` the person, the place or the inspection, ``until`` when that was over. ``spare`` are the slots between in
    which the link could start as well: it gains nothing by it.
    """

    task: str
    starts: datetime
    ends: datetime
    people: tuple[str, ...]
    visit: str
    kind: Kind
    predecessor: str = ""
    what: str = ""
    until: datetime | None = None
    spare: int = 0
    trip: int = 0
    predecessor_trip: int = 0


def reasons(plan: Plan) -> list[CriticalLink]:
    """The critical path, first link first; those of one trip that follow each other without a visit are one link."""
    stretches = {stretch.activity: stretch for stretch in plan.stretches}
    links: list[CriticalLink] = []
    for activity, dependency in plan.critical_path:
        own = stretches[activity]
        before = stretches[dependency.predecessor] if dependency else None
        same = before and (before.task, before.trip) == (own.task, own.trip)
        if links and before and same and not own.visit and not before.visit:
            links[-1] = replace(links[-1], ends=own.ends)
            continue
        kind, what = _followed(plan, dependency) if dependency else (_first(plan, activity), "")
        made = CriticalLink(own.task, own.starts, own.ends, own.people, own.visit, kind, what=what, trip=own.trip)
        if before:
            made = replace(made, predecessor=before.task, predecessor_trip=before.trip)
        if dependency:
            ready = _ready(plan, dependency)
            could = [slot for slot in range(ready, plan.solution.starts[activity]) if plan.may_start(activity, slot)]
            made = replace(made, until=plan.worktime.starts(ready), spare=len(could))
        links.append(made)
    return links


def _ready(plan: Plan, dependency: Dependency) -> int:
    problem = plan.prepared.problem
    end = plan.solution.starts[dependency.predecessor] + problem.activities[dependency.predecessor].duration
    return problem.ready(end, dependency.lag)


def _followed(plan: Plan, dependency: Dependency) -> tuple[Kind, str]:
    visits = {visit.activity: visit.inspection for visit in plan.prepared.visits}
    if dependency.reason == "person":
        return "person", dependency.what
    if dependency.reason == "place":
        return ("closed" if dependency.lag else "place"), dependency.what
    if dependency.predecessor in visits:
        return "visit", visits[dependency.predecessor]
    if dependency.successor in visits:
        return "call", visits[dependency.successor]
    return ("wait" if dependency.lag else "task"), ""


def _first(plan: Plan, activity: str) -> Kind:
    """Why an activity starts when it does that follows no other."""
    problem, start = plan.prepared.problem, plan.solution.starts[activity]
    task_id = next(stretch.task for stretch in plan.stretches if stretch.activity == activity)
    task, earliest = plan.job.tasks[task_id], problem.activities[activity].earliest
    if start == 0:
        return "start"
    if start == earliest:
        if any(visit.activity == activity for visit in plan.prepared.visits):
            return "notice"
        if task.not_before and start == plan.worktime.first_of(task.not_before):
            return "not before"
        materials = plan.context.book.procedures[task.procedure].item.materials
        return "delivery" if any(lead_days(plan.job, line.material) for line in materials) else "start"
    team = plan.solution.teams.get(problem.activities[activity].team, ())
    away = any(a <= start - 1 < b for person in team for a, b in problem.people[person])
    return "away" if away else "free"
