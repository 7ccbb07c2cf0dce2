"""Plans of drawn jobs and of the book's own jobs, walked quarter hour by quarter hour: no rule is broken."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from functools import cache
from pathlib import Path

import pytest

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.book.model.job import Job
from build_tools.commands.site import BOOK
from build_tools.plan.checks import check_job
from build_tools.plan.plan import Plan, planned_from
from build_tools.plan.planning import plan_job
from build_tools.plan.what_if import varied
from tests.build_tools.plan.drawn_jobs import Drawn, Fields, book_of, closes, draw, job_of, procedure
from tests.build_tools.plan.rules import broken_rules

pytestmark = pytest.mark.slow

MONDAY = date(2026, 12, 7)
DRAWN = 330
TOGETHER = 30
"""Drawn jobs of one test."""
JOBS = sorted(path.stem for path in (BOOK / "jobs").glob("*.yaml"))


def can_be_planned(drawn: Drawn) -> bool:
    """Whether the checks have nothing against a drawn job."""
    return all(diagnostic.severity != "error" for diagnostic in check_job(drawn.context, drawn.entry, drawn.today))


def planned(drawn: Drawn, objectives: int = 1) -> Plan:
    """The plan of a drawn job."""
    return plan_job(drawn.context, drawn.entry, drawn.today, objectives=objectives)


@pytest.mark.parametrize("first", range(0, DRAWN, TOGETHER))
def test_no_plan_of_a_drawn_job_breaks_a_rule(first: int) -> None:
    """Whatever the checks let pass has a plan, and the plan keeps every rule."""
    count = 0
    for seed in range(first, first + TOGETHER):
        drawn = draw(seed)
        if can_be_planned(drawn):
            count += 1
            plan = planned(drawn, objectives=1 + seed % 2)
            assert broken_rules(plan, planned_from(drawn.entry.item, drawn.today)) == [], seed
    assert count > TOGETHER * 0.8


@cache
def book() -> Context:
    """The book of the crew."""
    return Context.of(load_book(BOOK).book, Memo())


@pytest.mark.parametrize("job", JOBS)
def test_no_plan_of_a_job_of_the_book_breaks_a_rule(job: str, kept: Path) -> None:
    """The job and its variants, as the site has them."""
    context = book()
    entry = context.book.jobs[job]
    others = [(varied(entry, variant), 2) for variant in entry.item.variants.values()]
    for other, objectives in [(entry, 3), *others]:
        plan = plan_job(context, other, other.item.start, cache=kept, objectives=objectives)
        assert broken_rules(plan, planned_from(other.item, other.item.start)) == []


# The walker itself sees what is wrong.


def shifted(plan: Plan, number: int, by: timedelta) -> Plan:
    """The plan with one stretch moved."""
    stretches = list(plan.stretches)
    stretch = stretches[number]
    stretches[number] = replace(stretch, starts=stretch.starts + by, ends=stretch.ends + by)
    return replace(plan, stretches=stretches)


def test_a_shifted_stretch_is_seen() -> None:
    """To before the job no stretch can be moved, and by a day hardly any."""
    seen = tried = 0
    for seed in range(24):
        drawn = draw(seed)
        if not can_be_planned(drawn):
            continue
        plan = planned(drawn)
        today = planned_from(drawn.entry.item, drawn.today)
        for number, stretch in enumerate(plan.stretches):
            early = plan.worktime.starts(0) - stretch.starts - timedelta(days=1)
            assert broken_rules(shifted(plan, number, early), today)
            tried += 1
            seen += bool(broken_rules(shifted(plan, number, timedelta(days=-1)), today))
    assert seen > 0.9 * tried


def test_a_swapped_person_is_seen() -> None:
    """Somebody who is not trained, is away, or is busy elsewhere is put into a team."""
    seen = tried = 0
    for seed in range(24):
        drawn = draw(seed)
        if not can_be_planned(drawn):
            continue
        plan = planned(drawn)
        today = planned_from(drawn.entry.item, drawn.today)
        for number, stretch in enumerate(plan.stretches):
            if stretch.visit:
                continue
            stretches = list(plan.stretches)
            stretches[number] = replace(stretch, people=stretch.people[:-1])
            assert broken_rules(replace(plan, stretches=stretches), today)
            for hand in drawn.entry.item.people:
                if hand.person not in stretch.people and drawn.context.book.people[hand.person].item.role == "helper":
                    tried += 1
                    stretches[number] = replace(stretch, people=(hand.person, *stretch.people[1:]))
                    seen += bool(broken_rules(replace(plan, stretches=stretches), today))
    assert tried > 24
    assert seen > 0.7 * tried


BEN = {"person": "bram-tolle"}
HAND = {"person": "alda-fenn", "days": ["monday", "wednesday"]}
UNKNOWN: dict[str, tuple[Fields, Fields, str]] = {
    "a holiday": ({}, {"holidays": [MONDAY + timedelta(days=1)]}, "walls 2 does not begin and end in working time"),
    "a day off": (
        {},
        {"people": [{"person": "alda-fenn", "off": ["2026-12-08"]}, BEN]},
        "alda-fenn works on a day off",
    ),
    "her days": ({}, {"people": [HAND, BEN]}, "alda-fenn works on a day off"),
    "a first day": ({"not_before": "2026-12-09"}, {}, "walls starts before 2026-12-09"),
    "a link": ({"after": ["coat"]}, {}, "walls starts before coat is over"),
    "hours": ({"hours": "13 h"}, {}, "walls has 48 quarter hours and takes 52"),
    "two people": ({"people": 2}, {}, "walls has 1 people"),
    "a place": ({"space": "bath"}, {}, "walls is in bath while coat closes it"),
    "a delivery": ({}, {"prices": [{"material": "board", "lead_time": "2 days"}]}, "before its material is there"),
}


@pytest.mark.parametrize(("task", "job", "rule"), UNKNOWN.values(), ids=UNKNOWN)
def test_a_rule_that_the_plan_did_not_know_is_seen(task: Fields, job: Fields, rule: str) -> None:
    """The plan was made without the rule; the walker has it."""
    board = {"material": "board", "quantity": "1 each", "per": "each"}
    everybody = {"role": "lead", "trained_in": ["paint", "oil"]}
    procedures = {"paint": procedure("12 h", materials=[board]), "oil": procedure("1 h", closes=[closes("24 h")])}
    context = book_of(procedures, {"alda-fenn": everybody, "bram-tolle": everybody})
    spaces = {name: {"title": name, "dwelling": "house"} for name in ("room", "bath")}

    def made(task: Fields, **more: object) -> Entry[Job]:
        both = {"walls": {"procedure": "paint", "who": ["alda-fenn"], **task}}
        both["coat"] = {"procedure": "oil", "space": "bath", "who": ["bram-tolle"]}
        people = [{"person": "alda-fenn"}, BEN]
        return job_of(both, **({"spaces": spaces, "people": people} | more))

    plan = plan_job(context, made({}), MONDAY, objectives=2)
    assert broken_rules(plan, MONDAY) == []
    assert any(rule in each for each in broken_rules(replace(plan, entry=made(task, **job)), MONDAY))
