"""What sets the end date, and how much time everything else has.

The plan is taken as it stands: who is where, and in which order people and places follow. Each piece could then start
later by its slack without moving the end. The chain goes back from the end, each time to what let go last.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from build_tools.plan.problem import Problem, Solution, Stay

Reason = Literal["after", "person", "place"]


@dataclass(frozen=True, slots=True)
class Hold:
    """One piece keeps another from starting sooner: by its result, by the same person, or by the place.

    ``wait`` names the table of the problem by which it does so after its own end.
    """

    earlier: str
    later: str
    reason: Reason
    what: str = ""
    wait: str = ""


def holds(problem: Problem, solution: Solution) -> list[Hold]:
    """Everything that keeps the pieces of a plan apart."""
    found = [
        Hold(link.other, piece.id, "after", wait=link.wait)
        for piece in problem.pieces.values()
        for link in piece.after
        if link.other in problem.pieces
    ]
    starts = solution.starts
    for person in problem.people:
        mine = [p.id for p in problem.pieces.values() if p.team and person in solution.teams[p.team]]
        found += [
            Hold(one, other, "person", person) for one, other in pairwise(sorted(mine, key=lambda id: (starts[id], id)))
        ]
    for place, room in problem.places.items():
        for one, other in _followers(problem, solution, place, room):
            dries = other.worked_in and not one.worked_in
            found.append(Hold(one.last, other.first, "place", place, "" if dries else one.closed))
    return found


def _followers(problem: Problem, solution: Solution, place: str, room: int) -> Iterator[tuple[Stay, Stay]]:
    """The stays of a place of which one must be over before the other begins.

    What closes a place from elsewhere waits for who works in it, not until what he has done there has dried.
    """
    stays = sorted((stay for stay in problem.stays if stay.place == place), key=lambda s: solution.starts[s.first])
    until = {id(stay): problem.ready(_end(problem, solution, stay.last), stay.closed) for stay in stays}
    for number, one in enumerate(stays):
        for other in stays[number + 1 :]:
            if one.worked_in and other.worked_in:
                continue
            open_at = _end(problem, solution, one.last) if other.worked_in else until[id(one)]
            if (room == 1 or one.closed or other.closed) and open_at <= solution.starts[other.first]:
                yield one, other
    if room > 1:
        lanes: list[list[Stay]] = [[] for _ in range(room)]
        for stay in (stay for stay in stays if not stay.closed):
            start = solution.starts[stay.first]
            free = [lane for lane in lanes if not lane or until[id(lane[-1])] <= start]
            lane = max(free, key=lambda lane: until[id(lane[-1])] if lane else -1)
            if lane:
                yield lane[-1], stay
            lane.append(stay)


def _end(problem: Problem, solution: Solution, id: str) -> int:
    return solution.starts[id] + problem.pieces[id].slots


def slack(problem: Problem, solution: Solution, found: list[Hold] | None = None) -> dict[str, int]:
    """For each piece the slots by which it could start later, all else in its order, before the end date moves."""
    found = holds(problem, solution) if found is None else found
    later: dict[str, list[Hold]] = defaultdict(list)
    for hold in found:
        later[hold.earlier].append(hold)
    latest: dict[str, int] = {}
    for id in sorted(problem.pieces, key=lambda id: (solution.starts[id], problem.pieces[id].slots), reverse=True):
        piece = problem.pieces[id]
        start = max(solution.starts[id], solution.end.value - piece.slots)
        while start > solution.starts[id] and not (
            may_start(problem, solution, id, start)
            and all(
                problem.ready(start + piece.slots, hold.wait) <= latest[hold.later]
                for hold in later[id]
                if hold.later in latest
            )
        ):
            start -= 1
        latest[id] = start if piece.start is None else solution.starts[id]
    return {id: latest[id] - solution.starts[id] for id in problem.pieces}


def chain(problem: Problem, solution: Solution, found: list[Hold] | None = None) -> list[tuple[str, Hold | None]]:
    """The pieces that set the end date, the first one first, each with what held it to its start.

    None where nothing before it did: it starts when it first may.
    """
    found = holds(problem, solution) if found is None else found
    before: dict[str, list[Hold]] = defaultdict(list)
    for hold in found:
        before[hold.later].append(hold)
    ends = {id: _end(problem, solution, id) for id in problem.pieces}
    if not ends:
        return []
    at: str | None = max(ends, key=lambda id: (ends[id], solution.starts[id]))
    links: list[tuple[str, Hold | None]] = []
    seen: set[str] = set()
    while at is not None and at not in seen:
        seen.add(at)
        held = _last_held(problem, solution, before[at])
        links.append((at, held))
        at = held.earlier if held else None
    return list(reversed(links))


_RANK = {"after": 0, "place": 1, "person": 2}


def _last_held(problem: Problem, solution: Solution, found: list[Hold]) -> Hold | None:
    """Of everything that holds a piece the one that lets it go last.

    None where it starts when it first may, or where it could start a day sooner: nothing before it counts then.
    """

    def lets_go(hold: Hold) -> int:
        return problem.ready(_end(problem, solution, hold.earlier), hold.wait)

    last = max(found, key=lambda hold: (lets_go(hold), -_RANK[hold.reason]), default=None)
    if last is None or lets_go(last) < solution.starts[last.later] == problem.pieces[last.later].earliest:
        return None
    between = range(lets_go(last), solution.starts[last.later])
    could = sum(may_start(problem, solution, last.later, slot) for slot in between)
    return last if could < problem.a_day else None


def may_start(problem: Problem, solution: Solution, id: str, start: int) -> bool:
    """Whether a piece may start then, for its own sake: it is allowed, and its people are there."""
    piece = problem.pieces[id]
    if start < piece.earliest or piece.next_start(start) != start:
        return False
    if problem.shut and any(
        s.first == id and not s.worked_in and start < problem.shut.get(s.place, 0) for s in problem.stays
    ):
        return False
    team = solution.teams.get(piece.team, ())
    return not any(a < start + piece.slots and start < b for person in team for a, b in problem.people[person])
