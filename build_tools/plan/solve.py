"""Solves a planning problem with OR-Tools CP-SAT: first the earliest end, then fewest closed slots, then fewest moves.

Each aim is carried to its proof, or until its part of the time is over; the next one holds what was reached.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from time import monotonic
from typing import Any

from ortools.sat.python import cp_model

from build_tools.plan.first_plan import Found, end_of, first_plan
from build_tools.plan.last_work import fitted_in, last_work
from build_tools.plan.model import Model, model_of
from build_tools.plan.problem import Aim, Impossible, Problem, Solution

WORKERS = 2
END_BY, CLOSED_BY, MOVES_BY = 0.6, 0.8, 1.0
"""The part of the time that is over when each aim has to stop: what one leaves, the next may use."""
CLOSED_MOST, MOVES_MOST = 0.4, 0.2
"""The part of it that the later two take at most: they are seldom proved, and after that they gain little."""
LAST_SHARE, LAST_BY, LAST_ORDERS, FITTED_BY = 0.2, 0.25, 20, 0.8
"""How much of the work is planned by itself as the last, and the part of the time that this may take; the orders tried
for the rest, and the part of the time for the end that is over when the rest has to fit in before."""
MOST_ARCS = 20_000
"""Beyond so many the moves are counted and not sought: the rounds would take minutes."""
Told = Callable[[str, int], None]
"""Is told of each better plan: the aim and its value."""
Carried = tuple[dict[str, int], dict[str, tuple[str, ...]], Aim]
"""A plan, and how far an aim was carried with it."""
A_MOMENT = 0.05
"""Seconds that an aim has at least, to take over what is known."""


def solve(problem: Problem, seconds: float = 30.0, told: Told | None = None, aims: int = 3) -> Solution:
    """The best plan. ``aims`` is how many of the three are sought (1: the end alone).

    Raises :class:`Impossible` where the rules cannot be kept together before the horizon.
    """
    clock = _Clock(seconds)
    starts, teams, end = _soonest(problem, clock, END_BY if aims > 1 else MOVES_BY, told)
    closed = moves = Aim(0, 0, 0.0)
    made = model_of(problem, end.value)
    if aims > 1 and made.closed:
        objective = sum(made.closed)
        time = clock.until(CLOSED_BY, CLOSED_MOST)
        starts, teams, closed = _carry(made, objective, "closed", time, told, (starts, teams))
        made.model.add(objective <= closed.value)
    if aims > 2 and seeks_moves(problem):
        objective = sum(moves_of(made))
        time = clock.until(MOVES_BY, MOVES_MOST)
        starts, teams, moves = _carry(made, objective, "moves", time, told, (starts, teams))
    elif problem.teams:
        moves = Aim(count_moves(problem, starts, teams), 0, 0.0)
    return Solution(starts, teams, end, closed, moves)


class _Clock:
    """The time that there is for all aims."""

    def __init__(self, seconds: float) -> None:
        self.began, self.seconds = monotonic(), seconds

    @property
    def spent(self) -> float:
        """Seconds since it began."""
        return monotonic() - self.began

    def until(self, part: float, most: float = 1.0) -> float:
        """Seconds that are left until that part of the time is over, ``most`` of it at most; a moment at least."""
        return max(min(self.seconds * part - self.spent, self.seconds * most), A_MOMENT)


def _soonest(problem: Problem, clock: _Clock, by: float, told: Told | None) -> Carried:
    """The plan that ends soonest: that of the last work with the rest fitted in before it, or else one sought."""
    found = first_plan(problem, orders=0) or first_plan(problem)
    if found is None:
        made = model_of(problem)
        return _carry(made, made.last, "end", clock.until(by), told, None)
    last = last_work(problem, end_of(problem, found[0]), LAST_SHARE, clock.until(LAST_BY))
    bound = last.bound
    if last.found:
        fitted = first_plan(problem, last.found, bound, LAST_ORDERS)
        if fitted is None or end_of(problem, fitted[0]) > bound:
            fitted = fitted_in(problem, last.found, bound, found, clock.until(by * FITTED_BY))
        found = _sooner(problem, found, fitted)
    if end_of(problem, found[0]) > bound:
        found = _sooner(problem, found, first_plan(problem, enough=bound))
    if end_of(problem, found[0]) <= bound:
        if told:
            told("end", bound)
        return (*found, Aim(bound, bound, clock.spent))
    made = model_of(problem, end_of(problem, found[0]))
    made.model.add(made.last >= bound)
    starts, teams, end = _carry(made, made.last, "end", clock.until(by), told, found)
    return starts, teams, Aim(end.value, max(end.bound, bound), clock.spent)


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


def _carry(made: Model, objective: Any, aim: str, seconds: float, told: Told | None, known: Found | None) -> Carried:
    """Minimise one aim from the best plan that is known."""
    model = made.model
    model.minimize(objective)
    if known:
        made.hint(known)
    solver = cp_model.CpSolver()
    solver.parameters.catch_sigint_signal = False  # else Ctrl-C cuts off all that comes after
    solver.parameters.num_workers = WORKERS
    solver.parameters.random_seed = 1
    solver.parameters.cp_model_probing_level = 0  # it takes as long as the search, and finds little
    solver.parameters.max_time_in_seconds = seconds
    began = monotonic()
    status = solver.solve(model, _Tell(aim, told)) if told else solver.solve(model)
    spent = monotonic() - began
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        if known:  # the time was too short even to take over what is known
            return (*known, Aim(_count(made.problem, aim, known), 0, spent))
        if status == cp_model.UNKNOWN:
            raise Impossible(f"no plan was found within {seconds:.0f} s", proved=False)
        raise Impossible("the rules cannot be kept together before the last day that is planned")
    best = round(solver.best_objective_bound) if status != cp_model.OPTIMAL else round(solver.objective_value)
    return (*made.found(solver), Aim(round(solver.objective_value), best, spent))


def _count(problem: Problem, aim: str, known: Found) -> int:
    if aim == "end":
        return end_of(problem, known[0])
    return closed_slots(problem, known[0]) if aim == "closed" else count_moves(problem, *known)


def closed_slots(problem: Problem, starts: dict[str, int]) -> int:
    """The slots that places are closed, summed over the closings."""
    ends = {id: starts[id] + piece.slots for id, piece in problem.pieces.items()}
    return sum(problem.waits[stay.closed][ends[stay.last]] - ends[stay.last] for stay in problem.stays if stay.closed)


def count_moves(problem: Problem, starts: dict[str, int], teams: dict[str, tuple[str, ...]]) -> int:
    """How often somebody's next piece is in another place than the one before it."""
    place = places_of_pieces(problem)
    moves = 0
    for person in problem.people:
        mine = [p for p in problem.pieces.values() if p.slots and p.team and person in teams[p.team]]
        went = [place[piece.id] for piece in sorted(mine, key=lambda piece: starts[piece.id])]
        moves += sum(one != other for one, other in pairwise(went))
    return moves
