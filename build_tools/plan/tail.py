"""The work that can only come late, planned by itself: no plan of the whole ends sooner than this part of it.

A part of a problem has fewer rules than the whole. This one is small, so its end is soon proved, where the solver would
move everything before it about to find out that the last days cannot be shorter.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from graphlib import TopologicalSorter

from build_tools.plan.initial_schedule import Schedule
from build_tools.plan.model import build_model
from build_tools.plan.problem import Activity, Problem
from build_tools.plan.solver import Effort

EFFORT, EFFORT_LATE = 0.5, 0.02
"""The work that the solver may do for the end of the part, and for moving it late."""


@dataclass(frozen=True, slots=True)
class Tail:
    """The slot before which nothing of the whole can end, and the part's own plan where it is the best one."""

    bound: int
    found: Schedule | None


def plan_tail(problem: Problem, latest: int, share: float, effort: Effort) -> Tail:
    """That share of the activities which can only start last, done by slot ``latest`` and otherwise as late as may be.

    The later it is, the more room it leaves to what comes before.
    """
    earliest = earliest_starts(problem)
    ranked = sorted(earliest.values(), reverse=True)
    if not ranked:
        return Tail(0, None)
    longest = max(slot + problem.activities[id].duration for id, slot in earliest.items())
    since = ranked[int((len(ranked) - 1) * share)]
    made = build_model(subproblem(problem, {id for id, slot in earliest.items() if slot >= since}, earliest), latest)
    made.model.minimize(made.last)
    search = effort.search(made.model, EFFORT)
    if not (search.found and search.proved):
        return Tail(max(search.bound, longest), None)
    end, found = search.value, made.found(search.solver)
    made.model.add(made.last <= end)
    made.model.maximize(sum(made.start.values()))
    made.hint(found)
    search = effort.search(made.model, EFFORT_LATE)
    return Tail(max(end, longest), made.found(search.solver) if search.found else found)


def fit_before_tail(
    problem: Problem, last: Schedule, end: int, near: Schedule, effort: Effort, limit: float
) -> Schedule | None:
    """A plan with the last work when it is in ``last``, and all that comes before fitted in; None where none is found.

    ``near`` is a plan that is known, of which as much is kept as goes.
    """
    made = build_model(problem, end)
    for id, start in last[0].items():
        if problem.activities[id].start is None:
            made.model.add(made.start[id] == start)
    made.hint(near)
    search = effort.search(made.model, limit)
    return made.found(search.solver) if search.found else None


def earliest_starts(problem: Problem) -> dict[str, int]:
    """For each activity a slot before which it cannot start: by what comes before it, and by when people are there."""
    activities = problem.activities
    before = {
        id: [link.predecessor for link in activity.predecessors if link.predecessor in activities]
        if activity.start is None
        else []
        for id, activity in activities.items()
    }
    found: dict[str, int] = {}
    for id in TopologicalSorter(before).static_order():
        activity = activities[id]
        at = activity.earliest
        for link in activity.predecessors:
            if link.predecessor in found:
                at = max(at, problem.ready(found[link.predecessor] + activities[link.predecessor].duration, link.lag))
        found[id] = _first_allowed(problem, activity, at) if activity.start is None else activity.start
    return found


def _first_allowed(problem: Problem, activity: Activity, at: int) -> int:
    """The first slot from there at which an activity may start and a team of people who are not away could be found."""
    team = problem.teams.get(activity.team) if activity.duration else None
    while at < problem.horizon:
        following = activity.next_start(at)
        if following is None:
            return problem.horizon
        at = following
        if team is None:
            return at
        back = {
            person: max((b for a, b in problem.people[person] if a < at + activity.duration and at < b), default=at)
            for person in team.eligible
        }
        there = {person for person, slot in back.items() if slot == at}
        if len(there) >= team.size and (not team.leads or there & set(team.leads)):
            return at
        at = min((slot for slot in back.values() if slot > at), default=problem.horizon)
    return min(at, problem.horizon)


def subproblem(problem: Problem, keep: Collection[str], earliest: dict[str, int]) -> Problem:
    """The problem with those activities alone, none of them before its earliest start."""
    activities = {
        id: replace(
            activity,
            predecessors=[link for link in activity.predecessors if link.predecessor in keep],
            earliest=max(activity.earliest, earliest[id]),
        )
        for id, activity in problem.activities.items()
        if id in keep
    }
    teams = {activity.team for activity in activities.values()}
    return replace(
        problem,
        activities=activities,
        teams={name: team for name, team in problem.teams.items() if name in teams},
        occupancies=[
            occupancy for occupancy in problem.occupancies if occupancy.first in keep and occupancy.last in keep
        ],
    )
