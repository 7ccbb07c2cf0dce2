"""Solves a planning problem with OR-Tools CP-SAT: first the earliest end, then fewest closed slots, then fewest moves.

Each aim is carried to its proof, or until its part of the work is done; the next one holds what was reached.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import Any

from ortools.sat.python import cp_model

from build_tools.plan.first_plan import Found, end_of, first_plan
from build_tools.plan.last_work import fitted_in, last_work
from build_tools.plan.model import Model, model_of
from build_tools.plan.problem import Aim, Impossible, Problem, Solution
from build_tools.plan.solver import Effort

END, CLOSED, MOVES = 4.0, 0.4, 1.0
"""The work that the solver may do for each aim, in its own units (:class:`~build_tools.plan.solver.Effort`). Where
places are closed a unit takes far longer: each of these is a few seconds of one core."""
LAST_SHARE, LAST_ORDERS, FITTED_BY = 0.2, 20, 0.6
"""How much of the job is planned by itself as the last; the orders tried for the rest, and the part of the work that is
done when the rest has to fit in before."""
BOUND_SHARE = 0.4
"""The part of what is left for an end that goes into what no plan can reach, where better plans prove nothing."""
MOST_ARCS = 20_000
"""Beyond so many the moves are counted and not sought: the rounds would take minutes."""
Told = Callable[[str, int], None]
"""Is told of each better plan: the aim and its value."""
Carried = tuple[dict[str, int], dict[str, tuple[str, ...]], Aim]
"""A plan, and how far an aim was carried with it."""


def solve(problem: Problem, told: Told | None = None, aims: int = 3) -> Solution:
    """The best plan by a fixed amount of work. ``aims`` is how many of the three are sought (1: the end alone).

    Raises :class:`Impossible` where the rules cannot be kept together before the horizon.
    """
    starts, teams, end = soonest(problem, Effort(END), told)
    closed = moves = Aim(0, 0, sought=False)
    made = model_of(problem, end.value)
    if aims > 1 and made.closed:
        starts, teams, closed = _carry(made, sum(made.closed), "closed", Effort(CLOSED), told, (starts, teams))
        made.model.add(sum(made.closed) <= closed.value)
    if aims > 2 and seeks_moves(problem):
        starts, teams, moves = _carry(made, sum(moves_of(made)), "moves", Effort(MOVES), told, (starts, teams))
    elif problem.teams:
        moves = Aim(count_moves(problem, starts, teams), 0, sought=False)
    return Solution(starts, teams, end, closed, moves)


def soonest(problem: Problem, effort: Effort, told: Told | None = None) -> Carried:
    """The plan that ends soonest: that of the last work with the rest fitted in before it, or else one sought."""
    found = first_plan(problem, orders=0) or first_plan(problem)
    if found is None:
        made = model_of(problem)
        return _carry(made, made.last, "end", effort, told, None)
    last = last_work(problem, end_of(problem, found[0]), LAST_SHARE, effort)
    bound = last.bound
    if last.found:
        fitted = first_plan(problem, last.found, bound, LAST_ORDERS)
        if fitted is None or end_of(problem, fitted[0]) > bound:
            fitted = fitted_in(problem, last.found, bound, found, effort, effort.until(FITTED_BY))
        found = _sooner(problem, found, fitted)
    if end_of(problem, found[0]) > bound:
        found = _sooner(problem, found, first_plan(problem, enough=bound))
    if end_of(problem, found[0]) <= bound:
        if told:
            told("end", bound)
        return (*found, Aim(bound, bound))
    made = model_of(problem, end_of(problem, found[0]))
    made.model.add(made.last >= bound)
    starts, teams, end = _carry(made, made.last, "end", effort, told, found)
    return starts, teams, Aim(end.value, max(end.bound, bound))


def _sooner(problem: Problem, one: Found, other: Found | None) -> Found:
    return other if other and end_of(problem, other[0]) < end_of(problem, one[0]) else one


def seeks_moves(problem: Problem) -> bool:
    """Whether the fewest moves are sought: there are people, and the rounds of all have not too many arcs."""
    mine = [
        sum(bool(p.slots and p.team and person in problem.teams[p.team].may) for p in problem.pieces.values())
        for person in problem.people
    ]
    return bool(problem.teams) and sum(count * count for count in mine) <= MOST_ARCS


def places_of_pieces(problem: Problem) -> dict[str, str]:
    """The place that each piece fills: that of the stay that begins or ends with it, the team's otherwise."""
    found: dict[str, str] = {}
    by_team: dict[str, str] = {}
    for stay in problem.stays:
        if stay.worked_in:
            continue
        for id in (stay.first, stay.last):
            found.setdefault(id, stay.place)
            by_team.setdefault(problem.pieces[id].team, stay.place)
    for id, piece in problem.pieces.items():
        if piece.team:
            found.setdefault(id, by_team.get(piece.team, ""))
    return found


def moves_of(made: Model) -> list[Any]:
    """For each person a round through his pieces in their order; an arc between two places is a move."""
    problem, model = made.problem, made.model
    place = places_of_pieces(problem)
    moved: list[Any] = []
    for person in problem.people:
        mine = [piece.id for piece in problem.pieces.values() if (piece.team, person) in made.on and piece.slots]
        if len(mine) < 2:
            continue
        arcs: list[tuple[int, int, Any]] = []
        between: list[Any] = []
        idle = model.new_bool_var(f"{person} idle")
        arcs.append((0, 0, idle))
        for i, one in enumerate(mine, 1):
            on = made.on[problem.pieces[one].team, person]
            arcs += [(i, i, ~on), (0, i, model.new_bool_var("")), (i, 0, model.new_bool_var(""))]
            for j, other in enumerate(mine, 1):
                if i == j or _before(problem, other, one):
                    continue
                arc = model.new_bool_var("")
                arcs.append((i, j, arc))
                model.add(made.start[other] >= made.end[one]).only_enforce_if(arc)
                if place[one] != place[other]:
                    between.append(arc)
        model.add_circuit(arcs)
        moved += between
        been = []
        for there in dict.fromkeys(place[one] for one in mine):
            been.append(model.new_bool_var(f"{person} in {there}"))
            for one in mine:
                if place[one] == there:
                    model.add_implication(made.on[problem.pieces[one].team, person], been[-1])
        model.add(sum(between) >= sum(been) - 1)  # says nothing new, and gives the solver a first bound
    return moved


def _before(problem: Problem, one: str, other: str) -> bool:
    """Whether a piece comes before another by a link between the two."""
    return any(link.other == one for link in problem.pieces[other].after)


class _Tell(cp_model.CpSolverSolutionCallback):
    def __init__(self, aim: str, told: Told) -> None:
        super().__init__()
        self.aim, self.told = aim, told

    def on_solution_callback(self) -> None:
        self.told(self.aim, round(self.objective_value))


def _carry(made: Model, objective: Any, aim: str, effort: Effort, told: Told | None, known: Found | None) -> Carried:
    """Minimise one aim from the best plan that is known."""
    model = made.model
    model.minimize(objective)
    if known:
        made.hint(known)
    tell = _Tell(aim, told) if told else None
    search = effort.search(model, effort.left * (1 - BOUND_SHARE if aim == "end" else 1), tell)
    bound = search.bound
    if aim == "end" and not search.proved:
        if search.found:
            known = made.found(search.solver)
            made.hint(known)
            model.add(objective <= search.value)
        search = effort.search(model, effort.left, tell, for_bounds=True)
        bound = max(bound, search.bound)
    if search.found:
        return (*made.found(search.solver), Aim(search.value, bound))
    if known:  # the limit was too low even to take over what is known
        return (*known, Aim(_count(made.problem, aim, known), bound))
    if not search.proved:
        raise Impossible("no plan was found with the work that a search may do", proved=False)
    raise Impossible("the rules cannot be kept together before the last day that is planned")


def _count(problem: Problem, aim: str, known: Found) -> int:
    if aim == "end":
        return end_of(problem, known[0])
    return closed_slots(problem, known[0]) if aim == "closed" else count_moves(problem, *known)


def closed_slots(problem: Problem, starts: dict[str, int]) -> int:
    """The slots that places are closed, summed over the closings."""
    ends = {id: starts[id] + piece.slots for id, piece in problem.pieces.items()}
    return sum(
        problem.waits[stay.closed][ends[stay.last]] - ends[stay.since or stay.last]
        for stay in problem.stays
        if stay.closed
    )


def count_moves(problem: Problem, starts: dict[str, int], teams: dict[str, tuple[str, ...]]) -> int:
    """How often somebody's next piece is in another place than the one before it."""
    place = places_of_pieces(problem)
    moves = 0
    for person in problem.people:
        mine = [p for p in problem.pieces.values() if p.slots and p.team and person in teams[p.team]]
        went = [place[piece.id] for piece in sorted(mine, key=lambda piece: starts[piece.id])]
        moves += sum(one != other for one, other in pairwise(went))
    return moves
