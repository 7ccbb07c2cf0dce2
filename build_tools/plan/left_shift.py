"""A solved plan drawn together: everything as early as it can be.

The solver leaves what does not count for an objective where it happened to put it. People want no gap that has no
reason.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from build_tools.plan.initial_schedule import end_of
from build_tools.plan.model import ConstraintModel, build_model
from build_tools.plan.problem import Problem, Solution
from build_tools.plan.solve import moves_of, seeks_moves
from build_tools.plan.solver import Effort

EFFORT = 1.0
"""Work of the solver for each of the two passes; what is not better by then stays as it is."""


def left_shift(problem: Problem, solution: Solution, objectives: int = 3) -> Solution:
    """The same plan with the same people and every activity as early as the others let it be.

    ``objectives`` is how many of the three were sought: what they have reached is kept. People do their activities in
    the same order; where the changes of place were an objective, in any order that has no more of them.
    """
    made = _model(problem, solution, objectives)
    for person in problem.people:
        mine = [p for p in problem.activities.values() if p.duration and p.team and person in solution.teams[p.team]]
        for one, other in pairwise(sorted(mine, key=lambda activity: solution.starts[activity.id])):
            made.model.add(made.start[other.id] >= made.end[one.id])
    solution = _earliest(made, solution)
    if objectives > 2 and seeks_moves(problem):
        made = _model(problem, solution, objectives)
        made.model.add(sum(moves_of(made)) <= solution.moves.value)
        solution = _earliest(made, solution)
    return solution


def _model(problem: Problem, solution: Solution, objectives: int) -> ConstraintModel:
    """The rules, and what was reached."""
    made = build_model(problem, solution.end.value)
    if objectives > 1 and made.closed:
        made.model.add(sum(made.closed) <= solution.closed.value)
    for (team, person), on in made.on.items():
        made.model.add(on == (person in solution.teams[team]))
    return made


def _earliest(made: ConstraintModel, solution: Solution) -> Solution:
    model, activities = made.model, made.problem.activities
    for id, start in solution.starts.items():
        if activities[id].start is None:
            model.add_hint(made.start[id], start)
    model.minimize(sum(made.start.values()))
    search = Effort(EFFORT).search(model, EFFORT)
    if not search.found:
        return solution
    starts = {id: int(search.solver.value(start)) for id, start in made.start.items()}
    end = replace(solution.end, value=end_of(made.problem, starts))
    return replace(solution, starts=starts, end=end)
