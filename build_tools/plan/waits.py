"""Where a plan waits and nobody works: for what sets or dries before the next work, and for a visit that is called."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from datetime import datetime

from build_tools.plan.plan import Plan


@dataclass(frozen=True, slots=True)
class Wait:
    """Task ``task`` has ended its stretch and these others wait; others may work beside it.

    ``visit`` is the inspection that has been called, empty where something sets or dries.
    """

    task: str
    later: tuple[str, ...]
    starts: datetime
    ends: datetime
    visit: str = ""


def waits(plan: Plan) -> list[Wait]:
    """The waits that hold something up, by their start; one that is over by the next slot of work is none."""
    problem, starts = plan.prepared.problem, plan.solution.starts
    task_of = {stretch.piece: stretch.task for stretch in plan.stretches}
    visits = {visit.piece: visit.inspection for visit in plan.prepared.visits}
    later: dict[tuple[str, str, int, int], list[str]] = defaultdict(list)
    for id, piece in problem.pieces.items():
        for link in piece.after:
            if link.wait and link.other in task_of:
                end = starts[link.other] + problem.pieces[link.other].slots
                ready = min(problem.waits[link.wait][end], plan.worktime.slots - 1)
                if ready > end:
                    later[task_of[link.other], visits.get(id, ""), end, ready].append(task_of[id])
    made = [
        Wait(task, tuple(dict.fromkeys(those)), plan.worktime.ends(end), plan.worktime.starts(ready), visit)
        for (task, visit, end, ready), those in later.items()
    ]
    return sorted(made, key=lambda wait: (wait.starts, wait.ends, wait.task))
