"""The calls of a job: at their notice before the visit, in office hours, and named alike whatever the dates are."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, time, timedelta
from typing import Any

import pytest

from build_tools.book.book import Book, Entry
from build_tools.book.checks.context import Context
from build_tools.book.memo import Memo
from build_tools.book.model.job import Job
from build_tools.book.model.reference import Material, Tool
from build_tools.plan.calls import ScheduledCall, calls, crew_inspections
from build_tools.plan.checks import check_job
from build_tools.plan.plan import Plan
from build_tools.plan.planning import plan_job
from build_tools.plan.prepared import InspectionVisit
from build_tools.plan.worktime import is_weekday
from tests.build_tools.plan.drawn_jobs import NOWHERE, Fields, book_of, draw, inspection, job_of, procedure

MONDAY = date(2026, 12, 7)
DRAWN, TOGETHER = 60, 20


def planned(context: Context, entry: Entry[Job], today: date = MONDAY) -> Plan:
    """The plan of a job, its end alone."""
    return plan_job(context, entry, today, objectives=1)


def at(day: int, hour: int, minute: int = 0) -> datetime:
    """A moment of December 2026."""
    return datetime(2026, 12, day, hour, minute)


def with_things(context: Context, materials: dict[str, Any] | None = None, tools: dict[str, Any] | None = None) -> Any:
    """The same book with these materials and tools."""
    least = {"counted_in": "each", "buy": "Dry.", "supplier": "Yard"}
    book: Book = replace(
        context.book,
        materials={
            id: Entry(id, Material.model_validate(least | {"title": id} | given), NOWHERE)
            for id, given in (materials or {}).items()
        },
        tools={
            id: Entry(id, Tool.model_validate({"title": id, "use": "It."} | given), NOWHERE)
            for id, given in (tools or {}).items()
        },
        _standards=None,
    )
    return Context.of(book, Memo(), {})


# Drawn jobs.


def too_short(call: ScheduledCall, visit: InspectionVisit, off: list[date]) -> bool:
    """Whether a call leaves a visit less than its notice; counted here a day at a time."""
    if visit.weekdays is None:
        return call.comes - call.by < timedelta(hours=visit.hours)
    days, day = 0, call.by.date()
    while day < call.comes.date():
        day += timedelta(days=1)
        days += is_weekday(day, off)
    return days < visit.weekdays or (days == visit.weekdays and call.by.time() > call.comes.time())


@pytest.mark.slow
@pytest.mark.parametrize("first", range(0, DRAWN, TOGETHER))
def test_each_visit_has_one_call_at_its_notice(first: int) -> None:
    met = 0
    for seed in range(first, first + TOGETHER):
        drawn = draw(seed)
        if any(diagnostic.severity == "error" for diagnostic in check_job(drawn.context, drawn.entry, drawn.today)):
            continue
        plan = planned(drawn.context, drawn.entry, drawn.today)
        off = plan.job.holidays
        made = {(call.tasks[0], call.release.step): call for call in calls(plan) if call.release}
        assert set(made) == {(visit.task, visit.step) for visit in plan.prepared.visits}, seed
        for visit in plan.prepared.visits:
            call = made[visit.task, visit.step]
            met += 1
            assert is_weekday(call.at.date(), off) and time(8) <= call.at.time() and call.by.time() <= time(16), seed
            assert call.at <= call.by, seed
            assert not too_short(call, visit, off), seed
            assert call.ready is None or call.ready <= call.at, seed
            assert call.late == (call.at < plan.worktime.starts(0)), seed
    assert met > 2


@pytest.mark.parametrize("seed", range(0, 40, 4))
def test_calls_are_sorted_and_keep_their_names(seed: int) -> None:
    """A job that starts two weeks later has the same calls by name, on other days."""
    drawn = draw(seed)
    if any(diagnostic.severity == "error" for diagnostic in check_job(drawn.context, drawn.entry, drawn.today)):
        return
    first = calls(planned(drawn.context, drawn.entry, drawn.today))
    assert [call.at for call in first] == sorted(call.at for call in first)
    assert len({call.key for call in first}) == len(first)
    job = drawn.entry.item
    if any(task.done or task.started or task.not_before for task in job.tasks.values()):
        return
    two_weeks = timedelta(days=14)
    later = job.model_copy(update={"start": job.start + two_weeks, "deadline": job.deadline + two_weeks})
    other = calls(planned(drawn.context, replace(drawn.entry, item=later), job.start + two_weeks))
    inspections = [{call.key for call in made if call.kind == "inspection"} for made in (first, other)]
    assert inspections[0] == inspections[1]


# One at a time.


def the_visit(notice: str, called: str = "ahead", **job: Any) -> tuple[Plan, ScheduledCall]:
    """A day and a bit of work, looked at after its second step, then more; and its call."""
    context = book_of(
        {"dig": procedure("10 h", steps=5, holds={4: "look"}), "fill": procedure("1 h")},
        inspections={"look": inspection(notice, called=called)},
    )
    tasks: dict[str, Fields] = {"dig": {"procedure": "dig"}, "fill": {"procedure": "fill", "after": ["dig"]}}
    plan = planned(context, job_of(tasks, **{"begins": "7:30", **job}))
    return plan, next(call for call in calls(plan) if call.kind == "inspection")


def test_hours_of_notice_run_back_from_the_visit() -> None:
    """Eight hours of the ten are done on Monday evening, so he comes on Tuesday: called before the offices shut."""
    _, call = the_visit("2 h")
    assert (call.comes, call.at, call.by) == (at(8, 7, 30), at(7, 15, 30), at(7, 16))


def test_days_of_notice_are_days_on_which_offices_work() -> None:
    """Called as soon as the offices open, on Thursday; Friday is a holiday, so three days are over on Wednesday."""
    _, call = the_visit("3 days", start="2026-12-10", holidays=["2026-12-11"])
    assert (call.comes, call.at, call.by) == (at(16, 8, 30), at(10, 8), at(10, 8, 30))


def test_who_is_called_when_ready_is_not_called_before() -> None:
    """The work is ready on Monday at half past three, half an hour before the office shuts."""
    _, call = the_visit("1 day", called="when ready")
    assert (call.ready, call.at, call.by) == (at(7, 15, 30), at(7, 15, 30), at(7, 16))
    assert call.comes == at(9, 7, 30)  # on Tuesday at four the day of the crew is over


def test_a_call_that_finds_the_office_shut_is_made_in_the_morning() -> None:
    """Ready on Friday at six: called on Monday, and one day on is Tuesday."""
    _, call = the_visit("1 day", called="when ready", start="2026-12-11", begins="10:00")
    assert (call.ready, call.at, call.comes) == (at(11, 18), at(14, 9, 30), at(15, 10))


def test_a_hold_point_says_what_waits_for_it() -> None:
    _, call = the_visit("2 h")
    assert call.release is not None
    assert (call.release.task, call.release.step, call.release.number) == ("dig", "s4", 4)
    assert (call.release.steps, call.release.tasks) == ((5,), ("fill",))


def test_what_the_crew_looks_at_is_told_and_not_called() -> None:
    context = book_of(
        {"dig": procedure("8 h", steps=4, holds={2: "own"})}, inspections={"own": inspection("1 h", "crew")}
    )
    plan = planned(context, job_of({"dig": {"procedure": "dig"}}, begins="8:00"))
    assert calls(plan) == []
    (look,) = crew_inspections(plan)
    assert (look.inspection, look.about, look.notice) == ("own", at(7, 12), "1 h")
    assert look.release.steps == (3, 4)


USES = [
    {"material": "oak", "quantity": "1 each", "per": "each"},
    {"material": "nail", "quantity": "1 each", "per": "each"},
]


def test_what_has_a_lead_time_comes_once_for_its_first_task() -> None:
    """Oak takes three days; ordered on Monday it is there on Thursday. Nails are bought when they are needed."""
    context = book_of({"lay": procedure("8 h", materials=USES)})
    context = with_things(context, {"oak": {}, "nail": {}})
    tasks: dict[str, Fields] = {"a": {"procedure": "lay"}, "b": {"procedure": "lay", "after": ["a"]}}
    plan = planned(context, job_of(tasks, prices=[{"material": "oak", "lead_time": "3 days"}]))
    (call,) = calls(plan)
    assert (call.kind, call.thing, call.materials, call.tasks) == ("delivery", "Yard", ("oak",), ("a", "b"))
    assert (call.at.date(), call.comes, call.notice) == (MONDAY, plan.starts("a"), "3 days")
    assert call.key == "delivery Yard a"


def test_what_does_not_keep_comes_to_the_step_that_uses_it() -> None:
    """Concrete comes to each pour, after the look at the forms; nothing says how long ahead, so a day."""
    form = procedure(
        "8 h", steps=4, holds={2: "forms"}, materials=[{"material": "mix", "quantity": "1 each", "per": "each"}]
    )
    steps = [step.model_copy(update={"materials": ["mix"]} if step.id == "s3" else {}) for step in form.steps]
    context = book_of({"pour": form.model_copy(update={"steps": steps})}, inspections={"forms": inspection("24 h")})
    context = with_things(context, {"mix": {"keeps": False, "supplier": "Plant"}})
    tasks: dict[str, Fields] = {"a": {"procedure": "pour"}, "b": {"procedure": "pour", "after": ["a"]}}
    plan = planned(context, job_of(tasks))
    visits = {stretch.task: stretch for stretch in plan.stretches if stretch.visit}
    made = {call.tasks: call for call in calls(plan) if call.kind == "delivery"}
    assert set(made) == {("a",), ("b",)}
    for (task,), call in made.items():
        assert call.comes >= visits[task].ends
        assert call.comes == next(one.starts for one in plan.of_task(task) if one.starts >= visits[task].ends)
        assert (call.notice, is_weekday(call.at.date())) == ("", True)
        assert call.at.date() < call.comes.date()


def test_a_rented_tool_is_called_for_once_for_days_that_follow_each_other() -> None:
    context = book_of({"sand": procedure("8 h", tools=["drum", "cloth"]), "wait": procedure("24 h")})
    context = with_things(context, tools={"drum": {"rented": True}, "cloth": {}})
    tasks: dict[str, Fields] = {
        "a": {"procedure": "sand"},
        "b": {"procedure": "sand", "after": ["a"]},
        "gap": {"procedure": "wait", "after": ["b"]},
        "c": {"procedure": "sand", "after": ["gap"]},
    }
    plan = planned(context, job_of(tasks))
    made = [call for call in calls(plan) if call.kind == "rental"]
    assert [(call.thing, call.tasks) for call in made] == [("drum", ("a", "b")), ("drum", ("c",))]
    assert (made[0].comes, made[0].leaves) == (plan.starts("a"), plan.ends("b"))


def test_what_is_due_before_the_plan_starts_is_late() -> None:
    """The first day is Monday, and whatever is needed on it is asked for on Friday."""
    context = book_of({"sand": procedure("8 h", tools=["drum"])})
    context = with_things(context, tools={"drum": {"rented": True}})
    (call,) = calls(planned(context, job_of({"a": {"procedure": "sand"}})))
    assert (call.at.date(), call.late) == (date(2026, 12, 4), True)


def test_a_friend_is_asked_as_long_ahead_as_he_wants() -> None:
    people: dict[str, Fields] = {
        "alda-fenn": {"role": "lead"},
        "cato-rusk": {"role": "friend", "trained_in": ["wire"], "notice": "5 days"},
    }
    context = book_of({"wire": procedure("6 h")}, people=people)
    entry = job_of(
        {"a": {"procedure": "wire", "not_before": "2026-12-16"}},
        people=[{"person": "alda-fenn"}, {"person": "cato-rusk"}],
    )
    (call,) = calls(planned(context, entry))
    assert (call.kind, call.thing, call.notice) == ("friend", "cato-rusk", "5 days")
    assert (call.comes.date(), call.at.date()) == (date(2026, 12, 16), date(2026, 12, 9))


def test_nobody_is_called_for_a_task_that_is_begun() -> None:
    context = book_of({"sand": procedure("8 h", tools=["drum"], materials=USES)})
    context = with_things(context, {"oak": {}, "nail": {}}, {"drum": {"rented": True}})
    entry = job_of({"a": {"procedure": "sand", "started": MONDAY}}, prices=[{"material": "oak", "lead_time": "3 days"}])
    assert calls(planned(context, entry, date(2026, 12, 8))) == []
