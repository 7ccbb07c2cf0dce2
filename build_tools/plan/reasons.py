"""Why each link of the chain that sets the end date starts when it does."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Literal

from build_tools.plan.chain import Hold
from build_tools.plan.plan import Plan
from build_tools.plan.prepare import lead_days

Kind = Literal[
    "start", "not before", "delivery", "notice", "away", "free", "task", "visit", "wait", "call", "person", "place",
    "closed",
]  # fmt: skip
"""What a link waited for.

The first link of a chain waited for no other: ``start`` begins with the job, ``not before`` has its day in the job
file, ``delivery`` is not there sooner, ``notice`` cannot be called sooner, ``away`` wants people who are not there,
``free`` could begin sooner and gains nothing by it. The others follow a task: by its result (``task``), after somebody
has looked (``visit``), when it has set or dried (``wait``), when the visit that it calls may come (``call``), when a
person is free (``person``), when a place is free (``place``) or open again (``closed``).
"""


@dataclass(frozen=True, slots=True)
class Link:
    """A stretch of work or a visit of the chain, and what it waited for.

    ``trip`` is the number of its trip. ``other`` is the task before it, ``other_trip`` the trip of that, ``what`` the
    person, the place or the inspection, ``until`` when that was over. ``spare`` are the slots between in which the link
    could start as well: it gains nothing by it.
    """

    task: str
    starts: datetime
    ends: datetime
    people: tuple[str, ...]
    visit: str
    kind: Kind
    other: str = ""
    what: str = ""
    until: datetime | None = None
    spare: int = 0
    trip: int = 0
    other_trip: int = 0


def reasons(plan: Plan) -> list[Link]:
    """The chain, first link first. Pieces of one trip that follow each other without a visit are one link."""
    stretches = {stretch.piece: stretch for stretch in plan.stretches}
    links: list[Link] = []
    for piece, hold in plan.chain:
        own = stretches[piece]
        before = stretches[hold.earlier] if hold else None
        same = before and (before.task, before.trip) == (own.task, own.trip)
        if links and before and same and not own.visit and not before.visit:
            links[-1] = replace(links[-1], ends=own.ends)
            continue
        kind, what = _followed(plan, hold) if hold else (_first(plan, piece), "")
        made = Link(own.task, own.starts, own.ends, own.people, own.visit, kind, what=what, trip=own.trip)
        if before:
            made = replace(made, other=before.task, other_trip=before.trip)
        if hold:
            ready = _ready(plan, hold)
            could = [slot for slot in range(ready, plan.solution.starts[piece]) if plan.may_start(piece, slot)]
            made = replace(made, until=plan.worktime.starts(ready), spare=len(could))
        links.append(made)
    return links


def _ready(plan: Plan, hold: Hold) -> int:
    problem = plan.prepared.problem
    end = plan.solution.starts[hold.earlier] + problem.pieces[hold.earlier].slots
    return problem.ready(end, hold.wait)


def _followed(plan: Plan, hold: Hold) -> tuple[Kind, str]:
    visits = {visit.piece: visit.inspection for visit in plan.prepared.visits}
    if hold.reason == "person":
        return "person", hold.what
    if hold.reason == "place":
        return ("closed" if hold.wait else "place"), hold.what
    if hold.earlier in visits:
        return "visit", visits[hold.earlier]
    if hold.later in visits:
        return "call", visits[hold.later]
    return ("wait" if hold.wait else "task"), ""


def _first(plan: Plan, piece: str) -> Kind:
    """Why a piece starts when it does that follows no other."""
    problem, start = plan.prepared.problem, plan.solution.starts[piece]
    task_id = next(stretch.task for stretch in plan.stretches if stretch.piece == piece)
    task, earliest = plan.job.tasks[task_id], problem.pieces[piece].earliest
    if start == 0:
        return "start"
    if start == earliest:
        if any(visit.piece == piece for visit in plan.prepared.visits):
            return "notice"
        if task.not_before and start == plan.worktime.first_of(task.not_before):
            return "not before"
        materials = plan.context.book.procedures[task.procedure].item.materials
        return "delivery" if any(lead_days(plan.job, line.material) for line in materials) else "start"
    team = plan.solution.teams.get(problem.pieces[piece].team, ())
    away = any(a <= start - 1 < b for person in team for a, b in problem.people[person])
    return "away" if away else "free"
