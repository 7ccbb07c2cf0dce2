"""The work that can only come late, planned by itself: no plan of the whole ends sooner than this part of it.

A part of a problem has fewer rules than the whole. This one is small, so its end is soon proved, where the solver would
move everything before it about to find out that the last days cannot be shorter.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from graphlib import TopologicalSorter

from ortools.sat.python import cp_model

from build_tools.plan.first_plan import Found
from build_tools.plan.model import model_of
from build_tools.plan.problem import Piece, Problem

EFFORT, EFFORT_LATE = 0.5, 0.02
"""How much the solver may do for the end of the part, and for moving it late: its own measure, the same on each
machine. The first is less than 3 s alone."""


@dataclass(frozen=True, slots=True)
class LastWork:
    """The slot before which nothing of the whole can end, and the part's own plan where it is the best one."""

    bound: int
    found: Found | None


def last_work(problem: Problem, latest: int, share: float, seconds: float) -> LastWork:
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
    solver = _solver(seconds, EFFORT)
    status = solver.solve(made.model)
    if status != cp_model.OPTIMAL:
        bound = round(solver.best_objective_bound) if status == cp_model.FEASIBLE else 0
        return LastWork(max(bound, longest), None)
    end, found = round(solver.objective_value), made.found(solver)
    made.model.add(made.last <= end)
    made.model.maximize(sum(made.start.values()))
    made.hint(found)
    solver = _solver(seconds, EFFORT_LATE)
    later = solver.solve(made.model) in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return LastWork(max(end, longest), made.found(solver) if later else found)


def fitted_in(problem: Problem, last: Found, end: int, near: Found, seconds: float) -> Found | None:
    """A plan with the last work when it is in ``last``, and all that comes before fitted in; None where none is found.

    ``near`` is a plan that is known, of which as much is kept as goes.
    """
    made = model_of(problem, end)
    for id, start in last[0].items():
        if problem.pieces[id].start is None:
            made.model.add(made.start[id] == start)
    made.hint(near)
    solver = _solver(seconds)
    return made.found(solver) if solver.solve(made.model) in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None


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
        if piece.allowed:
            at = min((max(a, at) for a, b in piece.allowed if at < b), default=problem.horizon)
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


def _solver(seconds: float, effort: float | None = None) -> cp_model.CpSolver:
    """On one core, so that the same comes out each time; what a second core would do is of no use here."""
    solver = cp_model.CpSolver()
    solver.parameters.catch_sigint_signal = False  # else Ctrl-C cuts off all that comes after
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.cp_model_probing_level = 0
    solver.parameters.linearization_level = 0
    if effort is not None:
        solver.parameters.max_deterministic_time = effort
    solver.parameters.max_time_in_seconds = seconds
    return solver
