"""What sets the end date, and how much time everything else has.

The plan is taken as it stands: who is where, and in which order people and places follow. Each activity could then
start later by its total float without moving the end. The critical path goes back from the end, each time to what let
go last.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from build_tools.plan.problem import Occupancy, Problem, Solution

Reason = Literal["after", "person", "place"]


@dataclass(frozen=True, slots=True)
class Dependency:
    """One activity keeps another from starting sooner: by its result, by the same person, or by the place.

    ``lag`` names the table of the problem by which it does so after its own end.
    """

    predecessor: str
    successor: str
    reason: Reason
    what: str = ""
    lag: str = ""


def dependencies(problem: Problem, solution: Solution) -> list[Dependency]:
    """Everything that keeps the activities of a plan apart."""
    found = [
        Dependency(link.predecessor, activity.id, "after", lag=link.lag)
        for activity in problem.activities.values()
        for link in activity.predecessors
        if link.predecessor in problem.activities
    ]
    starts = solution.starts
    for person in problem.people:
        mine = [p.id for p in problem.activities.values() if p.team and person in solution.teams[p.team]]
        found += [
            Dependency(one, other, "person", person)
            for one, other in pairwise(sorted(mine, key=lambda id: (starts[id], id)))
        ]
    for place, room in problem.places.items():
        for one, other in _place_order(problem, solution, place, room):
            dries = other.worked_in and not one.worked_in
            found.append(Dependency(one.last, other.first, "place", place, "" if dries else one.closure_lag))
    return found


def _place_order(problem: Problem, solution: Solution, place: str, room: int) -> Iterator[tuple[Occupancy, Occupancy]]:
    """The occupancies of a place of which one must be over before the other begins.

    What closes a place from elsewhere waits for who works in it, not until what he has done there has dried.
    """
    occupancies = sorted(
        (occupancy for occupancy in problem.occupancies if occupancy.place == place),
        key=lambda s: solution.starts[s.first],
    )
    until = {
        id(occupancy): problem.ready(_end(problem, solution, occupancy.last), occupancy.closure_lag)
        for occupancy in occupancies
    }
    for number, one in enumerate(occupancies):
        for other in occupancies[number + 1 :]:
            if one.worked_in and other.worked_in:
                continue
            open_at = _end(problem, solution, one.last) if other.worked_in else until[id(one)]
            if (room == 1 or one.closure_lag or other.closure_lag) and open_at <= solution.starts[other.first]:
                yield one, other
    if room > 1:
        lanes: list[list[Occupancy]] = [[] for _ in range(room)]
        for occupancy in (occupancy for occupancy in occupancies if not occupancy.closure_lag):
            start = solution.starts[occupancy.first]
            free = [lane for lane in lanes if not lane or until[id(lane[-1])] <= start]
            lane = max(free, key=lambda lane: until[id(lane[-1])] if lane else -1)
            if lane:
                yield lane[-1], occupancy
            lane.append(occupancy)


def _end(problem: Problem, solution: Solution, id: str) -> int:
    return solution.starts[id] + problem.activities[id].duration


def total_float(problem: Problem, solution: Solution, found: list[Dependency] | None = None) -> dict[str, int]:
    """For each activity the slots by which it could start later, all else in its order, before the end date moves."""
    found = dependencies(problem, solution) if found is None else found
    successor: dict[str, list[Dependency]] = defaultdict(list)
    for dependency in found:
        successor[dependency.predecessor].append(dependency)
    latest: dict[str, int] = {}
    for id in sorted(
        problem.activities, key=lambda id: (solution.starts[id], problem.activities[id].duration), reverse=True
    ):
        activity = problem.activities[id]
        start = max(solution.starts[id], solution.end.value - activity.duration)
        while start > solution.starts[id] and not (
            may_start(problem, solution, id, start)
            and all(
                problem.ready(start + activity.duration, dependency.lag) <= latest[dependency.successor]
                for dependency in successor[id]
                if dependency.successor in latest
            )
        ):
            start -= 1
        latest[id] = start if activity.start is None else solution.starts[id]
    return {id: latest[id] - solution.starts[id] for id in problem.activities}


def critical_path(
    problem: Problem, solution: Solution, found: list[Dependency] | None = None
) -> list[tuple[str, Dependency | None]]:
    """The activities that set the end date, the first one first, each with what held it to its start.

    None where nothing before it did: it starts when it first may.
    """
    found = dependencies(problem, solution) if found is None else found
    before: dict[str, list[Dependency]] = defaultdict(list)
    for dependency in found:
        before[dependency.successor].append(dependency)
    ends = {id: _end(problem, solution, id) for id in problem.activities}
    if not ends:
        return []
    at: str | None = max(ends, key=lambda id: (ends[id], solution.starts[id]))
    path: list[tuple[str, Dependency | None]] = []
    seen: set[str] = set()
    while at is not None and at not in seen:
        seen.add(at)
        driving = _driving(problem, solution, before[at])
        path.append((at, driving))
        at = driving.predecessor if driving else None
    return list(reversed(path))


_RANK = {"after": 0, "place": 1, "person": 2}


def _driving(problem: Problem, solution: Solution, found: list[Dependency]) -> Dependency | None:
    """Of everything that holds an activity the one that lets it go last.

    None where it starts when it first may, or where it could start a day sooner: nothing before it counts then.
    """

    def lets_go(dependency: Dependency) -> int:
        return problem.ready(_end(problem, solution, dependency.predecessor), dependency.lag)

    last = max(found, key=lambda dependency: (lets_go(dependency), -_RANK[dependency.reason]), default=None)
    if last is None or lets_go(last) < solution.starts[last.successor] == problem.activities[last.successor].earliest:
        return None
    between = range(lets_go(last), solution.starts[last.successor])
    could = sum(may_start(problem, solution, last.successor, slot) for slot in between)
    return last if could < problem.slots_per_day else None


def may_start(problem: Problem, solution: Solution, id: str, start: int) -> bool:
    """Whether an activity may start then, for its own sake: it is allowed, and its people are there."""
    activity = problem.activities[id]
    if start < activity.earliest or activity.next_start(start) != start:
        return False
    if problem.closed_until and any(
        s.first == id and not s.worked_in and start < problem.closed_until.get(s.place, 0) for s in problem.occupancies
    ):
        return False
    team = solution.teams.get(activity.team, ())
    return not any(a < start + activity.duration and start < b for person in team for a, b in problem.people[person])
