"""Where a plan waits and nobody works: for what sets or dries before the next work, and for a visit that is called."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from datetime import datetime

from build_tools.plan.plan import Plan


@dataclass(frozen=True, slots=True)
class Lag:
    """The trip of that number of task ``task`` has ended and these others wait, tasks with the numbers of their trips.

    Others may work beside it. ``visit`` is the inspection that has been called, empty where something sets or dries.
    """

    task: str
    trip: int
    later: tuple[tuple[str, int], ...]
    starts: datetime
    ends: datetime
    visit: str = ""


def lags(plan: Plan) -> list[Lag]:
    """The waits that hold something up, by their start; one that is over by the next slot of work is none."""
    problem, starts = plan.prepared.problem, plan.solution.starts
    of = {stretch.activity: (stretch.task, stretch.trip) for stretch in plan.stretches}
    visits = {visit.activity: visit.inspection for visit in plan.prepared.visits}
    later: dict[tuple[tuple[str, int], str, int, int], list[tuple[str, int]]] = defaultdict(list)
    for id, activity in problem.activities.items():
        for link in activity.predecessors:
            if link.lag and link.predecessor in of:
                end = starts[link.predecessor] + problem.activities[link.predecessor].duration
                ready = min(problem.lags[link.lag][end], plan.worktime.slots - 1)
                if ready > end:
                    later[of[link.predecessor], visits.get(id, ""), end, ready].append(of[id])
    made = [
        Lag(*trip, tuple(dict.fromkeys(those)), plan.worktime.ends(end), plan.worktime.starts(ready), visit)
        for (trip, visit, end, ready), those in later.items()
    ]
    return sorted(made, key=lambda wait: (wait.starts, wait.ends, wait.task))
