"""The plan of a job as data for programs: what ``plan JOB --json`` prints and what lies beside the pages.

Times are ISO 8601 without a zone, on the clock of the site; hours are figures. No price, rate or note stands in it.

=============  =======================================================================================================
key            what it holds
=============  =======================================================================================================
job            the job's id; ``title`` its title; ``variant`` the variant that is planned, or null
planned_from   the day from which it is planned
start          the first day of the job; ``deadline`` its last, ``end`` when its last task ends
days_to_spare  working days between the end and the deadline, less than nothing when it is late
aims           ``end``, ``closed`` and ``moves``, each with ``value`` (working hours from the first day on; closed
               hours, all places added up; changes of place), ``least`` (what is not ruled out), ``proved``
tasks          by id: ``procedure``, ``title``, ``space``, ``done`` (a day or null), ``starts``, ``ends``, ``people``,
               ``hours`` of labour, ``slack_hours`` (later by so much, and the end stays), ``sets_the_end``
days           for each working day ``day``, ``work`` (``task``, ``trip`` or null, ``people``, ``starts``, ``ends``),
               ``visits`` (``inspection``, ``task``, ``starts``, ``ends``), and what of ``closed`` and ``lags`` reaches
               into it
closed         ``place``, ``task`` after which it is closed, ``starts``, ``ends``
waits          ``task``, ``later`` (the tasks that wait), ``visit`` (the inspection that is called or null), ``starts``,
               ``ends``
chain          what sets the end, first link first: ``task``, ``visit``, ``starts``, ``ends``, ``people``, ``reason``,
               ``after`` (the task before it), ``what`` (the person, place or inspection), ``spare_hours``
sooner         what was tried for a late job: ``what``, ``end`` and ``days_sooner``; empty for one in time
variants       the ids of the variants that the job names
=============  =======================================================================================================
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime
from typing import Any

from build_tools.plan.daily_schedule import daily_schedule
from build_tools.plan.lags import Lag, lags
from build_tools.plan.plan import Closed, Plan
from build_tools.plan.problem import Objective
from build_tools.plan.reasons import reasons
from build_tools.plan.what_if import Acceleration
from build_tools.plan.worktime import SLOTS_PER_HOUR


def plan_as_data(plan: Plan, variant: str | None = None, accelerations: Sequence[Acceleration] = ()) -> dict[str, Any]:
    """The plan under the keys that the table above names."""
    critical_path = reasons(plan)
    on_critical_path = {link.task for link in critical_path}
    solution = plan.solution
    return {
        "job": plan.entry.id,
        "title": plan.job.title.inside(plan.context.book.language),
        "variant": variant,
        "planned_from": plan.prepared.today.isoformat(),
        "start": plan.job.start.isoformat(),
        "deadline": plan.job.deadline.isoformat(),
        "end": _at(plan.end),
        "days_to_spare": plan.days_to_spare,
        "aims": {
            "end": _objective(solution.end, SLOTS_PER_HOUR),
            "closed": _objective(solution.closed, SLOTS_PER_HOUR),
            "moves": _objective(solution.moves, 1),
        },
        "tasks": {id: _task(plan, id, id in on_critical_path) for id in plan.job.tasks},
        "days": [
            {
                "day": each.day.isoformat(),
                "work": [
                    {
                        "task": part.task,
                        "trip": _trip(plan, part.task, part.trip),
                        "people": list(part.people),
                        "starts": _at(part.starts),
                        "ends": _at(part.ends),
                    }
                    for part in each.work
                ],
                "visits": [
                    {"inspection": one.visit, "task": one.task, "starts": _at(one.starts), "ends": _at(one.ends)}
                    for one in each.visits
                ],
                "closed": [_closed(one) for one in each.closed],
                "waits": [_wait(one) for one in each.lags],
            }
            for each in daily_schedule(plan)
        ],
        "closed": [_closed(one) for one in plan.closed],
        "waits": [_wait(one) for one in lags(plan)],
        "chain": [
            {
                "task": link.task,
                "visit": link.visit or None,
                "starts": _at(link.starts),
                "ends": _at(link.ends),
                "people": list(link.people),
                "reason": link.kind,
                "after": link.predecessor or None,
                "what": link.what or None,
                "spare_hours": link.spare / SLOTS_PER_HOUR,
            }
            for link in critical_path
        ],
        "sooner": [
            {"what": one.what, "end": _at(one.plan.end), "days_sooner": one.days_sooner(plan)}
            for one in accelerations
            if one.plan
        ],
        "variants": list(plan.job.variants),
    }


def _task(plan: Plan, id: str, sets_the_end: bool) -> dict[str, Any]:
    task = plan.job.tasks[id]
    planned = id in plan.prepared.activities
    return {
        "procedure": task.procedure,
        "title": plan.context.index.targets["procedure", task.procedure].title,
        "space": task.space,
        "done": _day(task.done),
        "starts": _at(plan.starts(id)) if planned else None,
        "ends": _at(plan.ends(id)) if planned else None,
        "people": list(plan.solution.teams.get(id, ())),
        "hours": round(plan.prepared.take_offs[id].hours, 2),
        "slack_hours": plan.total_float_of(id) / SLOTS_PER_HOUR if planned else None,
        "sets_the_end": sets_the_end,
    }


def _trip(plan: Plan, task: str, number: int) -> str | None:
    """A trip by its name in the book, with its number where there are several alike."""
    trip = plan.prepared.trips[task][number]
    return f"{trip.name} {trip.nth}" if trip.nth else trip.name or None


def _objective(objective: Objective, parts: int) -> dict[str, Any]:
    return {
        "value": objective.value / parts,
        "least": objective.bound / parts,
        "proved": objective.proved,
    }


def _closed(one: Closed) -> dict[str, Any]:
    return {"place": one.place, "task": one.task, "starts": _at(one.starts), "ends": _at(one.ends)}


def _wait(one: Lag) -> dict[str, Any]:
    return {
        "task": one.task,
        "later": list(dict.fromkeys(task for task, _ in one.later)),
        "visit": one.visit or None,
        "starts": _at(one.starts),
        "ends": _at(one.ends),
    }


def _at(moment: datetime) -> str:
    return moment.isoformat(timespec="minutes")


def _day(day: date | None) -> str | None:
    return day.isoformat() if day else None
