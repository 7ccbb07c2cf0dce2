"""Cut lists across a job: the pieces of all tasks share sticks, with the spare once."""

from __future__ import annotations

import pytest

from build_tools.plan.cuts import Cuts
from build_tools.plan.order_quantities import Ordered, ordered
from build_tools.plan.plan import Plan
from tests.build_tools.plan.fit_out_jobs import ROOM, closet, planned


def of(plan: Plan, material: str) -> tuple[Ordered, Cuts]:
    """What is ordered of a material, with its cuts."""
    (what,) = (each for each in ordered(plan) if each.material == material)
    assert what.cuts is not None
    return what, what.cuts


def test_the_pieces_of_several_tasks_share_sticks() -> None:
    """Four rods of 3 ft less an eighth come out of one stick of 12 ft; each alone would take one of 6 ft."""
    what, cuts = of(planned({f"c{n}": closet("3 ft") for n in range(4)}), "closet-rod-stock")
    assert cuts.sticks == {144.0: 1}
    assert (what.quantity, what.unit) == (12, "ft")
    assert cuts.answer["proved"]


def test_a_task_that_counts_several_has_so_many_pieces() -> None:
    _, cuts = of(planned({"all": closet("3 ft", count=4)}), "closet-rod-stock")
    assert cuts.sticks == {144.0: 1}


def test_two_rods_and_four_side_cleats_of_a_double_hang() -> None:
    task = closet("6 ft")
    task["inputs"]["closet"]["hang"] = "double"
    what, _ = of(planned({"one": task}), "closet-rod-stock")
    assert [(piece.name, piece.count, piece.length) for need in what.needs for piece in need.pieces] == [
        ("rod", 2, 71.875)
    ]
    cleats, _ = of(planned({"one": task}), "closet-cleat-board")
    assert [(piece.name, piece.count) for need in cleats.needs for piece in need.pieces] == [
        ("back cleat", 2),
        ("side cleat", 4),
    ]


def test_spare_is_added_once_to_the_sticks_of_the_whole_job() -> None:
    """Ten doors on one side: 20 legs, two a stick, and 10 heads; 10 percent of all of them spare."""
    opening = {"name": "D", "kind": "door", "width": "30 in", "height": "80 in", "sides": "1"}
    trim = {"procedure": "interior-trim", "inputs": {"trim-take-off": {"openings": [opening] * 5}}}
    what, cuts = of(planned({"one": trim, "two": trim}), "door-casing")
    fitted = cuts.answer["sticks"]
    assert fitted == 13  # 10 of two legs each, and four heads of 2' 10-7/8" a stick
    assert (cuts.spare, what.quantity, what.unit) == (2, 15, "sticks")
    assert cuts.sticks == {168.0: 15}


def test_a_piece_longer_than_every_stick_is_joined_and_named() -> None:
    _, cuts = of(planned({"long": closet("18 ft")}), "closet-shelf-board")
    assert [(task, piece.name) for task, piece in cuts.joined] == [("long", "shelf")]
    assert sum(length * count for length, count in cuts.sticks.items()) >= 18 * 12 - 0.125


def test_pieces_say_their_place() -> None:
    spaces = {"room": ROOM, "hall": {**ROOM, "title": "Hall"}}
    _, cuts = of(planned({"a": closet("3 ft"), "b": closet("4 ft", space="hall")}, spaces), "closet-rod-stock")
    texts = " ".join(row["cuts"] for row in cuts.answer["cuts"])
    assert "rod (Room)" in texts
    assert "rod (Hall)" in texts


def test_what_no_calculator_lists_in_pieces_is_ordered_by_length() -> None:
    base = {
        "procedure": "base-and-shoe",
        "quantity": "space:perimeter",
        "inputs": {"trim-take-off": {"rooms": "space:rooms", "openings": [{"name": "Door"}]}},
    }
    plan = planned({"base": base})
    shoe = next(each for each in ordered(plan) if each.material == "base-shoe")
    assert (shoe.cuts, shoe.pack, shoe.quantity % 16) == (None, "16 ft", 0)
    assert shoe.needed == pytest.approx((70 - 2 * (30 + 2 * 2.4375) / 12) * 1.1)
