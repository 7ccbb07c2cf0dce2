"""The charts of a plan: the whole job, and each week with words on the bars, for a wide screen and for a phone."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from itertools import groupby
from typing import Any

from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.gantt import GanttAxis, GanttItem, GanttLayout, lay_out
from build_tools.pages.jobs.names import trip_name
from build_tools.pages.jobs.plan_words import Words, first_names
from build_tools.plan.lags import lags
from build_tools.plan.plan import Plan, Stretch

WIDE, NARROW = GanttLayout(912, side=112), GanttLayout(328)
WHOLE_WIDE, WHOLE_NARROW = GanttLayout(912, side=112, worded=False), GanttLayout(328, worded=False)


def charts(helpers: Helpers, plan: Plan, say: Words) -> dict[str, Any]:
    """The whole job and its weeks, each as a pair: wide and narrow."""
    items = list(items_of(helpers, plan, say))
    names = row_names(helpers, plan)
    worktime = plan.worktime
    last = max(plan.end.date(), min(plan.job.deadline, worktime.days[-1]))
    days = [day for day in worktime.days if day <= last]
    deadline = _evening(plan, plan.job.deadline)
    axis = GanttAxis(days, 0, worktime.slots_per_day)
    weeks = []
    for _, week in groupby((day for day in days if day <= plan.end.date()), key=lambda day: day.isocalendar()[:2]):
        mine = list(week)
        part = GanttAxis(mine, days.index(mine[0]), worktime.slots_per_day)
        here = deadline if mine[0] <= plan.job.deadline <= mine[-1] else None
        pair = [lay_out(items, names, part, look, here) for look in (WIDE, NARROW)]
        weeks.append({"day": mine[0], "charts": pair})
    return {
        "whole": [lay_out(items, names, axis, look, deadline) for look in (WHOLE_WIDE, WHOLE_NARROW)],
        "weeks": weeks,
    }


def row_names(helpers: Helpers, plan: Plan) -> dict[str, str]:
    """Every place in the order of the job file, a dwelling before its own spaces."""
    job = plan.job
    names: dict[str, str] = {}
    for id, dwelling in job.dwellings.items():
        title = helpers.say(dwelling.title)
        names[id] = title
        for space, each in job.spaces.items():
            if each.dwelling == id:
                own = helpers.say(each.title)
                names[space] = own if len(job.dwellings) == 1 else f"{own}, {title}"
    return names | {id: helpers.say(each.title) for id, each in job.spaces.items() if id not in names}


def items_of(helpers: Helpers, plan: Plan, say: Words) -> Iterator[GanttItem]:
    """Everything that is drawn."""
    job, worktime = plan.job, plan.worktime
    critical_path = {piece for piece, _ in plan.critical_path}
    for stretch in plan.stretches:
        starts, ends = worktime.slot_at(stretch.starts), worktime.slot_at(stretch.ends)
        kind = "visit" if stretch.visit else "work"
        words = helpers.title("inspection", stretch.visit) if stretch.visit else _words(helpers, plan, stretch, say)
        yield GanttItem(job.tasks[stretch.task].space, starts, ends, kind, words, stretch.activity in critical_path)  # type: ignore[arg-type]
    for shut in plan.closed:
        words = say["plan_bar_closed"].format(task=_title(helpers, plan, shut.task))
        yield GanttItem(shut.place, worktime.slot_at(shut.starts), worktime.slot_at(shut.ends), "closed", words)
    for wait in lags(plan):
        words = say["plan_bar_wait"].format(task=_title(helpers, plan, wait.task))
        if wait.visit:
            words = say["plan_bar_call"].format(inspection=helpers.title("inspection", wait.visit))
        starts, ends = worktime.slot_at(wait.starts), worktime.slot_at(wait.ends)
        yield GanttItem(job.tasks[wait.task].space, starts, ends, "wait", words)


def _words(helpers: Helpers, plan: Plan, stretch: Stretch, say: Words) -> str:
    names = first_names(helpers, plan)
    people = ", ".join(names[person] for person in stretch.people)
    opening = plan.job.tasks[stretch.task].opening
    title = _title(helpers, plan, stretch.task)
    if opening:
        title += f" ({helpers.say(plan.job.openings[opening].title)})"
    trip = trip_name(helpers, plan, stretch.task, stretch.trip, say)
    if trip:
        title = say["task_trip"].format(task=title, trip=trip)
    return say["plan_bar"].format(task=title, people=people)


def _title(helpers: Helpers, plan: Plan, task: str) -> str:
    return helpers.title("procedure", plan.job.tasks[task].procedure)


def _evening(plan: Plan, day: date) -> int | None:
    """The slot of the evening of a day; None beyond the axis."""
    worktime = plan.worktime
    if day < worktime.days[0] or day > worktime.days[-1]:
        return None
    return sum(each <= day for each in worktime.days) * worktime.slots_per_day
