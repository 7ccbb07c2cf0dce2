"""Why a problem has no solution: the fewest tasks that already stand in each other's way.

A part of a problem has fewer rules than the whole, so tasks that cannot be planned by themselves explain the whole.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from build_tools.plan.problem import Impossible, Problem
from build_tools.plan.solve import soonest
from build_tools.plan.solver import Effort

EFFORT = 3.0
"""Work of the solver for all of it: what is not ruled out by then is named too."""


def in_the_way(problem: Problem, most: float = EFFORT) -> tuple[str, ...]:
    """Tasks of an impossible problem of which none can be left out without making the rest possible."""
    needed = list(dict.fromkeys(id.partition(" ")[0] for id in problem.pieces))
    effort = Effort(most)
    size = max(1, len(needed) // 2)
    while True:
        at = 0
        while at < len(needed):
            fewer = needed[:at] + needed[at + size :]
            if fewer and effort.spent < most and _impossible(part(problem, fewer), effort):
                needed = fewer
            else:
                at += size
        if size == 1:
            return tuple(needed)
        size //= 2


def part(problem: Problem, tasks: Collection[str]) -> Problem:
    """The problem with those tasks alone."""
    pieces = {id: piece for id, piece in problem.pieces.items() if id.partition(" ")[0] in tasks}
    return replace(
        problem,
        pieces=pieces,
        teams={name: team for name, team in problem.teams.items() if name in tasks},
        stays=[stay for stay in problem.stays if stay.first in pieces],
    )


def _impossible(problem: Problem, effort: Effort) -> bool:
    mine = Effort(effort.most - effort.spent)
    try:
        soonest(problem, mine)
    except Impossible as impossible:
        return impossible.proved
    finally:
        effort.spent += mine.spent
    return False
