"""What a job costs: lines, sums, what has no price, and what was worked before the day of planning."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.reference import Tool
from build_tools.plan.cost import EARLIER, Cost, CostLine, cost_of
from build_tools.plan.money import read_money, times
from build_tools.plan.planning import plan_job
from calculators.reading import Unreadable
from tests.build_tools.plan.drawn_jobs import NOWHERE, book_of, job_of, procedure

SAW = Tool.model_validate({"title": "Saw", "use": "Sawing.", "rented": True})
BOARDS = [{"material": "board", "quantity": "2.5 each", "per": "one"}]
PROCEDURES = {"floor": procedure("10 h", materials=BOARDS, tools=[{"tool": "saw"}]), "wall": procedure("4 h")}
TWO_HOUSES: dict[str, Any] = {
    "dwellings": {"one": {"title": "One"}, "two": {"title": "Two"}},
    "spaces": {"a": {"title": "A", "dwelling": "one"}, "b": {"title": "B", "dwelling": "two"}},
}
TASKS: dict[str, dict[str, Any]] = {
    "first": {"procedure": "floor", "space": "a"},
    "second": {"procedure": "floor", "space": "b", "count": 2},
    "third": {"procedure": "wall", "space": "b", "after": ["first", "second"]},
}
PRICED: dict[str, Any] = {
    "people": [{"person": "alda-fenn", "rate": "30 dollars"}],
    "prices": [{"material": "board", "price": "4 dollars"}, {"tool": "saw", "price": "50 dollars"}],
    "money": {"budget": "1000 dollars"},
}


def cost(tasks: dict[str, dict[str, Any]], **job: Any) -> Cost:
    context = book_of(PROCEDURES)
    book = replace(context.book, tools={"saw": Entry("saw", SAW, NOWHERE)})
    entry = job_of(tasks, **TWO_HOUSES | job)
    return cost_of(plan_job(Context.of(book, context.memo, {}), entry, date(2026, 12, 9), objectives=1))


def line(made: Cost, thing: str) -> CostLine:
    (found,) = (each for each in made.lines if each.thing == thing)
    return found


def test_materials_are_summed_over_the_tasks_before_they_are_rounded() -> None:
    made = cost(TASKS, **PRICED)
    boards = line(made, "board")
    assert (boards.quantity, boards.amount) == (8, 32)  # 2.5 + 5 of them, and none is sold in part
    assert boards.shares == {"first": pytest.approx(1 / 3), "second": pytest.approx(2 / 3)}


def test_labour_is_hours_by_the_rate_of_each_person() -> None:
    made = cost(TASKS, **PRICED)
    assert (line(made, "alda-fenn").quantity, line(made, "alda-fenn").amount) == (34, 1020)


def test_who_has_no_rate_costs_that_of_the_job() -> None:
    made = cost(TASKS, money={"budget": "1 euro", "labour_rate": "20 euro"})
    assert (line(made, "alda-fenn").amount, made.currency) == (680, "euro")


def test_a_rented_tool_costs_each_working_day_from_its_coming_to_its_going() -> None:
    saw = line(cost(TASKS, **PRICED), "saw")
    assert (saw.quantity, saw.unit, saw.amount) == (4, "days", 200)  # 30 h of 8 a day


def test_a_rented_tool_costs_whole_weeks_where_its_price_is_for_one() -> None:
    prices = [{"tool": "saw", "price": "150 dollars", "per": "1 week"}]
    assert line(cost(TASKS, prices=prices), "saw").amount == 150


def test_total_and_what_is_left_of_the_budget() -> None:
    made = cost(TASKS, **PRICED)
    assert (made.total, made.left) == (32 + 1020 + 200, 1000 - 1252)


def test_what_has_no_price_is_named_and_in_no_sum() -> None:
    made = cost(TASKS, prices=[{"tool": "saw", "price": "50 dollars"}])
    assert [each.thing for each in made.unpriced] == ["board", "alda-fenn"]
    assert (made.total, made.budget, made.left) == (200, None, None)


def test_a_price_for_another_unit_counts_as_none() -> None:
    made = cost(TASKS, prices=[{"material": "board", "price": "4 dollars", "per": "1 lb"}])
    assert (line(made, "board").each, line(made, "board").amount) == (4, None)


def test_sums_by_dwelling_and_by_trade_make_the_total() -> None:
    made = cost(TASKS, **PRICED)
    for groups in (made.dwellings, made.trades):
        sums = made.summed(groups)
        assert sum(sum(each.values()) for each in sums.values()) == pytest.approx(made.total)
    assert made.summed(made.dwellings)["one"]["labour"] == 300


def test_what_was_worked_before_counts_at_the_rate_of_the_job() -> None:
    tasks = {
        "first": {**TASKS["first"], "done": "2026-12-08"},
        "second": {**TASKS["second"], "started": "2026-12-08", "left": "5 h"},
    }
    made = cost(tasks, **PRICED | {"money": {"budget": "1 dollars", "labour_rate": "10 dollars"}})
    assert (line(made, EARLIER).quantity, line(made, EARLIER).amount) == (10 + 15, 250)
    assert line(made, "alda-fenn").quantity == 5


@pytest.mark.parametrize("text", ["52", "dollars", "-3 dollars"])
def test_what_is_no_money(text: str) -> None:
    with pytest.raises(Unreadable):
        read_money(text)


@pytest.mark.parametrize(
    ("number", "unit", "per", "expected"),
    [
        (12, "boxes", "1 box", None),
        (12, "bundles", "2 bundle", 6),
        (27, "cu ft", "1 cu yd", 1),
        (3, "days", "1 lb", None),
    ],
)
def test_how_often_an_amount_goes_in(number: float, unit: str, per: str, expected: float | None) -> None:
    assert times(number, unit, per) == (expected and pytest.approx(expected))
