"""A closet fitted out: heights, pieces, brackets, sag and reach."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.doors.closet import closet
from calculators.doors.closet_drawing import closet_drawing
from calculators.run import compute, run

widths = st.integers(24, 240 * 8).map(lambda n: n / 8).filter(lambda w: w <= 240)


def test_single_hang_has_one_rod_below_one_shelf() -> None:
    answer = closet()
    assert (answer["top_rod"], answer["second_rod"], answer["shelf_bottom"], answer["shelf_top"]) == (
        66,
        0,
        68.5,
        69.25,
    )
    assert [piece["count"] for piece in answer["pieces"]] == [1, 1, 1, 2]


def test_double_hang_has_two_of_each_but_the_shelf() -> None:
    answer = closet(hang="double")
    assert (answer["top_rod"], answer["second_rod"], answer["shelf_bottom"]) == (80, 40, 82.5)
    assert [(piece["name"], piece["count"]) for piece in answer["pieces"]] == [
        ("shelf", 1),
        ("rod", 2),
        ("back cleat", 2),
        ("side cleat", 4),
    ]


def test_lengths_of_the_pieces() -> None:
    answer = compute(closet, {"width": "5'", "play": "1/8 in"})
    assert [piece["length"] for piece in answer["pieces"]] == [59.875, 59.875, 60, 13.25]


def test_side_cleats_reach_past_the_rod_by_the_socket() -> None:
    assert closet(depth=30, rod_setback=12, socket=3)["side_cleat"] == 12 + 3 - 0.75


def test_side_cleats_stay_inside_the_depth() -> None:
    assert closet(depth=13, rod_setback=12)["side_cleat"] == 12.25
    assert closet(shelf_depth=16)["side_cleat"] == 15.25


@pytest.mark.parametrize(
    ("width", "places"), [(36, []), (36.125, [18.0625]), (72, [36]), (96, [32, 64]), (120, [30, 60, 90])]
)
def test_brackets_stand_evenly(width: float, places: list[float]) -> None:
    answer = closet(width=width)
    assert [mark["place"] for mark in answer["bracket_places"]] == places
    assert closet(width=width, hang="double")["brackets"] == 2 * len(places) == 2 * answer["brackets"]


@given(width=widths, most=st.integers(12, 96))
def test_no_span_is_longer_than_the_longest_and_none_is_spared(width: float, most: int) -> None:
    answer = closet(width=width, most_span=most)
    spans = answer["brackets"] + 1
    assert answer["span"] <= most + 1e-9
    assert answer["span"] * spans == pytest.approx(width)
    assert spans == 1 or width / (spans - 1) > most


@given(width=widths, load=st.floats(1, 100))
def test_what_holds_is_what_is_no_longer_than_the_longest_span_of_the_board(width: float, load: float) -> None:
    answer = closet(width=width, shelf_load=load, rod_load=load)
    assert answer["shelf_holds"] == (answer["span"] <= answer["shelf_span"] * (1 + 1e-9))
    assert answer["rod_holds"] == (answer["span"] <= answer["rod_span"] * (1 + 1e-9))
    assert answer["shelf_holds"] == (not any("The shelf sags" in caution for caution in answer["cautions"]))
    assert answer["rod_holds"] == (not any("The rod sags" in caution for caution in answer["cautions"]))


def test_a_long_rod_sags_and_the_caution_says_how_far_apart() -> None:
    answer = closet(width=60, most_span=60)
    assert not answer["rod_holds"]
    assert "The rod sags 1.26 in: supports at most 41-1/2 in apart." in answer["cautions"]


def test_reach_is_looked_at_when_it_is_asked_for() -> None:
    assert closet()["reach"] == "not asked"
    low = closet(accessible=True, single_rod=44)
    assert low["reach"] == "all within reach"
    high = closet(accessible=True, hang="double")
    assert high["reach"] == "out of reach: 80 in, 83-1/4 in"
    assert high["cautions"] == ["Reach from a wheelchair is 15 in to 48 in; out of reach: 80 in, 83-1/4 in."]


def test_cautions_stand_where_they_belong() -> None:
    assert closet()["cautions"] == []
    assert "a hanger needs about 11 in" in closet(depth=20)["cautions"][0]
    assert "too low to put a box on it" in closet(height=76)["cautions"][0]
    assert "32 in between the rods" in closet(hang="double", low_rod=48)["cautions"][0]


@pytest.mark.parametrize(
    ("given", "name", "message"),
    [
        ({"hang": "double", "low_rod": 80.0}, "low_rod", "The low rod, 80 in, is not below the high one, 80 in."),
        ({"height": 69.0}, "height", "The shelf's top, 69-1/4 in, is not below the ceiling, 5' 9\"."),
        ({"depth": 11.0}, "shelf_depth", "The shelf, 11-1/4 in, is deeper than the closet, 11 in."),
        ({"depth": 12.0}, "rod_setback", "The rod, 12 in from the back, is not inside 12 in of depth."),
        ({"rod_wall": 0.625}, "rod_wall", "A wall of 5/8 in leaves no hole in a rod of 1-1/4 in."),
    ],
)
def test_what_does_not_go_in_is_refused(given: dict[str, Any], name: str, message: str) -> None:
    with pytest.raises(Refused) as caught:
        closet(**given)
    assert (caught.value.input, caught.value.message) == (name, message)


def test_working_says_the_arithmetic() -> None:
    assert closet(width=96, hang="double")["working"] == [
        "shelf's underside: rod 80 in + 2-1/2 in = 82-1/2 in",
        "shelf and rods: 8' 0\" less 1/8 in of play = 7' 11-7/8\"",
        "spans: 8' 0\" / 36 in, up = 3; each 32 in",
        "limit: 32 in / 144 = 0.222 in",
        "shelf: I = 0.3955 in4, sag 0.029 in",
        "rod: I = 0.1198 in4, sag 0.102 in",
    ]


@pytest.mark.parametrize(("hang", "rods"), [("single", 1), ("double", 2)])
def test_drawing_shows_each_rod_and_bracket(hang: str, rods: int) -> None:
    values = {item.name: item.default for item in closet.inputs}
    values["hang"] = hang
    values["width"] = 96.0
    answer = run(closet, values)
    drawn = closet_drawing(values, answer)
    fills = [shape["fill"] for shape in drawn["shapes"] if shape["kind"] == "area"]
    assert fills.count("wood") == 1 + rods
    assert fills.count("steel") == answer["brackets"] == 2 * rods
    assert ("a second rod at 40 in" in drawn["alt"]) == (rods == 2)
    heights = [shape["text"] for shape in drawn["shapes"] if shape["kind"] == "dimension" and shape["side"] == "left"]
    assert heights == [*(["40 in", "80 in", "83-1/4 in"] if rods == 2 else ["66 in", "69-1/4 in"]), "8' 0\""]
