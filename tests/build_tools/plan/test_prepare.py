"""How the lines of the book and the job become rules of the problem, one by one."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import pytest

from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.commands.site import BOOK
from build_tools.plan.plan import Plan
from build_tools.plan.planning import plan_job
from build_tools.plan.precedence import closed_places
from build_tools.plan.prepare import prepare
from build_tools.plan.problem import Infeasible
from tests.build_tools.plan.drawn_jobs import Fields, before, book_of, closes, inspection, job_of, procedure
from tests.build_tools.plan.rules import broken_rules

MONDAY = date(2026, 12, 7)
HOUSE = {
    "hall": {"title": "Hall", "dwelling": "house"},
    "bath": {"title": "Bath", "dwelling": "house", "reached_through": ["hall"]},
    "loft": {"title": "Loft", "dwelling": "house", "reached_through": ["bath"]},
    "shed": {"title": "Shed"},
}
TWO = [{"person": "alda-fenn"}, {"person": "bram-tolle"}]


def planned(context: Context, tasks: dict[str, Fields], **more: object) -> Plan:
    plan = plan_job(context, job_of(tasks, **more), MONDAY, objectives=1)
    assert plan.solution.end.proved
    assert broken_rules(plan, MONDAY) == []
    return plan


def two_people(**procedures: object) -> Context:
    everything: Fields = {"role": "lead", "trained_in": list(procedures)}
    return book_of(procedures, {"alda-fenn": everything, "bram-tolle": everything}, {"look": inspection("0 h")})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("space", "where", "closed"),
    [
        ("hall", "same space", ["bath", "hall", "loft"]),
        ("bath", "same space", ["bath", "loft"]),
        ("bath", "same dwelling", ["bath", "hall", "house", "loft"]),
        ("house", "same space", ["bath", "hall", "house", "loft"]),
        ("shed", "same space", ["shed"]),
        ("shed", "whole job", ["bath", "hall", "house", "loft", "shed"]),
    ],
)
def test_a_closing_reaches_what_lies_behind_it(space: str, where: str, closed: list[str]) -> None:
    job = job_of({"one": {"procedure": "p", "space": "hall"}}, spaces=HOUSE).item
    assert closed_places(job, space, where) == closed  # type: ignore[arg-type]


def test_nobody_works_behind_a_floor_while_its_finish_goes_on() -> None:
    """The bath is reached through the hall alone, so it is empty from the first stroke, not from the last."""
    context = two_people(oil=procedure("8 h", closes=[closes("24 h")]), tub=procedure("4 h"))
    tasks = {"oil": {"procedure": "oil", "space": "hall"}, "tub": {"procedure": "tub", "space": "bath"}}
    plan = planned(context, tasks, spaces=HOUSE, people=TWO)
    oil, tub = plan.of_task("oil")[0], plan.of_task("tub")[0]
    assert tub.ends <= oil.starts or tub.starts >= oil.ends + timedelta(hours=24)


def test_two_places_dry_at_the_same_time() -> None:
    """Tile sets in the bath while the hall, through which it is reached, gets its finish: nobody is kept from work."""
    context = two_people(oil=procedure("4 h", closes=[closes("24 h")]), tile=procedure("4 h", closes=[closes("24 h")]))
    tasks = {"oil": {"procedure": "oil", "space": "hall"}, "tile": {"procedure": "tile", "space": "bath"}}
    plan = planned(context, tasks, spaces=HOUSE, people=TWO)
    assert plan.ends("tile") == datetime(2026, 12, 7, 11, 30)
    assert plan.ends("oil") == datetime(2026, 12, 7, 15, 30)


def test_what_sets_is_counted_from_the_work_and_not_from_the_visit_after_it() -> None:
    """The last step is a look: the room is closed when the work ends, the look comes when it is open again."""
    slab = procedure("4 h", steps=2, holds={2: "look"}, closes=[closes("24 h"), closes("48 h", "next work")])
    context = two_people(slab=slab, frame=procedure("2 h", before=[before("slab")]))
    plan = planned(context, {"slab": {"procedure": "slab"}, "frame": {"procedure": "frame"}}, people=TWO)
    work, visit = plan.of_task("slab")
    assert visit.starts == work.ends + timedelta(hours=24)
    assert [(closed.place, closed.starts) for closed in plan.closed] == [("room", work.ends)]
    assert plan.starts("frame") == work.ends + timedelta(hours=48)


def test_a_link_that_the_job_asks_for_too_keeps_its_wait() -> None:
    context = two_people(
        fill=procedure("4 h", closes=[closes("24 h", "next work")]), sand=procedure("4 h", before=[before("fill")])
    )
    plan = planned(context, {"fill": {"procedure": "fill"}, "sand": {"procedure": "sand", "after": ["fill"]}})
    assert plan.starts("sand") == datetime(2026, 12, 8, 11, 30)


def test_a_specialist_who_comes_once_a_week_is_waited_for() -> None:
    """Ten days of work on one day of the week: the axis is as long as that takes."""
    people = [{"person": "alda-fenn", "days": ["friday"]}, {"person": "bram-tolle", "off": []}]
    context = two_people(wire=procedure("80 h"))
    plan = planned(context, {"wire": {"procedure": "wire", "who": ["alda-fenn"]}}, people=people)
    assert plan.end == datetime(2027, 2, 12, 15, 30)


def test_who_says_nothing_works_on_the_days_of_the_job() -> None:
    context = two_people(lay=procedure("16 h"))
    plan = planned(context, {"lay": {"procedure": "lay"}}, days=["tuesday", "saturday"])
    assert [stretch.starts.date() for stretch in plan.stretches] == [date(2026, 12, 8), date(2026, 12, 12)]


def test_a_tool_has_a_lead_time_too() -> None:
    context = book_of({"sand": procedure("2 h", tools=["sander"])})
    job = job_of({"sand": {"procedure": "sand"}}, prices=[{"tool": "sander", "lead_time": "2 days"}])
    assert plan_job(context, job, MONDAY, objectives=1).starts("sand") == datetime(2026, 12, 9, 7, 30)


@pytest.mark.parametrize(
    ("procedures", "job", "message"),
    [
        ({"lay": procedure("2 h", closes=[closes("90000 h")])}, {}, "it would end more than five years from now"),
        (
            {"lay": procedure("2 h", people=2)},
            {"people": [{"person": "alda-fenn", "days": ["monday"]}, {"person": "bram-tolle", "days": ["friday"]}]},
            "those who may do it never work on the same day",
        ),
        (
            {"lay": procedure("2 h", holds={1: "look"})},
            {"days": ["saturday"]},
            "somebody from outside comes on Monday to Friday, and nobody works on those days",
        ),
    ],
)
def test_what_can_never_be_says_why_and_where(procedures: Fields, job: Fields, message: str) -> None:
    with pytest.raises(Infeasible) as trouble:
        prepare(two_people(**procedures), job_of({"lay": {"procedure": "lay"}}, **job), MONDAY)
    assert (trouble.value.message, trouble.value.tasks) == (message, ("lay",))


def test_the_wait_for_the_marks_on_the_ground_counts_once() -> None:
    """The locators have three weekdays from the call; what comes after the marks waits for nothing else."""
    context = Context.of(load_book(BOOK).book, Memo())
    tasks = {
        "marks": {"procedure": "utility-marks", "space": "yard"},
        "base": {"procedure": "base-compaction", "space": "yard", "hours": "4 h"},
    }
    people = [{"person": "ida-marsh"}, {"person": "tobin-reyes"}]
    entry = job_of(tasks, spaces={"yard": {"title": "Yard"}}, people=people)
    prepared = prepare(context, entry, MONDAY)
    assert [visit.notice for visit in prepared.visits] == ["3 days"]
    assert not any(link.lag for link in prepared.problem.activities["base 1"].predecessors)
