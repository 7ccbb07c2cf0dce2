"""Plans as people describe them: rectangles, corners, walked walls, parts taken off."""

from __future__ import annotations

from math import isclose, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.reading import Unreadable
from calculators.shapes import area_sq_ft, bounds, perimeter_in, plan_area_sq_ft, read_plan
from calculators.writing import feet_inches

FOURTEEN_BY_TWELVE = [[0.0, 0.0], [168.0, 0.0], [168.0, 144.0], [0.0, 144.0]]


@pytest.mark.parametrize(
    "written",
    [
        "14' x 12'",
        "14'x12'",
        "14’ × 12’",
        "14 ft by 12 ft",
        "168 in x 144 in",
        "14'0\" x 12' 0\"",
        "4267.2 mm x 3657.6 mm",
        "corners 0,0 14',0 14',12' 0,12'",
        "Corners 0,0  14'0\",0  14'-0\",12'  0,12'",
        "walls 14' right 12' right 14' right 12'",
        "walls 14' right 12' right 14' right 12' right",
        "walls 14' 0\" right 90 12' right 90 deg 14 ft right 90° 144 in",
        "14' x 12'\n",
    ],
)
def test_one_room_in_many_hands(written: str) -> None:
    (shape,) = read_plan(written)
    assert shape["name"] == ""
    assert not shape["less"]
    for point, expected in zip(shape["points"], FOURTEEN_BY_TWELVE, strict=True):
        assert point == pytest.approx(expected)


def test_left_turns_give_the_same_room_with_its_corner_at_nought() -> None:
    (shape,) = read_plan("walls 14' left 12' left 14' left 12'")
    assert sorted(shape["points"]) == sorted(FOURTEEN_BY_TWELVE)
    assert bounds(shape["points"]) == (0, 0, 168, 144)


def test_names_and_parts_taken_off() -> None:
    plan = read_plan("Kitchen: 14' x 12'; less 3' x 2'\nless island: 4' x 2'; nook: less 1' x 1'")
    assert [(shape["name"], shape["less"]) for shape in plan] == [
        ("Kitchen", False),
        ("", True),
        ("island", True),
        ("nook", True),
    ]
    assert plan_area_sq_ft(plan) == 168 - 6 - 8 - 1


def test_turns_of_45_degrees() -> None:
    (octagon,) = read_plan("walls 10' " + "right 45 10' " * 7)
    assert isclose(area_sq_ft(octagon["points"]), 2 * (1 + sqrt(2)) * 100)
    assert isclose(perimeter_in(octagon["points"]), 8 * 120)


def test_a_fraction_after_a_turn_is_a_length() -> None:
    (shape,) = read_plan('walls 12 1/2 in right 12 1/2 in right 12-1/2" right 12.5"')
    assert area_sq_ft(shape["points"]) == 156.25 / 144


def test_walls_may_miss_by_half_an_inch_in_ten_feet() -> None:
    """52 ft walked allow 2.6 in; the last wall takes up the rest."""
    (shape,) = read_plan("walls 14' 2-1/2\" right 12' right 14' right 12'")
    assert shape["points"][3] == [2.5, 144]
    with pytest.raises(Unreadable) as caught:
        read_plan("walls 14' 2-5/8\" right 12' right 14' right 12'")
    assert caught.value.why == (
        'does not close: after 52\' 2-5/8" of walls the end is 2-5/8" from the start (2-5/8" along and 0" across), '
        "and 2-39/64 in is allowed; measure again"
    )


HOW = "write 14' x 12', corners 0,0 14',0 14',12' 0,12' or walls 14' right 12' right 14' right 12'"


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("", "'' is no plan: " + HOW),
        ("big", "'big' is not a shape: " + HOW),
        ("14' x", "'14' x' is not a shape: " + HOW),
        ("14' x 12' x 8'", "'14' x 12' x 8'' is not a shape: " + HOW),
        ("14 x 12", "'14' has no unit: write 14' or 14 in"),
        ("14' x 0'", "'0'' is no length of a side: it must be more than 0"),
        ("14' x -2'", "'-2'' is no length of a side: it must be more than 0"),
        ("14' x 3 lb", "'3 lb' is a mass; a length is wanted: write 5' 3-1/2\", 63-1/2 in or 1613 mm"),
        ("corners 0,0 5',0", "'corners 0,0 5',0' has fewer than three corners"),
        ("corners 0,0 5',0 5',0 0,5'", "'corners 0,0 5',0 5',0 0,5'' has the same corner twice running"),
        ("corners 0,0 5',0 5',5' 0,0", "'corners 0,0 5',0 5',5' 0,0' has the same corner twice running"),
        ("corners 0,0 5',0 3',0 0,5'", "'corners 0,0 5',0 3',0 0,5'' runs back over itself at side 1"),
        ("corners 0,0 5',5' 5',0 0,5'", "'corners 0,0 5',5' 5',0 0,5'' crosses itself: side 1 meets side 3"),
        (
            "corners 0,0 5' 6\",0 5',5'",
            "'corners 0,0 5' 6\",0 5',5'' has a corner '5'': write each corner without spaces, as 14'6\",0",
        ),
        ("walls 14' right right 12'", "'walls 14' right right 12'' has a turn without a wall: " + HOW),
        (
            "walls 14' right 5 12' right 14'",
            "'walls 14' right 5 12' right 14'' has a turn of 5 degrees: a turn is from 15 to 165",
        ),
        ("3' x 2'; less 3' x 2'", "'3' x 2'; less 3' x 2'' takes off more than is there: 0 sq ft are left"),
    ],
)
def test_refused(written: str, message: str) -> None:
    with pytest.raises(Unreadable) as caught:
        read_plan(written)
    assert str(caught.value) == message


@given(st.integers(1, 16000), st.integers(1, 16000))
def test_rectangles_of_whole_sixteenths(along: int, down: int) -> None:
    (shape,) = read_plan(f"{feet_inches(along / 16)} x {feet_inches(down / 16)}")
    assert isclose(area_sq_ft(shape["points"]), along * down / 256 / 144)
    assert perimeter_in(shape["points"]) == (along + down) / 8


@given(st.text(alphabet="0123456789 ,;:'\"xlesrightwalcon45", max_size=25))
def test_any_text_is_read_or_refused(text: str) -> None:
    for start in ("", "corners ", "walls ", "less "):
        try:
            plan = read_plan(start + text)
        except Unreadable as unreadable:
            assert unreadable.why
        else:
            assert plan_area_sq_ft(plan) > 0
