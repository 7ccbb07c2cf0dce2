"""Trim for rooms and openings: walls less doors, pieces, sticks, what is refused and what is cautioned."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.doors.trim_pieces import longest_wall, sticks_for
from calculators.doors.trim_take_off import trim_take_off
from calculators.run import compute, run

DEN = {"name": "den", "less": False, "points": [[0, 0], [144, 0], [144, 120], [0, 120]]}
DOOR = {"name": "Bath", "kind": "door", "width": 30.0, "height": 80.0, "sides": 1, "count": 1}
WINDOW = {"name": "West", "kind": "window", "width": 36.0, "height": 48.0, "sides": 1, "count": 1}
sizes = st.lists(st.tuples(st.integers(8, 168), st.integers(1, 6)), min_size=1, max_size=8)


def take_off(**inputs: Any) -> dict[str, Any]:
    defaults = {declared.name: declared.default for declared in trim_take_off.inputs}
    return run(trim_take_off, {**defaults, **inputs})


def cut(answer: dict[str, Any]) -> dict[str, tuple[float, float]]:
    return {row["piece"]: (row["count"], row["length"]) for row in answer["pieces"]}


def test_base_runs_between_the_casings() -> None:
    answer = take_off(rooms=[DEN], openings=[DOOR])
    assert (answer["walls"], answer["openings_off"], answer["base"]) == (528, 34.875, 493.125)
    assert answer["base_order"] == pytest.approx(493.125 * 1.1)
    assert answer["base_sticks"] == pytest.approx(493.125 * 1.1 / 192)


def test_a_door_between_two_rooms_comes_off_both() -> None:
    one, both = take_off(rooms=[DEN, DEN], openings=[DOOR]), take_off(rooms=[DEN, DEN], openings=[{**DOOR, "sides": 2}])
    assert one["base"] - both["base"] == pytest.approx(34.875)
    assert (one["sides"], both["sides"]) == (1, 2)


def test_a_window_takes_nothing_off_the_base() -> None:
    assert take_off(rooms=[DEN], openings=[WINDOW])["base"] == 528


def test_cabinets_have_no_base_but_may_have_shoe() -> None:
    answer = take_off(rooms=[DEN], no_base=96, shoe_more=84)
    assert (answer["base"], answer["shoe"]) == (432, 516)


def test_openings_alone_need_no_room() -> None:
    answer = take_off(openings=[DOOR, WINDOW])
    assert (answer["walls"], answer["base"], answer["shoe"]) == (0, 0, 0)
    assert answer["casing_fitted"] > 0


def test_the_pieces_of_a_door() -> None:
    assert cut(take_off(openings=[{**DOOR, "sides": 2, "count": 3}])) == {
        "Bath: leg": (12, 82.4375),
        "Bath: head": (6, 34.875),
    }


def test_the_pieces_of_a_window_with_a_stool() -> None:
    answer = take_off(openings=[WINDOW])
    assert cut(answer) == {
        "West: leg": (2, 50.4375),
        "West: head": (1, 40.875),
        "West: apron": (1, 40.875),
        "West: stool": (1, 42.375),
    }
    assert answer["stool"] == 42.375
    assert answer["casing"] == pytest.approx(2 * 50.4375 + 2 * 40.875)


def test_the_pieces_of_a_window_cased_all_round() -> None:
    answer = take_off(openings=[WINDOW], window_trim="frame")
    assert cut(answer) == {"West: leg": (2, 52.875), "West: head and bottom": (2, 40.875)}
    assert answer["stool"] == 0


def test_a_nameless_opening_goes_by_its_kind() -> None:
    assert "door: leg" in cut(take_off(openings=[{**DOOR, "name": " "}]))


def test_sticks_come_down_from_the_spare() -> None:
    answer = take_off(openings=[{**DOOR, "count": 5, "sides": 2}], casing_spare=10)
    assert answer["casing_sticks"] == pytest.approx(answer["casing_fitted"] * 1.1)


def test_written_as_people_write() -> None:
    opening = {"name": "Hall", "width": "2' 8\"", "height": "6' 8\"", "sides": "1"}
    answer = compute(trim_take_off, {"rooms": "hall: 12' x 4'", "openings": [opening]})
    assert answer["base"] == pytest.approx(2 * (144 + 48) - 36.875)


@pytest.mark.parametrize(
    ("inputs", "input", "words"),
    [
        ({}, "rooms", "nothing to trim"),
        ({"walls": 20.0, "openings": [DOOR]}, "openings", "only"),
        ({"walls": 120.0, "no_base": 121.0}, "openings", "only"),
        ({"openings": [{**DOOR, "height": 160.0}], "casing_stock": 96.0}, "casing_stock", "'Bath: leg'"),
    ],
)
def test_what_is_refused(inputs: dict[str, Any], input: str, words: str) -> None:
    with pytest.raises(Refused) as refused:
        take_off(**inputs)
    assert refused.value.input == input
    assert words in refused.value.message


def test_what_is_cautioned() -> None:
    hearth = {"name": "hearth", "less": True, "points": [[0, 0], [60, 0], [60, 24], [0, 24]]}
    told = take_off(rooms=[DEN, hearth])
    assert told["walls"] == 528
    assert any("less hearth" in caution for caution in told["cautions"])
    assert any("scarf" in caution for caution in take_off(rooms=[DEN], base_stock=143)["cautions"])
    assert not any("scarf" in caution for caution in take_off(rooms=[DEN], base_stock=144)["cautions"])


def test_the_longest_wall() -> None:
    assert longest_wall([[0, 0], [36, 0], [36, 48]]) == 60


@given(sizes, st.sampled_from([0.0, 0.125, 0.25]))
def test_sticks_are_enough_and_no_two_could_be_one(drawn: list[tuple[int, int]], kerf: float) -> None:
    pieces = [{"length": float(length), "count": count} for length, count in drawn]
    found = sticks_for(pieces, 168, kerf)
    all_of_it = sum(piece["count"] * (piece["length"] + kerf) for piece in pieces)
    assert all_of_it <= found * (168 + kerf) + 1e-6
    assert found <= max(1, 2 * all_of_it / (168 + kerf) + 1)


@given(st.integers(1, 40), st.integers(1, 40))
def test_more_of_the_same_takes_no_fewer_sticks(some: int, more: int) -> None:
    pieces = [{"length": 82.4375, "count": some}, {"length": 34.875, "count": some}]
    assert sticks_for(pieces, 168, 0.125) <= sticks_for([{**p, "count": some + more} for p in pieces], 168, 0.125)
