"""Solves a planning problem with OR-Tools CP-SAT: first the earliest end, then fewest closed slots, then fewest moves.

Each objective is carried to its proof, or until its part of the work is done; the next one holds what was reached.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import Any

from ortools.sat.python import cp_model

from build_tools.plan.initial_schedule import Schedule, end_of, initial_schedule
from build_tools.plan.model import ConstraintModel, build_model
from build_tools.plan.problem import Infeasible, Objective, Problem, Solution
from build_tools.plan.solver import Effort
from build_tools.plan.tail import fit_before_tail, plan_tail

END, CLOSED, MOVES = 4.0, 0.4, 1.0
"""The work that the solver may do for each objective, in its own units (:class:`~build_tools.plan.solver.Effort`).
Where
places are closed a unit takes far longer: each of these is a few seconds of one core."""
TAIL_SHARE, TAIL_ORDERS, FITTED_BY = 0.2, 20, 0.6
"""How much of the job is planned by itself as the last; the orders tried for the rest, and the part of the work that is
done when the rest has to fit in before."""
BOUND_SHARE = 0.4
"""The part of what is left for an end that goes into what no plan can reach, where better plans prove nothing."""
MOST_ARCS = 20_000
"""Beyond so many the moves are counted and not sought: the rounds would take minutes."""
OnImprovement = Callable[[str, int], None]
"""Is told of each better plan: the objective and its value."""
Minimized = tuple[dict[str, int], dict[str, tuple[str, ...]], Objective]
"""A plan, and how far an objective was carried with it."""


def solve(problem: Problem, on_improvement: OnImprovement | None = None, objectives: int = 3) -> Solution:
    """The best plan by a fixed amount of work. ``objectives`` is how many of the three are sought (1: the end alone).

    Raises :class:`Infeasible` where the rules cannot be kept together before the horizon.
    """
    starts, teams, end = minimize_makespan(problem, Effort(END), on_improvement)
    closed = moves = Objective(0, 0, sought=False)
    made = build_model(problem, end.value)
    if objectives > 1 and made.closed:
        starts, teams, closed = _minimize(
            made, sum(made.closed), "closed", Effort(CLOSED), on_improvement, (starts, teams)
        )
        made.model.add(sum(made.closed) <= closed.value)
    if objectives > 2 and seeks_moves(problem):
        starts, teams, moves = _minimize(
            made, sum(moves_of(made)), "moves", Effort(MOVES), on_improvement, (starts, teams)
        )
    elif problem.teams:
        moves = Objective(count_moves(problem, starts, teams), 0, sought=False)
    return Solution(starts, teams, end, closed, moves)


def minimize_makespan(problem: Problem, effort: Effort, on_improvement: OnImprovement | None = None) -> Minimized:
    """The plan that ends soonest: that of the last work with the rest fitted in before it, or else one sought."""
    found = initial_schedule(problem, orders=0) or initial_schedule(problem)
    if found is None:
        made = build_model(problem)
        return _minimize(made, made.last, "end", effort, on_improvement, None)
    last = plan_tail(problem, end_of(problem, found[0]), TAIL_SHARE, effort)
    bound = last.bound
    if last.found:
        fitted = initial_schedule(problem, last.found, bound, TAIL_ORDERS)
        if fitted is None or end_of(problem, fitted[0]) > bound:
            fitted = fit_before_tail(problem, last.found, bound, found, effort, effort.until(FITTED_BY))
        found = _shorter(problem, found, fitted)
    if end_of(problem, found[0]) > bound:
        found = _shorter(problem, found, initial_schedule(problem, enough=bound))
    if end_of(problem, found[0]) <= bound:
        if on_improvement:
            on_improvement("end", bound)
        return (*found, Objective(bound, bound))
    made = build_model(problem, end_of(problem, found[0]))
    made.model.add(made.last >= bound)
    starts, teams, end = _minimize(made, made.last, "end", effort, on_improvement, found)
    return starts, teams, Objective(end.value, max(end.bound, bound))


def _shorter(problem: Problem, one: Schedule, other: Schedule | None) -> Schedule:
    return other if other and end_of(problem, other[0]) < end_of(problem, one[0]) else one


def seeks_moves(problem: Problem) -> bool:
    """Whether the fewest moves are sought: there are people, and the rounds of all have not too many arcs."""
    mine = [
        sum(
            bool(p.duration and p.team and person in problem.teams[p.team].eligible)
            for p in problem.activities.values()
        )
        for person in problem.people
    ]
    return bool(problem.teams) and sum(count * count for count in mine) <= MOST_ARCS


def places_of_pieces(problem: Problem) -> dict[str, str]:
    """The place that each activity fills: that of the occupancy that begins or ends with it, the team's otherwise."""
    found: dict[str, str] = {}
    by_team: dict[str, str] = {}
    for occupancy in problem.occupancies:
        if occupancy.worked_in:
            continue
        for id in (occupancy.first, occupancy.last):
            found.setdefault(id, occupancy.place)
            by_team.setdefault(problem.activities[id].team, occupancy.place)
    for id, activity in problem.activities.items():
        if activity.team:
            found.setdefault(id, by_team.get(activity.team, ""))
    return found


def moves_of(made: ConstraintModel) -> list[Any]:
    """For each person a round through his activities in their order; an arc between two places is a move."""
    problem, model = made.problem, made.model
    place = places_of_pieces(problem)
    moved: list[Any] = []
    for person in problem.people:
        mine = [
            activity.id
            for activity in problem.activities.values()
            if (activity.team, person) in made.on and activity.duration
        ]
        if len(mine) < 2:
            continue
        arcs: list[tuple[int, int, Any]] = []
        between: list[Any] = []
        idle = model.new_bool_var(f"{person} idle")
        arcs.append((0, 0, idle))
        for i, one in enumerate(mine, 1):
            on = made.on[problem.activities[one].team, person]
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
                    model.add_implication(made.on[problem.activities[one].team, person], been[-1])
        model.add(sum(between) >= sum(been) - 1)  # says nothing new, and gives the solver a first bound
    return moved


def _before(problem: Problem, one: str, other: str) -> bool:
    """Whether an activity comes before another by a link between the two."""
    return any(link.predecessor == one for link in problem.activities[other].predecessors)


class _ImprovementCallback(cp_model.CpSolverSolutionCallback):
    def __init__(self, objective: str, on_improvement: OnImprovement) -> None:
        super().__init__()
        self.objective, self.on_improvement = objective, on_improvement

    def on_solution_callback(self) -> None:
        self.on_improvement(self.objective, round(self.objective_value))


def _minimize(
    made: ConstraintModel,
    expression: Any,
    objective: str,
    effort: Effort,
    on_improvement: OnImprovement | None,
    known: Schedule | None,
) -> Minimized:
    """Minimise one objective from the best plan that is known."""
    model = made.model
    model.minimize(expression)
    if known:
        made.hint(known)
    callback = _ImprovementCallback(objective, on_improvement) if on_improvement else None
    search = effort.search(model, effort.left * (1 - BOUND_SHARE if objective == "end" else 1), callback)
    bound = search.bound
    if objective == "end" and not search.proved:
        if search.found:
            known = made.found(search.solver)
            made.hint(known)
            model.add(expression <= search.value)
        search = effort.search(model, effort.left, callback, for_bounds=True)
        bound = max(bound, search.bound)
    if search.found:
        return (*made.found(search.solver), Objective(search.value, bound))
    if known:  # the limit was too low even to take over what is known
        return (*known, Objective(_count(made.problem, objective, known), bound))
    if not search.proved:
        raise Infeasible("no plan was found with the work that a search may do", proved=False)
    raise Infeasible("the rules cannot be kept together before the last day that is planned")


def _count(problem: Problem, objective: str, known: Schedule) -> int:
    if objective == "end":
        return end_of(problem, known[0])
    return closed_slots(problem, known[0]) if objective == "closed" else count_moves(problem, *known)


def closed_slots(problem: Problem, starts: dict[str, int]) -> int:
    """The slots that places are closed, summed over the closings."""
    ends = {id: starts[id] + activity.duration for id, activity in problem.activities.items()}
    return sum(
        problem.lags[occupancy.closure_lag][ends[occupancy.last]] - ends[occupancy.since or occupancy.last]
        for occupancy in problem.occupancies
        if occupancy.closure_lag
    )


def count_moves(problem: Problem, starts: dict[str, int], teams: dict[str, tuple[str, ...]]) -> int:
    """How often somebody's next activity is in another place than the one before it."""
    place = places_of_pieces(problem)
    moves = 0
    for person in problem.people:
        mine = [p for p in problem.activities.values() if p.duration and p.team and person in teams[p.team]]
        went = [place[activity.id] for activity in sorted(mine, key=lambda activity: starts[activity.id])]
        moves += sum(one != other for one, other in pairwise(went))
    return moves
