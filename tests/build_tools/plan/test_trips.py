"""Work in trips: each comes when its wait is over, what is shut between them stays shut, and what is done counts.

The days are worked out by hand: Monday, 7 December 2026, 7:30 to 15:30.
"""

from __future__ import annotations

from datetime import date, datetime
from typing import Any

import pytest

from build_tools.commands.plan_text import plan_text
from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.plan_chart import items_of
from build_tools.pages.words import words
from build_tools.plan import start_windows
from build_tools.plan.checks import check_job
from build_tools.plan.person_days import person_days
from build_tools.plan.plan import Plan
from build_tools.plan.planning import plan_job
from tests.build_tools.plan.drawn_jobs import Fields, before, book_of, closes, job_of, procedure, trip
from tests.build_tools.plan.rules import broken_rules

MONDAY = date(2026, 12, 7)
COAT = {"coat": trip("100 %", times="3", wait="24 h", counted_from="start", shut=True, in_one_day=True)}
TILE = {"lay": trip("75 %"), "grout": trip("25 %", wait="24 h", shut=True)}
SLAB = {
    "spray": trip("40 %"),
    "strip": trip("30 %", wait="24 h"),
    "open": trip("30 %", wait="48 h", since="spray"),
}
SETTLE = {"stack": trip("80 %"), "compare": trip("20 %", wait="3 days")}


def plan_of(tasks: dict[str, Fields], procedures: dict[str, Any], today: date = MONDAY, **more: Any) -> Plan:
    """A plan that keeps every rule."""
    context, entry = book_of(procedures), job_of(tasks, **more)
    assert [one for one in check_job(context, entry, today) if one.severity == "error"] == []
    plan = plan_job(context, entry, today)
    assert broken_rules(plan, today) == []
    return plan


def times(plan: Plan, task: str) -> list[str]:
    """When each stretch of a task begins and ends."""
    return [f"{one.starts:%d %H:%M} to {one.ends:%d %H:%M}" for one in plan.of_task(task)]


def test_three_coats_are_laid_a_day_apart_and_the_room_is_shut_from_the_first() -> None:
    """6 h of three coats: 2 h each, each a day after the last one began; a day until socks. The trim waits for that."""
    coats = procedure("6 h", trips=COAT, closes=[closes("24 h")])
    plan = plan_of({"coats": {"procedure": "p"}, "trim": {"procedure": "q"}}, {"p": coats, "q": procedure("30 h")})
    assert times(plan, "trim") == [
        "07 07:30 to 07 15:30",
        "08 07:30 to 08 15:30",
        "09 07:30 to 09 15:30",
        "10 07:30 to 10 13:30",
    ]
    assert times(plan, "coats") == ["10 13:30 to 10 15:30", "11 13:30 to 11 15:30", "14 07:30 to 14 09:30"]
    (shut,) = plan.closed
    assert (shut.starts, shut.ends) == (datetime(2026, 12, 10, 15, 30), datetime(2026, 12, 15, 9, 30))


def test_nobody_else_is_in_the_room_between_coats_though_two_crews_find_room_in_it() -> None:
    coats = procedure("3 h", trips=COAT, closes=[closes("24 h")])
    people = [{"person": "alda-fenn"}]
    spaces = {"room": {"title": "Room", "crews": 2}}
    tasks: dict[str, Fields] = {"coats": {"procedure": "p"}, "trim": {"procedure": "q", "after": ["coats"]}}
    plan = plan_of(tasks, {"p": coats, "q": procedure("2 h")}, people=people, spaces=spaces)
    assert times(plan, "coats") == ["07 07:30 to 07 08:30", "08 07:30 to 08 08:30", "09 07:30 to 09 08:30"]
    assert times(plan, "trim") == ["10 08:30 to 10 10:30"]


def test_grout_waits_from_the_last_tile() -> None:
    """8 h: 6 of tile and 2 of grout, which ends on Tuesday evening; Wednesday evening the room is open, so Thursday."""
    tile = procedure("8 h", trips=TILE, closes=[closes("24 h")])
    plan = plan_of({"tile": {"procedure": "p"}}, {"p": tile})
    assert times(plan, "tile") == ["07 07:30 to 07 13:30", "08 13:30 to 08 15:30"]
    assert [(one.starts.day, one.ends.day) for one in plan.closed] == [(7, 10)]


def test_a_slab_is_walked_on_after_a_day_and_filled_beside_after_two() -> None:
    """1 h of spray, 45 min of stripping, 45 min of fill. Counted from the spray: feet 24 h, fill and grade 48 h."""
    lines = [closes("24 h", after="spray"), closes("48 h", "next work", after="spray")]
    cure = procedure("2.5 h", trips=SLAB, closes=lines)
    grade = procedure("1 h", before=[before("p")])
    plan = plan_of({"cure": {"procedure": "p"}, "grade": {"procedure": "q"}}, {"p": cure, "q": grade})
    assert times(plan, "cure") == ["07 07:30 to 07 08:30", "08 08:30 to 08 09:15", "09 08:30 to 09 09:15"]
    assert [(one.starts, one.ends) for one in plan.closed] == [
        (datetime(2026, 12, 7, 8, 30), datetime(2026, 12, 8, 8, 30))
    ]
    assert times(plan, "grade") == ["09 09:15 to 09 10:15"]


def test_each_trip_is_rounded_up_by_itself() -> None:
    """1 h in three coats is 20 min each: three times half an hour are booked."""
    plan = plan_of({"coats": {"procedure": "p"}}, {"p": procedure("1 h", trips=COAT, closes=[closes("24 h")])})
    assert [one.ends - one.starts for one in plan.of_task("coats")] == [
        datetime(1, 1, 1, 0, 30) - datetime(1, 1, 1)
    ] * 3


@pytest.mark.parametrize(
    ("left", "expected"),
    [
        ("6 h", ["08 07:30 to 08 09:30", "09 07:30 to 09 09:30", "10 07:30 to 10 09:30"]),
        ("5 h", ["08 07:30 to 08 08:30", "09 07:30 to 09 09:30", "10 07:30 to 10 09:30"]),
        ("4 h", ["09 07:30 to 09 09:30", "10 07:30 to 10 09:30"]),
    ],
)
def test_what_is_left_of_a_started_work_waits_for_what_was_done(left: str, expected: list[str]) -> None:
    """Begun on Monday, planned on Tuesday. With one coat done the next comes a day after Monday evening."""
    task = {"procedure": "p", "started": "2026-12-07", "left": left}
    coats = procedure("6 h", trips=COAT, closes=[closes("24 h")])
    tasks = {"coats": task, "trim": {"procedure": "q"}}
    plan = plan_of(tasks, {"p": coats, "q": procedure("1 h")}, date(2026, 12, 8))
    assert times(plan, "coats") == expected
    assert plan.starts("trim") >= plan.closed[0].ends


def test_stacked_boards_that_are_done_have_waited_already() -> None:
    """The second readings come three days after the stacking, so what is done keeps nobody waiting."""
    lines = [closes("3 days", "next work", after="stack")]
    boards = procedure("5 h", trips=SETTLE, closes=lines)
    tasks = {"in": {"procedure": "p", "done": "2026-12-07"}, "rack": {"procedure": "q"}}
    plan = plan_of(tasks, {"p": boards, "q": procedure("1 h", before=[before("p")])}, date(2026, 12, 8))
    assert times(plan, "rack") == ["08 07:30 to 08 08:30"]


def test_boards_that_are_stacked_are_read_three_days_after() -> None:
    """Begun on Monday with four of the five hours done, planned on Wednesday: Monday evening and three days."""
    boards = procedure("5 h", trips=SETTLE)
    task = {"procedure": "p", "started": "2026-12-07", "left": "1 h"}
    assert times(plan_of({"in": task}, {"p": boards}, date(2026, 12, 9)), "in") == ["11 07:30 to 11 08:30"]


def test_a_coat_that_takes_longer_than_a_day_is_no_plan() -> None:
    coats = procedure("30 h", trips=COAT, closes=[closes("24 h")])
    (diagnostic,) = check_job(book_of({"p": coats}), job_of({"coats": {"procedure": "p"}}), MONDAY)
    assert diagnostic.message == "takes 10 h for 'coat' with its people, is not left overnight, and a day has 8 h"


def test_a_trip_is_called_what_a_foreman_calls_it() -> None:
    """On the bars, in the days of each person, in what waits, and in what sets the end."""
    coats = procedure("3 h", trips=COAT, closes=[closes("24 h")])
    plan = plan_of({"coats": {"procedure": "p"}}, {"p": coats})
    text, say = plan_text(plan, None, []), words()
    assert "7:30 to 8:30  P (Room), 2nd coat" in text
    assert "P (Room), 1st coat, until Tue 8 Dec 7:30. Waiting for it: P (Room), 2nd coat." in text
    assert "P (Room), 2nd coat settles, sets or dries until Wed 9 Dec 7:30." in text
    bars = [item.words for item in items_of(Helpers(plan.context, "", {}), plan, say) if item.kind == "work"]
    assert bars == [f"P, {nth} coat: alda-fenn" for nth in ("1st", "2nd", "3rd")]
    assert [(day.day.day, part.trip) for day in person_days(plan, "alda-fenn") for part in day.parts] == [
        (7, 0),
        (8, 1),
        (9, 2),
    ]


def test_what_was_sprayed_yesterday_keeps_everybody_off_today() -> None:
    """Sprayed on Monday, planned on Tuesday: Monday evening and 24 h is Tuesday evening."""
    cure = procedure("2.5 h", trips=SLAB, closes=[closes("24 h", after="spray")])
    task = {"procedure": "p", "started": "2026-12-07", "left": "1.5 h"}
    spaces = {"room": {"title": "Slab", "crews": 2}}
    tasks = {"cure": task, "rail": {"procedure": "q"}}
    everybody = {"role": "lead", "trained_in": ["p", "q"]}
    context = book_of({"p": cure, "q": procedure("1 h")}, {"alda-fenn": everybody, "bram-tolle": everybody})
    entry = job_of(tasks, spaces=spaces, people=[{"person": "alda-fenn"}, {"person": "bram-tolle"}])
    plan = plan_job(context, entry, date(2026, 12, 8))
    assert broken_rules(plan, date(2026, 12, 8)) == []
    assert times(plan, "rail") == ["09 07:30 to 09 08:30"]
    assert times(plan, "cure") == ["09 07:30 to 09 08:15", "10 07:30 to 10 08:15"]


@pytest.mark.parametrize(
    ("form", "pour", "expected"),
    [
        ("7.75 h", "2 h", ["08 07:30 to 08 09:30"]),
        ("6.25 h", "2 h", ["07 14:00 to 08 08:00"]),
        ("6.5 h", "2 h", ["07 14:00 to 08 08:00"]),
        ("0.25 h", "8.25 h", ["07 07:45 to 07 15:30", "08 07:30 to 08 08:00"]),
    ],
)
def test_no_quarter_hour_is_cut_off_overnight(form: str, pour: str, expected: list[str]) -> None:
    """Half an hour at least lies on each side of a night; a task of 33 quarters is cut into 31 and 2."""
    tasks: dict[str, Fields] = {"form": {"procedure": "p"}, "wall": {"procedure": "q", "after": ["form"]}}
    assert times(plan_of(tasks, {"p": procedure(form), "q": procedure(pour)}), "wall") == expected


def test_the_walker_sees_a_crumb(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(start_windows, "LEAST", 0)
    tasks: dict[str, Fields] = {"form": {"procedure": "p"}, "wall": {"procedure": "q", "after": ["form"]}}
    plan = plan_job(book_of({"p": procedure("7.75 h"), "q": procedure("2 h")}), job_of(tasks), MONDAY)
    assert broken_rules(plan, MONDAY) == ["wall 1 is cut overnight with a crumb"]
