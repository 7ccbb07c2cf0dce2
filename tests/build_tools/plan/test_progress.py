"""What is done or started stays as it is, and the rest is planned again from today."""

from __future__ import annotations

from datetime import date, datetime

import pytest

from build_tools.plan.plan import Plan
from build_tools.plan.planning import plan_job
from tests.build_tools.plan.drawn_jobs import Fields, before, book_of, closes, inspection, job_of, procedure
from tests.build_tools.plan.rules import broken_rules

MONDAY, TUESDAY, WEDNESDAY = date(2026, 12, 7), date(2026, 12, 8), date(2026, 12, 9)
PROCEDURES = {
    "sand": procedure("8 h"),
    "finish": procedure("4 h", before=[before("sand")], closes=[closes("24 h")]),
    "base": procedure("6 h", before=[before("finish")]),
    "pipe": procedure("8 h", steps=4, holds={1: "first", 3: "second"}),
}
LOOKS = {"first": inspection("0 h"), "second": inspection("0 h")}


def planned(tasks: dict[str, Fields], today: date, **more: object) -> Plan:
    """The plan of those tasks, made on that day; nothing in it breaks a rule."""
    plan = plan_job(book_of(PROCEDURES, inspections=LOOKS), job_of(tasks, **more), today, objectives=2)
    assert broken_rules(plan, plan.prepared.today) == []
    return plan


def floor(**given: Fields) -> dict[str, Fields]:
    """Sanded, finished, and the base put on."""
    return {name: {"procedure": name, **given.get(name, {})} for name in ("sand", "finish", "base")}


def at(day: date, text: str) -> datetime:
    """That time on that day."""
    return datetime.combine(day, datetime.strptime(text, "%H:%M").time())


def test_a_job_that_is_not_begun_is_planned_from_its_start() -> None:
    plan = planned(floor(), WEDNESDAY)
    assert plan.starts("sand") == at(MONDAY, "07:30")


def test_what_is_done_is_not_planned_and_the_rest_goes_on_today() -> None:
    plan = planned(floor(sand={"done": MONDAY}), TUESDAY)
    assert plan.of_task("sand") == []
    assert plan.starts("finish") == at(TUESDAY, "07:30")
    assert plan.starts("base") == at(WEDNESDAY, "11:30")


def test_what_is_done_late_moves_the_end() -> None:
    on_time, late = (planned(floor(sand={"done": MONDAY}), today) for today in (TUESDAY, date(2026, 12, 11)))
    assert late.end > on_time.end


def test_what_is_done_still_closes_its_room() -> None:
    """Finished on Tuesday, counted from that evening: the base waits until Wednesday evening."""
    done: Fields = {"done": MONDAY}
    plan = planned(floor(sand=done, finish={"done": TUESDAY}), WEDNESDAY)
    assert plan.starts("base") == at(date(2026, 12, 10), "07:30")


def test_what_is_started_goes_on_first_with_what_is_left() -> None:
    tasks = {"other": {"procedure": "sand", "space": "house"}}
    tasks |= floor(sand={"done": MONDAY}, finish={"started": MONDAY, "left": "1 h"})
    plan = planned(tasks, TUESDAY)
    (stretch,) = plan.of_task("finish")
    assert (stretch.starts, stretch.ends) == (at(TUESDAY, "07:30"), at(TUESDAY, "08:30"))


def test_what_is_started_goes_on_when_somebody_is_there_again() -> None:
    people = [{"person": "alda-fenn", "days": ["monday", "thursday"]}]
    plan = planned(floor(sand={"started": MONDAY, "left": "2 h"}), TUESDAY, people=people)
    assert plan.starts("sand") == at(date(2026, 12, 10), "07:30")


def test_what_is_started_does_not_wait_for_a_delivery() -> None:
    """Its material is there, or it could not have been started."""
    board = {"material": "board", "quantity": "1 each", "per": "each"}
    context = book_of({"lay": procedure("12 h", materials=[board])})
    job = job_of(
        {"lay": {"procedure": "lay", "started": MONDAY}}, prices=[{"material": "board", "lead_time": "5 days"}]
    )
    plan = plan_job(context, job, TUESDAY, objectives=1)
    assert plan.starts("lay") == at(TUESDAY, "07:30")
    assert plan.ends("lay") == at(WEDNESDAY, "11:30")


@pytest.mark.parametrize(
    ("left", "visits"),
    [
        (None, ["first", "second"]),  # all of it is still to do
        ("7 h", ["first", "second"]),
        ("6 h", ["first", "second"]),  # as far as the first look, which may not have been yet
        ("5 h", ["second"]),
        ("2 h", ["second"]),
        ("1 h", []),
    ],
)
def test_of_what_is_started_the_looks_that_are_left_are_called(left: str | None, visits: list[str]) -> None:
    task: Fields = {"procedure": "pipe", "started": MONDAY} | ({"left": left} if left else {})
    plan = planned({"pipe": task}, TUESDAY)
    # step 1 of 4 ends a quarter of the 8 h, step 3 three quarters
    assert [stretch.visit for stretch in plan.of_task("pipe") if stretch.visit] == visits
