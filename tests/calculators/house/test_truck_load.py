"""Rooms, trips and refusals of the truck load."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.declaration import Refused
from calculators.house.truck_load import truck_load
from calculators.house.truck_trips import NAMES, WEIGHTS, settled_weights, unit_weight


def row(kind: str, count: int = 1, each: float = 0.0, note: str = "") -> dict[str, Any]:
    """One line of the list."""
    return {"kind": kind, "note": note, "count": count, "each": each}


def test_every_kind_has_a_weight_and_a_name() -> None:
    settled = settled_weights(20, 0.75, 2950, 80, 50)
    assert {*WEIGHTS, *settled} == set(NAMES)
    assert not set(WEIGHTS) & set(settled)
    assert all(unit_weight(kind, settled) > 0 for kind in NAMES if kind != "other")


def test_a_bundle_a_bag_and_base_weigh_what_the_crew_and_its_suppliers_say() -> None:
    loads = [row("strip-flooring"), row("base"), row("concrete-bag"), row("mortar-bag")]
    usual = truck_load(items=loads)["total"]
    assert truck_load(items=loads, concrete_bag=60)["total"] == pytest.approx(usual - 20)
    assert truck_load(items=loads, mortar_bag=80)["total"] == pytest.approx(usual + 30)
    assert truck_load(items=loads, base_weight=2950 + 27)["total"] == pytest.approx(usual + 1)
    bundle = truck_load(items=loads[:1])["total"]
    assert truck_load(items=loads[:1], bundle_coverage=25, strip_thickness=0.375)["total"] == pytest.approx(
        bundle * 0.625
    )


def test_the_truck_alone() -> None:
    found = truck_load(items=[row("concrete-bag", 10)], payload=1500, aboard=450, trailer=False, margin=10)
    assert found["truck_room"] == pytest.approx(1500 * 0.9 - 450)
    assert found["trailer_room"] == 0
    assert (found["total"], found["trips"], found["result"]) == (800, 1, "one trip")


def test_the_trailers_tongue_counts_against_the_truck() -> None:
    found = truck_load(items=[row("concrete-bag")], payload=1500, aboard=450, trailer_gross=2990, tongue=12, margin=10)
    assert found["truck_room"] == pytest.approx(1350 - 450 - 358.8)
    assert found["trailer_room"] == pytest.approx(2990 * 0.9 - 900)


def test_the_heaviest_pieces_are_loaded_first_and_pieces_stay_whole() -> None:
    found = truck_load(
        items=[row("other", 3, 400, "stone"), row("other", 2, 900, "tub")],
        payload=2500,
        aboard=500,
        trailer=False,
        margin=0,
    )
    assert [(load["truck"], load["what"]) for load in found["loads"]] == [
        (1800, "2 x tub (truck)"),
        (1200, "3 x stone (truck)"),
    ]


def test_no_bed_is_overloaded_and_nothing_is_lost() -> None:
    found = truck_load(items=[row("drywall-4x8", 70), row("strip-flooring", 30), row("waste-wood", 4)])
    assert all(load["truck"] <= found["truck_room"] + 1e-6 for load in found["loads"])
    assert all(load["trailer"] <= found["trailer_room"] + 1e-6 for load in found["loads"])
    assert sum(load["truck"] + load["trailer"] for load in found["loads"]) == pytest.approx(found["total"])


def test_a_piece_that_is_too_heavy_is_left_to_the_supplier() -> None:
    found = truck_load(items=[row("other", 1, 2500, "tub of iron"), row("concrete-bag", 2)])
    assert (found["too_heavy"], found["trips"]) == (1, 1)
    assert "have it delivered" in found["cautions"][0]


@pytest.mark.parametrize(
    ("given", "name", "words"),
    [
        ({"items": []}, "items", "nothing is on the list"),
        ({"items": [row("other", 1, 0, "mystery")]}, "items", "'mystery' has no weight"),
        ({"items": [row("pail")], "trailer_empty": 2800}, "trailer_empty", "the empty trailer"),
        ({"items": [row("pail")], "aboard": 1200}, "aboard", "more than the door label"),
        ({"items": [row("waste-drywall", 200), row("waste-wood", 200)]}, "items", "more than 40 trips"),
    ],
)
def test_refusals(given: dict[str, Any], name: str, words: str) -> None:
    with pytest.raises(Refused, match=words) as refused:
        truck_load(**given)
    assert refused.value.input == name
