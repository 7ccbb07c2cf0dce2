"""A plan read for people and programs: its days, its waits, the reason of each link of the chain, the data."""

from __future__ import annotations

import json
import re
from datetime import date, datetime
from functools import lru_cache

import pytest

from build_tools.plan import data
from build_tools.plan.compare import figures
from build_tools.plan.daily_schedule import daily_schedule
from build_tools.plan.data import plan_as_data
from build_tools.plan.lags import lags
from build_tools.plan.plan import Plan
from build_tools.plan.planning import plan_job
from build_tools.plan.reasons import reasons
from build_tools.plan.what_if import Acceleration
from tests.build_tools.plan.drawn_jobs import Fields, before, book_of, closes, draw, inspection, job_of, procedure

MONDAY = date(2026, 12, 7)


def at(day: int, hour: int, minute: int = 0) -> datetime:
    return datetime(2026, 12, day, hour, minute)


@lru_cache
def floor() -> Plan:
    """Alda paints, coats the floor, which is closed until the next morning, and sets the door; then somebody looks."""
    context = book_of(
        {
            "paint": procedure("2 h", closes=[closes("4 h", "next work")]),
            "coat": procedure("2 h", closes=[closes("20 h")], before=[before("paint")]),
            "door": procedure("3 h", before=[before("coat")], holds={1: "late"}),
        },
        inspections={"late": inspection("0 h", called="when ready")},
    )
    entry = job_of({"paint": {"procedure": "paint"}, "coat": {"procedure": "coat"}, "door": {"procedure": "door"}})
    return plan_job(context, entry, MONDAY)


def test_the_days_hold_work_visits_what_is_closed_and_what_waits() -> None:
    first, second = daily_schedule(floor())
    assert [(part.task, part.starts, part.ends) for part in first.of("alda-fenn")] == [
        ("paint", at(7, 7, 30), at(7, 9, 30)),
        ("coat", at(7, 13, 30), at(7, 15, 30)),
    ]
    assert [(one.task, one.later, one.ends) for one in first.lags] == [("paint", (("coat", 0),), at(7, 13, 30))]
    assert first.closed == []  # it is closed when the day is over
    assert [(part.task, part.starts, part.ends, part.goes_on) for part in second.work] == [
        ("door", at(8, 11, 30), at(8, 13), False),
        ("door", at(8, 13, 30), at(8, 15), False),
    ]
    assert [(one.place, one.task, one.ends) for one in second.closed] == [("room", "coat", at(8, 11, 30))]
    assert [(one.visit, one.starts) for one in second.visits] == [("late", at(8, 13))]


def test_work_that_is_not_done_in_a_day_goes_on() -> None:
    plan = plan_job(book_of({"long": procedure("11 h")}), job_of({"long": {"procedure": "long"}}), MONDAY)
    days = daily_schedule(plan)
    assert [[(part.starts, part.ends, part.goes_on) for part in day.work] for day in days] == [
        [(at(7, 7, 30), at(7, 15, 30), True)],
        [(at(8, 7, 30), at(8, 10, 30), False)],
    ]


def test_each_link_says_what_it_waited_for() -> None:
    assert [(link.task, link.visit, link.kind, link.predecessor, link.what) for link in reasons(floor())] == [
        ("paint", "", "start", "", ""),
        ("coat", "", "wait", "paint", ""),
        ("door", "", "closed", "coat", "room"),
        ("door", "late", "call", "door", "late"),
        ("door", "", "visit", "door", "late"),
    ]


def kinds(tasks: dict[str, Fields], more: Fields) -> list[str]:
    """The reasons of a job of short work in places of its own."""
    spaces = {name: {"title": name} for name in ("room", "hall")}
    context = book_of({"work": procedure("2 h"), "two": procedure("2 h", materials=[MATERIAL])})
    plan = plan_job(context, job_of(tasks, spaces=spaces, **more), MONDAY)
    return [link.kind for link in reasons(plan)]


MATERIAL = {"material": "board", "quantity": "1 each", "per": "each"}


@pytest.mark.parametrize(
    ("tasks", "more", "expected"),
    [
        ({"a": {"procedure": "work", "not_before": "2026-12-09"}}, {}, ["not before"]),
        (
            {"a": {"procedure": "two"}},
            {"prices": [{"material": "board", "lead_time": "2 days"}]},
            ["delivery"],
        ),
        ({"a": {"procedure": "work"}}, {"people": [{"person": "alda-fenn", "off": ["2026-12-07"]}]}, ["away"]),
        (
            {"a": {"procedure": "work"}, "b": {"procedure": "work", "space": "hall"}},
            {},
            ["start", "person"],
        ),
        (
            {"a": {"procedure": "work", "space": "hall"}, "b": {"procedure": "work", "after": ["a"]}},
            {},
            ["start", "task"],
        ),
    ],
)
def test_the_first_link_has_a_reason_too(tasks: dict[str, Fields], more: Fields, expected: list[str]) -> None:
    assert kinds(tasks, more) == expected


def test_two_plans_have_comparable_figures() -> None:
    found = figures(floor())
    assert (found.end, found.working_days, found.closed_days) == (at(8, 15), 2, 1)
    assert (found.closed_hours, found.labour_hours) == (4.0, 7.0)


def test_the_keys_of_the_data_are_those_that_are_written_down() -> None:
    """The table at the top of the module names each key of the data, and no other."""
    made = plan_as_data(floor(), "other", [Acceleration("a helper more", floor()), Acceleration("nothing", None)])
    assert data.__doc__ is not None
    table = data.__doc__.split("=  =")[2]
    named = set(re.findall(r"``(\w+)``", table)) | set(re.findall(r"^(\w+) ", table, re.MULTILINE))
    used = set(made)
    for part in (*made["tasks"].values(), *made["aims"].values(), *made["chain"], *made["sooner"], *made["days"]):
        used |= set(part)
    for day in made["days"]:
        for lines in (day["work"], day["visits"], day["closed"], day["waits"]):
            used |= {key for line in lines for key in line}
    assert used <= named
    assert {"end", "days_to_spare", "slack_hours", "sets_the_end", "spare_hours"} <= used
    assert made["variant"] == "other"
    assert [one["days_sooner"] for one in made["sooner"]] == [0]


def test_the_data_of_a_plan() -> None:
    made = json.loads(json.dumps(plan_as_data(floor())))
    assert made["end"] == "2026-12-08T15:00"
    assert made["aims"]["end"] == {"value": 15.5, "least": 15.5, "proved": True}
    assert made["tasks"]["coat"] == {
        "procedure": "coat",
        "title": "P",
        "space": "room",
        "done": None,
        "starts": "2026-12-07T13:30",
        "ends": "2026-12-07T15:30",
        "people": ["alda-fenn"],
        "hours": 2.0,
        "slack_hours": 0.0,
        "sets_the_end": True,
    }
    assert [link["reason"] for link in made["chain"]] == ["start", "wait", "closed", "call", "visit"]


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(25))
def test_the_data_of_drawn_jobs_is_whole(seed: int) -> None:
    """Every stretch of work stands in the days with all its hours, and every reason has what its sentence needs."""
    drawn = draw(seed)
    plan = plan_job(drawn.context, drawn.entry, drawn.today)
    activities = plan.prepared.problem.activities
    hours = sum(activities[one.activity].duration for one in plan.stretches if not one.visit) / 4
    days = daily_schedule(plan)
    assert sum((part.ends - part.starts).seconds / 3600 for day in days for part in day.work) == hours
    assert sum(len(day.visits) for day in days) == len(plan.prepared.visits)
    assert all(wait.starts <= wait.ends for wait in lags(plan))
    links = reasons(plan)
    assert not links or links[-1].ends == plan.end
    for link in links:
        assert bool(link.predecessor) == (link.until is not None)
        assert bool(link.what) == (link.kind in ("visit", "call", "person", "place", "closed"))
    json.dumps(plan_as_data(plan))
