"""A solved plan drawn together: everything as early as it can be.

The solver leaves what does not count for an aim where it happened to put it. People want no gap that has no reason.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from build_tools.plan.first_plan import end_of
from build_tools.plan.model import Model, model_of
from build_tools.plan.problem import Problem, Solution
from build_tools.plan.solve import moves_of, seeks_moves
from build_tools.plan.solver import Effort

EFFORT = 1.0
"""Work of the solver for each of the two passes; what is not better by then stays as it is."""


def settle(problem: Problem, solution: Solution, aims: int = 3) -> Solution:
    """The same plan with the same people and every piece as early as the others let it be.

    ``aims`` is how many of the three were sought: what they have reached is kept. People do their pieces in the same
    order; where the changes of place were an aim, in any order that has no more of them.
    """
    made = _model(problem, solution, aims)
    for person in problem.people:
        mine = [p for p in problem.pieces.values() if p.slots and p.team and person in solution.teams[p.team]]
        for one, other in pairwise(sorted(mine, key=lambda piece: solution.starts[piece.id])):
            made.model.add(made.start[other.id] >= made.end[one.id])
    solution = _earliest(made, solution)
    if aims > 2 and seeks_moves(problem):
        made = _model(problem, solution, aims)
        made.model.add(sum(moves_of(made)) <= solution.moves.value)
        solution = _earliest(made, solution)
    return solution


def _model(problem: Problem, solution: Solution, aims: int) -> Model:
    """The rules, and what was reached."""
    made = model_of(problem, solution.end.value)
    if aims > 1 and made.closed:
        made.model.add(sum(made.closed) <= solution.closed.value)
    for (team, person), on in made.on.items():
        made.model.add(on == (person in solution.teams[team]))
    return made


def _earliest(made: Model, solution: Solution) -> Solution:
    model, pieces = made.model, made.problem.pieces
    for id, start in solution.starts.items():
        if pieces[id].start is None:
            model.add_hint(made.start[id], start)
    model.minimize(sum(made.start.values()))
    search = Effort(EFFORT).search(model, EFFORT)
    if not search.found:
        return solution
    starts = {id: int(search.solver.value(start)) for id, start in made.start.items()}
    end = replace(solution.end, value=end_of(made.problem, starts))
    return replace(solution, starts=starts, end=end)
