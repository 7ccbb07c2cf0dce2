"""What the layout and the take-off of a tile floor promise."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.flooring.tile_joints import joint_share
from calculators.flooring.tile_layout import balanced, full_at_start, positions
from calculators.flooring.tile_take_off import tile_take_off
from calculators.run import run

rooms = st.floats(24, 600)
tiles = st.floats(2, 24)
joints = st.floats(0.0625, 0.5)


def floor(**inputs: Any) -> dict[str, Any]:
    """The answer for a room of 8 ft by 5 ft with these changes."""
    defaults = {declared.name: declared.default for declared in tile_take_off.inputs}
    return run(tile_take_off, {**defaults, **inputs})


@given(room=rooms, tile=tiles, joint=joints)
def test_no_cut_is_under_half_a_tile_and_all_adds_up(room: float, tile: float, joint: float) -> None:
    assume(room - 0.5 >= tile + joint)
    one = balanced(room, tile, joint, 0.25)
    assert one["first"] == one["last"]
    if one["first"] > 0:
        assert tile / 2 < one["first"] < tile + 1e-6
    whole = one["full"] * tile + one["first"] + one["last"] + (one["pieces"] - 1) * joint + 2 * one["gap"]
    assert whole == pytest.approx(room)
    assert 0.25 <= one["gap"] <= 0.25 + joint / 2 + 1e-6


@given(room=rooms, tile=tiles, joint=joints)
def test_a_full_tile_at_the_door_and_the_rest_at_the_far_wall(room: float, tile: float, joint: float) -> None:
    assume(room - 0.5 >= tile + joint)
    one = full_at_start(room, tile, joint, 0.25)
    assert one["first"] == 0
    places = positions(one, tile, joint, 10000)
    assert places[1] - places[0] == pytest.approx(tile)
    assert places[-1] == pytest.approx(room - one["gap"])
    assert len(places) == 2 * one["pieces"]


def test_order_is_the_larger_of_area_with_waste_and_pieces_with_broken() -> None:
    small = floor(length=40, width=40, waste=0, spare=0)
    assert small["tiles"] == small["pieces"]
    large = floor(length=240, width=180, waste=15, spare=0)
    assert large["tiles"] == pytest.approx(300 / (12.125**2 / 144) * 1.15)


def test_obstacles_and_alcoves_change_area_mortar_and_grout() -> None:
    assert floor(less_area=10)["area"] == pytest.approx(30)
    assert floor(more_area=5)["area"] == pytest.approx(45)
    assert floor(less_area=20)["mortar"] == pytest.approx(floor()["mortar"] / 2)
    with pytest.raises(Refused) as nothing:
        floor(less_area=40)
    assert nothing.value.input == "less_area"


def test_a_tile_larger_than_the_room_is_refused_in_words() -> None:
    with pytest.raises(Refused) as refused:
        floor(width=24, tile_width=36)
    assert refused.value.input == "tile_width"
    assert "does not go into" in refused.value.message


def test_a_sliver_at_the_far_wall_is_named() -> None:
    answer = floor(length=100, doorway="full")
    assert answer["cut_along"] < 6
    assert any("sliver" in text for text in answer["cautions"])
    assert not any("sliver" in text for text in floor(length=100)["cautions"])


def test_diagonal_takes_its_waste_and_large_tiles_their_warnings() -> None:
    assert floor(layout="diagonal")["tiles"] == pytest.approx(40 / (12.125**2 / 144) * 1.15)
    said = " ".join(floor(length=240, width=240, tile_length=24, layout="diagonal")["cautions"])
    assert "large tile" in said
    assert "Butter" in said
    assert "not square" in said


def test_buttered_backs_take_the_mortar_that_is_said() -> None:
    assert floor(back_butter=True, butter=0.0625)["bed"] == pytest.approx(floor()["bed"] + 0.0625)
    assert (floor(lippage_most=0.02)["lippage"], floor(lippage_most=0.02, joint=0.25)["lippage"]) == (0.02, 0.04)


def test_wide_joints_allow_more_lippage_and_long_floors_take_movement_joints() -> None:
    assert floor(joint=0.125)["lippage"] == 1 / 32
    assert floor(joint=0.25)["lippage"] == 1 / 16
    assert floor(length=300)["movement"] == 0
    assert floor(length=301, width=610)["movement"] == 3


@given(length=st.floats(1, 48), width=st.floats(1, 48), joint=joints)
def test_joint_share_lies_between_nothing_and_all(length: float, width: float, joint: float) -> None:
    assert 0 < joint_share(length, width, joint) < 1
