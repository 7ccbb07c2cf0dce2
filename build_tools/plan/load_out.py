"""What to have in the truck on each day of a job: tools of the work of that day, materials of what begins.

Of a material that comes in packs a day takes as many as it needs beyond what the days before have left over; what is
cut from stock lengths comes whole on the first day, since its sticks are shared.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field
from datetime import date
from math import ceil

from build_tools.plan.calls import runs
from build_tools.plan.lead_times import lead_days
from build_tools.plan.order_list import to_do
from build_tools.plan.order_quantities import Ordered, ordered
from build_tools.plan.person_days import by_day
from build_tools.plan.plan import Plan


@dataclass(frozen=True, slots=True)
class LoadTool:
    """A tool for a day. Of a rented one ``fetched`` and ``back`` are the days on which it comes and goes back."""

    tool: str
    fetched: date | None = None
    back: date | None = None


@dataclass(frozen=True, slots=True)
class LoadMaterial:
    """So much of what is ordered, for tasks that begin on a day. ``delivered``: it comes by itself."""

    what: Ordered
    quantity: float
    tasks: tuple[str, ...]
    delivered: bool


@dataclass(slots=True)
class DayLoad:
    """One working day: the tasks that run, and what they want."""

    day: date
    tasks: list[str] = field(default_factory=list)
    tools: list[LoadTool] = field(default_factory=list)
    materials: list[LoadMaterial] = field(default_factory=list)


def load_out(plan: Plan) -> list[DayLoad]:
    """Each day on which somebody of the crew works."""
    loads: dict[date, DayLoad] = {}
    for stretch in sorted(plan.stretches, key=lambda one: (one.starts, one.activity)):
        if not stretch.visit:
            for starts, _ in by_day(plan, stretch):
                load = loads.setdefault(starts.date(), DayLoad(starts.date()))
                if stretch.task not in load.tasks:
                    load.tasks.append(stretch.task)
    rented = _rented(plan)
    for load in loads.values():
        load.tools = [_tool(tool, load.day, rented) for tool in _tools(plan, load.tasks)]
    for day, out in _materials(plan):
        loads[day].materials.append(out)
    return [loads[day] for day in sorted(loads)]


def _tools(plan: Plan, tasks: list[str]) -> list[str]:
    """The tools of these tasks, each once."""
    book = plan.context.book
    lines = [line for task in tasks for line in book.procedures[plan.job.tasks[task].procedure].item.tools]
    return list(dict.fromkeys(line.tool for line in lines))


def _rented(plan: Plan) -> dict[str, list[tuple[date, date]]]:
    """From when to when each rented tool is here: once for days that follow each other."""
    book = plan.context.book
    users: dict[str, list[str]] = defaultdict(list)
    for task in plan.prepared.activities:
        for tool in _tools(plan, [task]):
            if book.tools[tool].item.rented:
                users[tool].append(task)
    return {
        tool: [
            (run[0].starts.date(), max(one.ends for one in run).date())
            for run in runs(plan, [one for task in tasks for one in plan.of_task(task) if not one.visit])
        ]
        for tool, tasks in users.items()
    }


def _tool(tool: str, day: date, rented: dict[str, list[tuple[date, date]]]) -> LoadTool:
    for first, last in rented.get(tool, ()):
        if first <= day <= last:
            return LoadTool(tool, first, last)
    return LoadTool(tool)


def _materials(plan: Plan) -> list[tuple[date, LoadMaterial]]:
    """What is first needed on which day, in the order of the procedures of that day."""
    found = []
    for what in ordered(plan, to_do(plan)):
        material = plan.context.book.materials[what.material].item
        delivered = not material.keeps or bool(lead_days(plan.job, what.material))
        days: dict[date, list[str]] = defaultdict(list)
        for task in sorted(what.by_task, key=plan.starts):
            if what.by_task[task]:
                days[plan.starts(task).date()].append(task)
        needed = there = 0.0
        for day, tasks in days.items():
            needed += sum(what.by_task[task] for task in tasks)
            wanted = what.quantity if what.cuts else ceil(round(needed / what.size, 6)) * what.size
            if wanted > there:
                found.append((day, LoadMaterial(what, wanted - there, tuple(tasks), delivered)))
                there = wanted
    return found
