"""Room for the bowl: rows, shifts and the bowl that fits."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Answer, Refused
from calculators.plumbing.water_closet_place import water_closet_place

distances = st.integers(16, 960).map(lambda n: n / 16)
codes = st.sampled_from(["ipc-irc", "upc"])


def result_of(answer: Answer, what: str) -> str:
    """The result in the row of that name."""
    return str(next(row["result"] for row in answer["checks"] if row["what"] == what))


def test_the_standard_place_passes() -> None:
    answer = water_closet_place()
    assert answer["result"] == "passes"
    assert [row["what"] for row in answer["checks"]] == [
        "left to wall",
        "right to wall",
        "front of the bowl",
        "rough-in for this bowl",
    ]
    assert answer["bowl"] == "12 in bowl"
    assert (answer["shift"], answer["shift_back"], answer["cautions"]) == (0.0, 0.0, [])


def test_what_is_still_to_be_added_comes_off_before_the_check() -> None:
    answer = water_closet_place(left=15.25, side_to_add=0.5, rough_in=12.5, back_to_add=0.75)
    assert result_of(answer, "left to wall") == "short by 1/4 in"
    assert answer["finished_rough_in"] == 11.75
    assert result_of(answer, "rough-in for this bowl") == "passes"
    assert answer["working"][0] == "rough-in: 12-1/2 in less 3/4 in still to add to the wall = 11-3/4 in"


def test_the_centre_of_a_fixture_does_not_move_with_the_wall() -> None:
    answer = water_closet_place(left=30, left_is="fixture", side_to_add=0.5)
    assert result_of(answer, "left to fixture") == "passes"


def test_a_short_side_says_how_far_to_move() -> None:
    assert water_closet_place(left=14.5, right=18)["shift"] == 0.5
    assert water_closet_place(left=18, right=14)["shift"] == -1.0


def test_a_place_that_is_too_narrow_says_so_and_moves_nothing() -> None:
    answer = water_closet_place(left=14, right=15)
    assert answer["shift"] == 0.0
    assert answer["cautions"] == ["The place is 1 in too narrow: moving the flange does not mend it."]


@pytest.mark.parametrize(
    ("rough", "bowl", "shift_back"),
    [
        (12.0, "12 in bowl", 0.0),
        (11.75, "12 in bowl", 0.0),
        (11.5, "10 in bowl, with 1-1/2 in more than its own behind the tank", 0.5),
        (10.0, "10 in bowl", 2.0),
        (14.0, "14 in bowl", -2.0),
        (9.0, "none: move the flange", 3.0),
    ],
)
def test_the_bowl_follows_the_finished_rough_in(rough: float, bowl: str, shift_back: float) -> None:
    answer = water_closet_place(rough_in=rough)
    assert (answer["bowl"], answer["shift_back"]) == (bowl, shift_back)


def test_an_accessible_closet_stands_within_its_band_beside_the_wall() -> None:
    answer = water_closet_place(code="ada", left=15.5, right=46, front=46)
    assert result_of(answer, "centre to the wall beside") == "short by 1/2 in"
    assert answer["shift"] == 0.5
    answer = water_closet_place(code="ada", left=45, right=19, front=46)
    assert result_of(answer, "centre to the wall beside") == "over by 1 in"
    assert answer["shift"] == 1.0


def test_an_accessible_closet_between_two_fixtures_is_refused() -> None:
    with pytest.raises(Refused) as caught:
        water_closet_place(code="ada", left_is="fixture", right_is="fixture")
    assert caught.value.input == "left_is"


@given(code=codes, left=distances, right=distances, front=distances)
def test_moving_the_flange_by_the_shift_mends_the_sides(code: str, left: float, right: float, front: float) -> None:
    answer = water_closet_place(code=code, left=left, right=right, front=front)
    shift = answer["shift"]
    moved = water_closet_place(code=code, left=left + shift, right=right - shift, front=front)
    too_narrow = left + right < 30
    assert (len(answer["cautions"]) == 1) == too_narrow
    if not too_narrow:
        assert [row["result"] for row in moved["checks"][:2]] == ["passes", "passes"]


@given(code=codes, left=distances, right=distances, front=distances)
def test_the_place_passes_only_when_every_row_does(code: str, left: float, right: float, front: float) -> None:
    answer = water_closet_place(code=code, left=left, right=right, front=front)
    assert (answer["result"] == "passes") == all(row["result"] == "passes" for row in answer["checks"])


@given(rough=distances)
def test_moving_the_flange_off_the_wall_suits_the_bowl(rough: float) -> None:
    shift = water_closet_place(rough_in=rough)["shift_back"]
    moved = water_closet_place(rough_in=rough + shift)
    assert result_of(moved, "rough-in for this bowl") == "passes"
