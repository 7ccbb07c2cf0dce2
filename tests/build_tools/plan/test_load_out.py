"""The load-out: tools of the day's work, materials when they are first needed, rented tools with their days."""

from __future__ import annotations

from datetime import date

from build_tools.plan.load_out import load_out
from build_tools.plan.order_list import order_list
from build_tools.plan.plan import Plan
from tests.build_tools.plan.fit_out_jobs import BATH, FLOOR, MONDAY, ROOM, TILE, closet, planned

SAND = {"procedure": "floor-sanding"}


def loaded(plan: Plan) -> dict[str, float]:
    """Of each material what all days together take along."""
    found: dict[str, float] = {}
    for load in load_out(plan):
        for out in load.materials:
            found[out.what.material] = found.get(out.what.material, 0) + out.quantity
    return found


def test_what_is_loaded_is_what_is_ordered() -> None:
    spaces = {"room": ROOM, "bath": BATH}
    tasks = {
        "boards": FLOOR,
        "tile": {**TILE, "space": "bath", "after": ["boards"]},
        "closet": closet("6 ft", after=["tile"]),
        "other": closet("5 ft", after=["closet"]),
    }
    plan = planned(tasks, spaces)
    bought = {line.what.material: line.what.quantity for lot in order_list(plan, MONDAY) for line in lot.lines}
    assert loaded(plan) == bought


def test_tools_stand_on_each_day_and_once() -> None:
    plan = planned({"sand": {**SAND, "quantity": "2000 sq ft"}})
    loads = load_out(plan)
    assert len(loads) > 1
    for load in loads:
        tools = [tool.tool for tool in load.tools]
        assert "drum-sander" in tools
        assert len(set(tools)) == len(tools)
    assert loads[0].materials
    assert all(not load.materials for load in loads[1:])


def test_a_rented_tool_says_when_it_is_fetched_and_goes_back() -> None:
    plan = planned({"sand": {**SAND, "quantity": "2000 sq ft"}})
    loads = load_out(plan)
    first, last = loads[0].day, loads[-1].day
    for load in loads:
        (sander,) = (tool for tool in load.tools if tool.tool == "drum-sander")
        assert (sander.fetched, sander.back) == (first, last)
        assert all(tool.fetched is None for tool in load.tools if tool.tool == "shop-vacuum")


def test_a_pack_that_is_opened_is_not_loaded_again() -> None:
    """Rings come 25 in a bag: the second task takes from the first one's bag."""
    stops = {"procedure": "supply-stops", "count": 2}
    plan = planned({"one": stops, "two": {**stops, "not_before": "2026-12-10"}})
    days = [
        (load.day, out.quantity) for load in load_out(plan) for out in load.materials if "ring" in out.what.material
    ]
    assert days == [(MONDAY, 25)]
    stop_days = [
        (load.day, out.quantity)
        for load in load_out(plan)
        for out in load.materials
        if out.what.material == "supply-stop"
    ]
    assert stop_days == [(MONDAY, 2), (date(2026, 12, 10), 2)]


def test_what_has_a_lead_time_comes_by_itself() -> None:
    prices = [{"material": "strip-flooring", "lead_time": "2 days"}]
    plan = planned({"boards": FLOOR}, prices=prices)
    outs = {out.what.material: out.delivered for load in load_out(plan) for out in load.materials}
    assert outs["strip-flooring"]
    assert not outs["stack-stickers"]


def test_what_is_begun_has_its_material_and_still_wants_its_tools() -> None:
    plan = planned({"sand": {**SAND, "quantity": "2000 sq ft", "started": "2026-12-07"}}, today=date(2026, 12, 8))
    loads = load_out(plan)
    assert all(load.tools for load in loads)
    assert not any(load.materials for load in loads)
