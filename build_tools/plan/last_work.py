"""The work that can only come late, planned by itself: no plan of the whole ends sooner than this part of it.

A part of a problem has fewer rules than the whole. This one is small, so its end is soon proved, where the solver would
move everything before it about to find out that the last days cannot be shorter.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from graphlib import TopologicalSorter

from build_tools.plan.first_plan import Found
from build_tools.plan.model import model_of
from build_tools.plan.problem import Piece, Problem
from build_tools.plan.solver import Effort

EFFORT, EFFORT_LATE = 0.5, 0.02
"""The work that the solver may do for the end of the part, and for moving it late."""


@dataclass(frozen=True, slots=True)
class LastWork:
    """The slot before which nothing of the whole can end, and the part's own plan where it is the best one."""

    bound: int
    found: Found | None


def last_work(problem: Problem, latest: int, share: float, effort: Effort) -> LastWork:
    """That share of the pieces which can only start last, done by slot ``latest`` and otherwise as late as may be.

    The later it is, the more room it leaves to what comes before.
    """
    earliest = earliest_starts(problem)
    ranked = sorted(earliest.values(), reverse=True)
    if not ranked:
        return LastWork(0, None)
    longest = max(slot + problem.pieces[id].slots for id, slot in earliest.items())
    since = ranked[int((len(ranked) - 1) * share)]
    made = model_of(part(problem, {id for id, slot in earliest.items() if slot >= since}, earliest), latest)
    made.model.minimize(made.last)
    search = effort.search(made.model, EFFORT)
    if not (search.found and search.proved):
        return LastWork(max(search.bound, longest), None)
    end, found = search.value, made.found(search.solver)
    made.model.add(made.last <= end)
    made.model.maximize(sum(made.start.values()))
    made.hint(found)
    search = effort.search(made.model, EFFORT_LATE)
    return LastWork(max(end, longest), made.found(search.solver) if search.found else found)


def fitted_in(problem: Problem, last: Found, end: int, near: Found, effort: Effort, limit: float) -> Found | None:
    """A plan with the last work when it is in ``last``, and all that comes before fitted in; None where none is found.

    ``near`` is a plan that is known, of which as much is kept as goes.
    """
    made = model_of(problem, end)
    for id, start in last[0].items():
        if problem.pieces[id].start is None:
            made.model.add(made.start[id] == start)
    made.hint(near)
    search = effort.search(made.model, limit)
    return made.found(search.solver) if search.found else None


def earliest_starts(problem: Problem) -> dict[str, int]:
    """For each piece a slot before which it cannot start: by what comes before it, and by when people are there."""
    pieces = problem.pieces
    before = {
        id: [link.other for link in piece.after if link.other in pieces] if piece.start is None else []
        for id, piece in pieces.items()
    }
    found: dict[str, int] = {}
    for id in TopologicalSorter(before).static_order():
        piece = pieces[id]
        at = piece.earliest
        for link in piece.after:
            if link.other in found:
                at = max(at, problem.ready(found[link.other] + pieces[link.other].slots, link.wait))
        found[id] = _first_allowed(problem, piece, at) if piece.start is None else piece.start
    return found


def _first_allowed(problem: Problem, piece: Piece, at: int) -> int:
    """The first slot from there at which a piece may start and a team of people who are not away could be found."""
    team = problem.teams.get(piece.team) if piece.slots else None
    while at < problem.horizon:
        following = piece.next_start(at)
        if following is None:
            return problem.horizon
        at = following
        if team is None:
            return at
        back = {
            person: max((b for a, b in problem.people[person] if a < at + piece.slots and at < b), default=at)
            for person in team.may
        }
        there = {person for person, slot in back.items() if slot == at}
        if len(there) >= team.size and (not team.leads or there & set(team.leads)):
            return at
        at = min((slot for slot in back.values() if slot > at), default=problem.horizon)
    return min(at, problem.horizon)


def part(problem: Problem, keep: Collection[str], earliest: dict[str, int]) -> Problem:
    """The problem with those pieces alone, none of them before its earliest start."""
    pieces = {
        id: replace(
            piece,
            after=[link for link in piece.after if link.other in keep],
            earliest=max(piece.earliest, earliest[id]),
        )
        for id, piece in problem.pieces.items()
        if id in keep
    }
    teams = {piece.team for piece in pieces.values()}
    return replace(
        problem,
        pieces=pieces,
        teams={name: team for name, team in problem.teams.items() if name in teams},
        stays=[stay for stay in problem.stays if stay.first in keep and stay.last in keep],
    )
