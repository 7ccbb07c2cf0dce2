"""The opening of a prehung door: its size, the legs, and whether a measured one does."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.doors.door_opening import door_opening
from calculators.run import compute

sixteenths = st.integers(0, 64).map(lambda n: n / 16)


def test_the_parts_add_up_to_the_opening() -> None:
    answer = door_opening(width=30, reveal=0.125, jamb=0.75, shim=0.25)
    assert answer["unit_width"] == 30 + 0.25 + 1.5
    assert answer["rough_width"] == answer["unit_width"] + 0.5


def test_the_floor_to_come_raises_the_head_and_not_the_legs() -> None:
    bare, tiled = door_opening(floor=0), door_opening(floor=0.75)
    assert tiled["rough_height"] - bare["rough_height"] == 0.75
    assert tiled["high_leg"] == bare["high_leg"] and tiled["block"] == 0.75


def test_the_leg_at_the_low_side_is_cut_less() -> None:
    answer = door_opening(floor_slope=0.25, leg=81.25)
    assert (answer["cut_high"], answer["cut_low"]) == (0.625, 0.375)


def test_a_leg_that_comes_too_short_is_told() -> None:
    answer = door_opening(leg=80.5)
    assert answer["cut_high"] == 0
    assert any("too short" in caution for caution in answer["cautions"])


@pytest.mark.parametrize(
    ("wide", "high", "result", "caution"),
    [
        (0, 0, "not measured", ""),
        (34, 82.4375, "takes the door", ""),
        (33.5, 0, "does not take the door", "too narrow"),
        (33.75, 0, "takes the door", "little"),
        (35.5, 0, "takes the door", "filler strip"),
        (0, 82, "does not take the door", "too low"),
    ],
)
def test_a_measured_opening(wide: float, high: float, result: str, caution: str) -> None:
    answer = door_opening(opening_width=wide, opening_height=high)
    assert answer["result"] == result
    assert bool(answer["cautions"]) == bool(caution)
    assert all(caution in said for said in answer["cautions"])


def test_the_floor_in_the_swing_takes_from_the_gap() -> None:
    assert door_opening(under_door=0.5, swing_rise=0.375)["swing_gap"] == 0.125
    with pytest.raises(Refused, match="rises"):
        door_opening(under_door=0.5, swing_rise=0.5)


@pytest.mark.parametrize(("name", "value"), [("opening_width", 30), ("opening_height", 70)])
def test_an_opening_smaller_than_the_door_is_refused(name: str, value: float) -> None:
    with pytest.raises(Refused) as stopped:
        door_opening(**{name: value})
    assert stopped.value.input == name


@given(sixteenths, sixteenths)
def test_an_opening_of_the_wanted_size_takes_the_door(floor: float, slope: float) -> None:
    wanted = door_opening(floor=floor, floor_slope=slope / 2)
    answer = door_opening(floor=floor, opening_width=wanted["rough_width"], opening_height=wanted["rough_height"])
    assert answer["result"] == "takes the door"
    assert answer["shim_each"] == pytest.approx(0.1875)
    assert answer["head_left"] == pytest.approx(0.375)


def test_as_people_write_it() -> None:
    answer = compute(door_opening, {"width": "2' 6\"", "opening_width": "32-1/4", "opening_height": "82 1/2"})
    assert answer["result"] == "takes the door"
