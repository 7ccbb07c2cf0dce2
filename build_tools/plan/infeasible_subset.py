"""Why a problem has no solution: the fewest tasks that already stand in each other's way.

A part of a problem has fewer rules than the whole, so tasks that cannot be planned by themselves explain the whole.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from build_tools.plan.problem import Infeasible, Problem
from build_tools.plan.solve import minimize_makespan
from build_tools.plan.solver import Effort

EFFORT = 3.0
"""Work of the solver for all of it: what is not ruled out by then is named too."""


def infeasible_subset(problem: Problem, most: float = EFFORT) -> tuple[str, ...]:
    """Tasks of an infeasible problem of which none can be left out without making the rest possible."""
    needed = list(dict.fromkeys(id.partition(" ")[0] for id in problem.activities))
    effort = Effort(most)
    size = max(1, len(needed) // 2)
    while True:
        at = 0
        while at < len(needed):
            fewer = needed[:at] + needed[at + size :]
            if fewer and effort.spent < most and _is_infeasible(subproblem(problem, fewer), effort):
                needed = fewer
            else:
                at += size
        if size == 1:
            return tuple(needed)
        size //= 2


def subproblem(problem: Problem, tasks: Collection[str]) -> Problem:
    """The problem with those tasks alone."""
    activities = {id: activity for id, activity in problem.activities.items() if id.partition(" ")[0] in tasks}
    return replace(
        problem,
        activities=activities,
        teams={name: team for name, team in problem.teams.items() if name in tasks},
        occupancies=[occupancy for occupancy in problem.occupancies if occupancy.first in activities],
    )


def _is_infeasible(problem: Problem, effort: Effort) -> bool:
    mine = Effort(effort.most - effort.spent)
    try:
        minimize_makespan(problem, mine)
    except Infeasible as infeasible:
        return infeasible.proved
    finally:
        effort.spent += mine.spent
    return False
