"""The few figures by which two plans of a job are laid side by side."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from build_tools.plan.plan import Plan
from build_tools.plan.worktime import SLOTS_PER_HOUR


@dataclass(frozen=True, slots=True)
class Figures:
    """``closed_days`` are working days on which a place is closed for a while, ``closed_hours`` those of all places.

    ``labour_hours`` are those for which people are booked, all of them added up; a quarter hour that is begun counts.
    """

    end: datetime
    days_to_spare: int
    working_days: int
    closed_days: int
    closed_hours: float
    labour_hours: float


def figures(plan: Plan) -> Figures:
    """The figures of one plan."""
    worktime = plan.worktime
    activities = plan.prepared.problem.activities
    booked = sum(activities[one.activity].duration * len(one.people) for one in plan.stretches)
    return Figures(
        end=plan.end,
        days_to_spare=plan.days_to_spare,
        working_days=sum(day <= plan.end.date() for day in worktime.days),
        closed_days=len({slot // worktime.slots_per_day for slot in slots_with_closures(plan)}),
        closed_hours=plan.solution.closed.value / SLOTS_PER_HOUR,
        labour_hours=booked / SLOTS_PER_HOUR,
    )


def slots_with_closures(plan: Plan) -> set[int]:
    """The slots in which some place is closed, those after the last task with them."""
    slot_at = plan.worktime.slot_at
    return {slot for one in plan.closed for slot in range(slot_at(one.starts), slot_at(one.ends))}
