"""A solved plan drawn together: everything as early as it can be, with the same people in the same order.

The solver leaves what does not count for an aim where it happened to put it. People want no gap that has no reason.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from ortools.sat.python import cp_model

from build_tools.plan.problem import Problem, Solution
from build_tools.plan.solve import WORKERS, model_of

SECONDS = 2.0
"""Time for it; a plan that takes longer stays as it is."""


def settle(problem: Problem, solution: Solution, *, keep_closed: bool = True) -> Solution:
    """The same plan with every piece as early as the others let it be.

    What the aims have reached is kept: the end, the closed slots (where they were an aim), who goes where after what.
    """
    made = model_of(problem)
    model = made.model
    model.add(made.last <= solution.end.value)
    if keep_closed and made.closed:
        model.add(sum(made.closed) <= solution.closed.value)
    for (team, person), on in made.on.items():
        model.add(on == (person in solution.teams[team]))
    for person in problem.people:
        mine = [p for p in problem.pieces.values() if p.slots and p.team and person in solution.teams[p.team]]
        for one, other in pairwise(sorted(mine, key=lambda piece: solution.starts[piece.id])):
            model.add(made.start[other.id] >= made.end[one.id])
    for id, start in solution.starts.items():
        if problem.pieces[id].start is None:
            model.add_hint(made.start[id], start)
    model.minimize(sum(made.start.values()))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = WORKERS
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = SECONDS
    if solver.solve(model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return solution
    return replace(solution, starts={id: int(solver.value(start)) for id, start in made.start.items()})
