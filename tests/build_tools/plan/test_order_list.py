"""The order list: summed before it is rounded, grouped by supplier and day, and dated by lead times and holidays."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from build_tools.plan.order_list import OrderLine, order_list
from build_tools.plan.plan import Plan
from tests.build_tools.plan.fit_out_jobs import BATH, FLOOR, MONDAY, PAD, ROOM, TILE, closet, planned


def lines(plan: Plan, today: date = MONDAY) -> dict[str, OrderLine]:
    """The lines of an order list by material, for what stands once on it."""
    return {line.what.material: line for lot in order_list(plan, today) for line in lot.lines}


def test_quantities_are_summed_before_they_are_rounded_to_packs() -> None:
    """Two stops take two rings each, of a bag of 25; alone each would take a bag of its own."""
    stops = {"procedure": "supply-stops", "count": 1}
    rings = lines(planned({"one": stops, "two": stops}))["pex-crimp-ring"]
    assert (rings.what.needed, rings.what.quantity, rings.what.pack) == (4, 25, "25 each")
    assert rings.what.by_task == {"one": 2, "two": 2}


def test_the_size_of_a_room_changes_what_is_ordered() -> None:
    small = lines(planned({"boards": FLOOR}))["strip-flooring"].what
    wider = lines(planned({"boards": FLOOR}, {"room": {**ROOM, "width": "20 ft"}}))["strip-flooring"].what
    assert wider.needed == pytest.approx(small.needed * 20 / 15)
    assert wider.quantity > small.quantity
    (need,) = wider.needs
    assert ("Rooms", "Room: 20' 0\" x 20' 0\"") in need.given
    assert need.working


def test_waste_is_taken_once() -> None:
    """100 sq ft of bundles of so many each, and the waste of the book, and nothing on top."""
    plan = planned({"boards": FLOOR})
    what = lines(plan)["strip-flooring"].what
    (need,) = what.needs
    answer = plan.context.call_with("strip-floor-take-off", {"rooms": "Room: 20 ft x 15 ft"}).answer
    assert answer is not None
    assert need.number == what.needed == pytest.approx(answer["bundles"])
    assert 0 <= what.quantity - what.needed < 1


def test_lead_times_leave_out_weekends_and_holidays() -> None:
    """Needed on Monday 14 December; three weekdays back without Friday the 11th is Tuesday the 8th."""
    job: dict[str, Any] = {
        "prices": [{"material": "strip-flooring", "lead_time": "3 days"}],
        "holidays": ["2026-12-11"],
    }
    plan = planned({"boards": {**FLOOR, "not_before": "2026-12-14"}}, **job)
    line = lines(plan)["strip-flooring"]
    assert (line.needed, line.order_by, line.lead) == (date(2026, 12, 14), date(2026, 12, 8), 3)
    stickers = lines(plan)["stack-stickers"]
    assert (stickers.order_by, stickers.lead) == (date(2026, 12, 10), 0)
    assert not line.late
    assert lines(plan, date(2026, 12, 9))["strip-flooring"].late
    assert not lines(plan, date(2026, 12, 8))["strip-flooring"].late


def test_what_is_done_or_begun_is_left_out() -> None:
    tasks = {"one": closet("8 ft"), "two": closet("6 ft"), "three": closet("5 ft")}
    tasks["one"]["done"] = "2026-12-07"
    tasks["two"]["started"] = "2026-12-07"
    plan = planned(tasks, today=date(2026, 12, 8))
    assert lines(plan)["rod-sockets"].what.by_task == {"three": 1}


def test_each_material_comes_for_the_first_task_that_uses_it() -> None:
    """Floor patch of another task comes with the first; lots are by supplier, and in each by day."""
    spaces = {"room": ROOM, "bath": BATH}
    tasks = {"tile": {**TILE, "space": "bath"}, "later": {**TILE, "space": "bath", "after": ["tile"]}}
    plan = planned(tasks, spaces)
    lots = order_list(plan, MONDAY)
    assert [(lot.supplier, lot.needed) for lot in lots] == sorted((lot.supplier, lot.needed) for lot in lots)
    assert {lot.needed for lot in lots} == {plan.starts("tile").date()}
    assert sum(line.what.material == "floor-tile" for lot in lots for line in lot.lines) == 1


def test_concrete_comes_to_each_pour_by_itself_in_quarter_yards() -> None:
    pad = {"procedure": "parking-pad", "inputs": {"slab-concrete": PAD}}
    pours = {
        "one": {**pad, "quantity": "200 sq ft"},
        "two": {**pad, "quantity": "200 sq ft", "after": ["one"], "space": "back"},
    }
    plan = planned(pours, {"room": ROOM, "back": {**ROOM, "title": "Back"}})
    orders = [
        line.what
        for lot in order_list(plan, MONDAY)
        for line in lot.lines
        if line.what.material == "ready-mix-concrete"
    ]
    assert [sorted(what.by_task) for what in orders] == [["one"], ["two"]]
    assert all((what.quantity * 4) % 1 == 0 and what.quantity >= what.needed for what in orders)
