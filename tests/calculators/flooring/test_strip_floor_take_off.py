"""What the take-off of a strip floor promises."""

from __future__ import annotations

import random
from math import ceil
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.flooring.strip_floor_take_off import fasteners_a_board, strip_floor_take_off
from calculators.run import run

FEET = 12


def room(length: float, width: float, less: bool = False, name: str = "room") -> dict[str, Any]:
    """A rectangle of the plan, in feet."""
    x, y = length * FEET, width * FEET
    return {"name": name, "less": less, "points": [[0, 0], [x, 0], [x, y], [0, y]]}


def take_off(*rooms: dict[str, Any], **inputs: Any) -> dict[str, Any]:
    """The answer for these rooms; what is not given stands at its default."""
    defaults = {declared.name: declared.default for declared in strip_floor_take_off.inputs}
    return run(strip_floor_take_off, {**defaults, "rooms": list(rooms), **inputs})


def test_less_is_taken_off_and_closets_are_added() -> None:
    answer = take_off(room(14, 12), room(5, 2, name="closet"), room(3, 2, less=True, name="hearth"))
    assert answer["net_area"] == pytest.approx(168 + 10 - 6)
    assert answer["perimeter"] == pytest.approx((52 + 14) * FEET)


def test_an_area_already_measured_counts_with_the_rooms() -> None:
    assert take_off(room(10, 10), measured_area=50)["net_area"] == pytest.approx(150)
    assert take_off(measured_area=200)["bundles"] == pytest.approx(11)


def test_a_diagonal_layout_takes_its_own_waste() -> None:
    straight = take_off(room(10, 10), waste=5, waste_diagonal=15)
    diagonal = take_off(room(10, 10), waste=5, waste_diagonal=15, layout="diagonal")
    assert straight["ordered_area"] == pytest.approx(105)
    assert diagonal["ordered_area"] == pytest.approx(115)


def test_no_floor_is_refused_in_words() -> None:
    with pytest.raises(Refused) as nothing:
        take_off()
    assert nothing.value.input == "rooms"
    with pytest.raises(Refused) as negative:
        take_off(room(2, 2), room(3, 2, less=True))
    assert "-2 sq ft" in negative.value.message


def test_a_lap_as_wide_as_the_roll_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        take_off(room(10, 10), lap=12, roll_width=12)
    assert refused.value.input == "lap"
    assert "12 in" in refused.value.message


@pytest.mark.parametrize(
    ("inputs", "words"),
    [
        ({"nail_spacing": 12.0}, "too few"),
        ({"nail_spacing": 4.0}, "split tongues"),
        ({"nail_end": 5.0}, "off the schedule"),
        ({"face_width": 6.0, "nail_spacing": 7.0}, "glued"),
        ({"average_length": 12.0}, "end joints"),
    ],
)
def test_it_warns(inputs: dict[str, float], words: str) -> None:
    assert any(words in caution for caution in take_off(room(10, 10), **inputs)["cautions"])


def test_the_crew_standard_carries_no_caution() -> None:
    assert take_off(room(20, 16))["cautions"] == []


def test_one_spacing_serves_strip_and_plank() -> None:
    for face_width in (2.25, 3.25):
        assert take_off(room(20, 16), face_width=face_width, nail_spacing=8)["cautions"] == []


def test_laps_cost_underlayment() -> None:
    answer = take_off(measured_area=384, roll_area=432, roll_width=36, lap=4)
    assert answer["rolls"] == pytest.approx(1)
    assert take_off(measured_area=432, roll_area=432, roll_width=36, lap=0)["rolls"] == pytest.approx(1)


def test_eight_hundred_square_feet_take_two_to_three_people_some_two_and_a_half_days() -> None:
    # common practice, no source
    two = take_off(measured_area=800, people=2)
    three = take_off(measured_area=800, people=3)
    assert three["days"] < 2.5 < two["days"]
    assert (two["days"] + three["days"]) / 2 == pytest.approx(2.5, abs=0.15)
    assert two["labour"] == three["labour"] == pytest.approx(2.5 * 2.5 * 8)


def test_the_average_of_many_boards_agrees_with_counting_each() -> None:
    draw = random.Random(7)
    lengths = [draw.uniform(9, 84) for _ in range(20000)]
    counted = sum(max(2, ceil((length - 2 * 2) / 8) + 1) for length in lengths)
    assert len(lengths) * fasteners_a_board(sum(lengths) / len(lengths), 8, 2) == pytest.approx(counted, rel=0.01)


def test_no_board_has_fewer_than_two_fasteners() -> None:
    assert fasteners_a_board(3, 10, 2) == 2


sizes = st.floats(20, 5000)


@given(sizes, st.floats(0, 30), st.floats(1, 6), st.floats(10, 80))
def test_more_floor_never_needs_less(area: float, waste: float, face_width: float, length: float) -> None:
    given_inputs = {"waste": waste, "face_width": face_width, "average_length": length}
    small = take_off(measured_area=area, **given_inputs)
    large = take_off(measured_area=area * 1.5, **given_inputs)
    for name in (
        "ordered_area",
        "bundles",
        "lineal_feet",
        "board_feet",
        "fasteners",
        "rolls",
        "filler",
        "finish",
        "labour",
    ):
        assert large[name] == pytest.approx(small[name] * 1.5)
    assert small["ordered_area"] >= small["net_area"]
    assert small["fasteners"] >= small["fasteners_field"] * 0.5


@given(sizes, st.integers(1, 12), st.floats(4, 12))
def test_days_are_hours_shared_by_the_people(area: float, people: int, hours: float) -> None:
    answer = take_off(measured_area=area, people=people, hours_a_day=hours)
    assert answer["days"] * people * hours == pytest.approx(answer["labour"])
    assert answer["labour_total"] == pytest.approx(answer["labour"] + answer["finish_labour"])


@given(st.floats(0.3125, 1.125), st.floats(1, 8), st.floats(2, 16))
def test_closer_nailing_takes_more(thickness: float, face_width: float, spacing: float) -> None:
    wide = take_off(measured_area=100, thickness=thickness, face_width=face_width, nail_spacing=spacing)
    close = take_off(measured_area=100, thickness=thickness, face_width=face_width, nail_spacing=max(2, spacing / 2))
    assert close["fasteners"] >= wide["fasteners"]
