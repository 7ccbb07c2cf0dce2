"""Whom to call for a job, when, and when they come: inspectors, suppliers, rented tools, friends with a license.

A call is due so long before the visit as its notice says: days are weekdays that are no holidays, hours are hours.
What nobody says anything about is called for the working day before.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from math import ceil
from typing import Literal

from build_tools.book import quantities
from build_tools.plan.lead_times import lead_days
from build_tools.plan.office_hours import A_CALL, CLOSES, OPENS, add_weekdays, answered_from, ends_by, weekday_up_to
from build_tools.plan.plan import Plan, Stretch
from build_tools.plan.prepared import InspectionVisit
from build_tools.plan.worktime import SLOT, SLOTS_PER_HOUR

Kind = Literal["inspection", "delivery", "rental", "friend"]
KINDS: tuple[Kind, ...] = ("inspection", "delivery", "rental", "friend")


@dataclass(frozen=True, slots=True)
class Release:
    """A hold point that somebody releases: the step of a task, and what waits for it.

    ``steps`` are those of the task itself that follow, ``tasks`` the tasks that come next.
    """

    task: str
    step: str
    number: int
    steps: tuple[int, ...]
    tasks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ScheduledCall:
    """One call to make, and what comes of it.

    ``thing`` is the inspection, the supplier's name, the tool or the person. ``at`` is when to call and ``by`` when the
    call must be over; ``ready`` is set where it may not be made before the work is ready. ``notice`` is as the book or
    the job says it, empty where nothing is said. ``key`` names the call whatever the dates are. ``late``: it is due
    before the plan starts.
    """

    kind: Kind
    thing: str
    key: str
    at: datetime
    by: datetime
    comes: datetime
    leaves: datetime
    tasks: tuple[str, ...]
    notice: str = ""
    ready: datetime | None = None
    materials: tuple[str, ...] = ()
    release: Release | None = None
    late: bool = False


@dataclass(frozen=True, slots=True)
class CrewInspection:
    """A hold point that somebody of the crew releases, with about when; nobody has to be called."""

    inspection: str
    about: datetime
    notice: str
    release: Release


def calls(plan: Plan) -> list[ScheduledCall]:
    """Every call of a job by the time at which it is to be made."""
    made = [*_inspections(plan), *_deliveries(plan), *_rentals(plan), *_friends(plan)]
    met: Counter[str] = Counter()
    for number, call in enumerate(made):
        met[call.key] += 1
        if met[call.key] > 1:
            made[number] = replace(call, key=f"{call.key} {met[call.key]}")
    return sorted(made, key=lambda call: (call.at, KINDS.index(call.kind), call.thing, call.key))


def crew_inspections(plan: Plan) -> list[CrewInspection]:
    """Every hold point that somebody of the crew releases, in the order in which they come."""
    book, made = plan.context.book, []
    for task in plan.prepared.activities:
        for number, step in enumerate(book.procedures[plan.job.tasks[task].procedure].item.steps, 1):
            if step.hold and book.inspections[step.hold.inspection].item.by == "crew":
                notice = quantities.text(book, book.inspections[step.hold.inspection].item.notice)
                about = _step_ends(plan, task, number)
                if about is not None:
                    made.append(CrewInspection(step.hold.inspection, about, notice, _release(plan, task, step.id)))
    return sorted(made, key=lambda look: (look.about, look.release.task, look.release.number))


# somebody from outside looks


def _inspections(plan: Plan) -> Iterator[ScheduledCall]:
    activities = plan.prepared.problem.activities
    stretches = {stretch.activity: stretch for stretch in plan.stretches}
    for visit in plan.prepared.visits:
        comes = stretches[visit.activity]
        before = activities[visit.activity].predecessors
        ready = stretches[before[0].predecessor].ends if visit.when_ready and before else None
        by = ends_by(_notice_back(plan, comes.starts, visit), plan.job.holidays)
        at = by - A_CALL
        if ready is not None and at < ready:
            at = answered_from(ready, plan.job.holidays)
            by = max(by, at)
        yield ScheduledCall(
            "inspection",
            visit.inspection,
            f"inspection {visit.task} {visit.step}",
            at,
            by,
            comes.starts,
            comes.ends,
            (visit.task,),
            quantities.text(plan.context.book, visit.notice),
            ready,
            release=_release(plan, visit.task, visit.step),
            late=_late(plan, at),
        )


def _notice_back(plan: Plan, comes: datetime, visit: InspectionVisit) -> datetime:
    """The last moment that leaves the notice before a visit."""
    if visit.weekdays is None:
        return comes - timedelta(hours=visit.hours)
    return datetime.combine(add_weekdays(comes.date(), -visit.weekdays, plan.job.holidays), comes.time())


def _release(plan: Plan, task: str, step: str) -> Release:
    steps = plan.context.book.procedures[plan.job.tasks[task].procedure].item.steps
    number = next(number for number, one in enumerate(steps, 1) if one.id == step)
    waiting = [
        link.successor
        for link in plan.prepared.precedences
        if link.predecessor == task and link.successor in plan.prepared.activities
    ]
    return Release(task, step, number, tuple(range(number + 1, len(steps) + 1)), tuple(_by_start(plan, waiting)))


def _step_begins(plan: Plan, task: str, number: int) -> datetime:
    """About when a step of a task begins, by its share of the time that the task takes."""
    id, slot = _slot_of(plan, task, _share(plan, task, number - 1), begins=True)
    return plan.worktime.starts(plan.solution.starts[id] + slot)


def _step_ends(plan: Plan, task: str, number: int) -> datetime | None:
    """About when a step of a task is done; None where it lies in what is done of a started task already."""
    share = _share(plan, task, number)
    if share <= 0 and plan.job.tasks[task].started is not None:
        return None
    id, slot = _slot_of(plan, task, share, begins=False)
    return plan.worktime.ends(plan.solution.starts[id] + slot)


def _share(plan: Plan, task: str, number: int) -> int:
    """How many slots of what is planned of a task go by until so many of its steps are done."""
    procedure = plan.context.book.procedures[plan.job.tasks[task].procedure].item
    left = sum(plan.prepared.problem.activities[id].duration for id in _work(plan, task))
    people = plan.job.tasks[task].people or procedure.labour.people
    whole = max(left, ceil(round(plan.prepared.take_offs[task].hours / people * SLOTS_PER_HOUR, 6)))
    return max(0, round(whole * number / len(procedure.steps)) - (whole - left))


def _slot_of(plan: Plan, task: str, slot: int, *, begins: bool) -> tuple[str, int]:
    """The activity of a task, and the slot in it, after so many slots of work.

    At the cut between two activities that is the end of the earlier one, or where something ``begins`` the start of the
    later one.
    """
    work = _work(plan, task)
    for id in work:
        slots = plan.prepared.problem.activities[id].duration
        if slot < slots or (slot == slots and (not begins or id == work[-1])):
            return id, slot
        slot -= slots
    return work[-1], plan.prepared.problem.activities[work[-1]].duration


def _work(plan: Plan, task: str) -> list[str]:
    return [id for id in plan.prepared.activities[task] if plan.prepared.problem.activities[id].team]


# things that come


def _deliveries(plan: Plan) -> Iterator[ScheduledCall]:
    """What has a lead time comes once, for the first task that uses it; what does not keep comes to the step itself."""
    book, job = plan.context.book, plan.job
    needed: dict[tuple[str, bool, date], list[tuple[str, str, datetime]]] = defaultdict(list)
    came: dict[str, date] = {}
    for task in _by_start(plan, (task for task in plan.prepared.activities if job.tasks[task].started is None)):
        for id in dict.fromkeys(line.material for line in book.procedures[job.tasks[task].procedure].item.materials):
            material = book.materials[id].item
            if material.keeps and not lead_days(job, id):
                continue
            moment = plan.starts(task) if material.keeps else used_at(plan, task, id)
            day = came.setdefault(id, moment.date()) if material.keeps else moment.date()
            needed[material.supplier.inside(book.language), material.keeps, day].append((task, id, moment))
    for (supplier, keeps, day), lines in needed.items():
        materials = tuple(sorted({id for _, id, _ in lines}))
        comes = min(moment for _, _, moment in lines)
        if keeps and weekday_up_to(day, job.holidays) != day:
            comes = datetime.combine(weekday_up_to(day, job.holidays), OPENS)
        lead = max(lead_days(job, id) for id in materials)
        tasks = dict.fromkeys(task for task, _, _ in lines)
        yield _thing(plan, "delivery", supplier, tasks, (comes, comes + 2 * SLOT), lead, materials)


def used_at(plan: Plan, task: str, material: str) -> datetime:
    """When a task comes to the step that uses a material."""
    steps = plan.context.book.procedures[plan.job.tasks[task].procedure].item.steps
    return _step_begins(plan, task, next((n for n, step in enumerate(steps, 1) if material in step.materials), 1))


def _rentals(plan: Plan) -> Iterator[ScheduledCall]:
    """A rented tool is called for once for days that follow each other; a day between is not worth a way back."""
    book, job = plan.context.book, plan.job
    users: dict[str, list[str]] = defaultdict(list)
    for task in plan.prepared.activities:
        procedure = book.procedures[job.tasks[task].procedure].item
        for tool in dict.fromkeys(line.tool for line in procedure.tools):
            if book.tools[tool].item.rented:
                users[tool].append(task)
    for tool, tasks in users.items():
        stretches = [one for task in tasks for one in plan.of_task(task) if not one.visit]
        yield from _asked(plan, "rental", tool, stretches, lead_days(job, tool))


def _friends(plan: Plan) -> Iterator[ScheduledCall]:
    """A friend of the crew is asked for each run of days."""
    for hand in plan.job.people:
        person = plan.context.book.people[hand.person].item
        if person.role == "friend":
            lead = ceil(quantities.hours(plan.context.book, person.notice) / 24) if person.notice else 0
            mine = [stretch for stretch in plan.stretches if hand.person in stretch.people]
            yield from _asked(plan, "friend", hand.person, mine, lead)


def _asked(plan: Plan, kind: Kind, thing: str, stretches: list[Stretch], lead: int) -> Iterator[ScheduledCall]:
    """A call for each run of days; none for what is there already, at a task that is begun."""
    for run in runs(plan, stretches):
        if plan.job.tasks[run[0].task].started is None:
            times = (run[0].starts, max(stretch.ends for stretch in run))
            yield _thing(plan, kind, thing, dict.fromkeys(stretch.task for stretch in run), times, lead)


def _thing(
    plan: Plan,
    kind: Kind,
    thing: str,
    tasks: Iterable[str],
    times: tuple[datetime, datetime],
    lead: int,
    materials: tuple[str, ...] = (),
) -> ScheduledCall:
    """A call for what comes and goes at these times, ordered ``lead`` weekdays ahead; nothing said, one."""
    day = add_weekdays(times[0].date(), -(lead or 1), plan.job.holidays)
    at, by = datetime.combine(day, OPENS), datetime.combine(day, CLOSES)
    notice = f"{lead} {'day' if lead == 1 else 'days'}" if lead else ""
    own = tuple(tasks)
    key = f"{kind} {thing} {min(own, key=list(plan.job.tasks).index)}"
    return ScheduledCall(kind, thing, key, at, by, *times, own, notice, materials=materials, late=_late(plan, at))


# what they share


def _by_start(plan: Plan, tasks: Iterable[str]) -> list[str]:
    order = list(plan.job.tasks)
    return sorted(tasks, key=lambda task: (plan.starts(task), order.index(task)))


def runs(plan: Plan, stretches: list[Stretch]) -> Iterator[list[Stretch]]:
    """Stretches in their order, cut where more than one working day lies between."""
    run: list[Stretch] = []
    days = plan.worktime.days
    for stretch in sorted(stretches, key=lambda stretch: (stretch.starts, stretch.activity)):
        if run and days.index(stretch.starts.date()) - days.index(max(one.ends for one in run).date()) > 2:
            yield run
            run = []
        run.append(stretch)
    if run:
        yield run


def _late(plan: Plan, at: datetime) -> bool:
    return at < datetime.combine(plan.prepared.today, plan.worktime.begins)
