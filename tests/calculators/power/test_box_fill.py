"""Box fill: what counts, and which box to take."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.power.box_counts import BOXES
from calculators.power.box_fill import box_fill
from calculators.power.box_fill_drawing import box_fill_drawing
from calculators.run import run

BARE: dict[str, Any] = {"wires_14": 1, "grounds": 0, "yokes": 0, "clamps": False}


def cu_in(**given: Any) -> float:
    return round(float(run(box_fill, {**BARE, **given})["needed"]) * 1728, 9)


@pytest.mark.parametrize(
    ("more", "adds"),
    [
        ({"wires_14": 2}, 2),
        ({"wires_12": 1}, 2.25),
        ({"grounds": 1}, 2),
        ({"grounds": 4}, 2),
        ({"grounds": 5}, 2.5),
        ({"grounds": 8}, 4),
        ({"grounds": 8, "edition": "before-2020"}, 2),
        ({"grounds": 1, "ground_gauge": "10"}, 2.5),
        ({"yokes": 1}, 4),
        ({"yokes": 2}, 8),
        ({"yokes": 2, "wires_12": 1}, 9 + 2.25),
        ({"yokes": 2, "wires_12": 1, "yoke_gauge": "14"}, 8 + 2.25),
        ({"clamps": True}, 2),
        ({"fittings": 2}, 4),
    ],
)
def test_what_each_thing_adds(more: dict[str, Any], adds: float) -> None:
    assert cu_in(**more) - cu_in() == pytest.approx(adds)


def test_clamps_count_as_the_largest_wire_in_the_box() -> None:
    assert cu_in(clamps=True, wires_10=1) == 2 + 2.5 + 2.5
    assert cu_in(clamps=True, grounds=1, ground_gauge="8") == 2 + 3 + 3


@given(wires=st.integers(1, 30), grounds=st.integers(0, 20), yokes=st.integers(0, 4), clamps=st.booleans())
def test_the_parts_add_up_and_more_never_needs_less(wires: int, grounds: int, yokes: int, clamps: bool) -> None:
    answer = box_fill(wires_14=wires, grounds=grounds, yokes=yokes, clamps=clamps)
    assert sum(part["volume"] for part in answer["parts"]) == pytest.approx(answer["needed"])
    assert sum(part["allowances"] for part in answer["parts"]) == pytest.approx(answer["allowances"])
    assert answer["needed"] + answer["left"] == pytest.approx(answer["has"])
    more = box_fill(wires_14=wires + 1, grounds=grounds + 1, yokes=yokes, clamps=True)
    assert more["needed"] > answer["needed"]


@given(wires=st.integers(1, 30), box=st.sampled_from([each["name"] for each in BOXES]))
def test_the_box_that_is_named_holds_it(wires: int, box: str) -> None:
    answer = box_fill(wires_14=wires, box=box)
    named = [each for each in BOXES if each["label"] == answer["use"]]
    if named:
        assert named[0]["volume"] / 1728 >= answer["needed"] - 1e-9
    else:
        assert answer["needed"] * 1728 > max(each["volume"] for each in BOXES)
    if answer["fits"]:
        assert named[0]["name"] == box


def test_a_marked_box_has_the_volume_that_is_marked() -> None:
    answer = box_fill(box="marked", marked_volume=20 / 1728)
    assert answer["has"] * 1728 == pytest.approx(20)
    assert answer["use"] == "this box"


def test_cautions_stand_where_they_belong() -> None:
    assert box_fill()["cautions"] == []
    assert box_fill(wires_14=9)["cautions"][0].startswith("Too full by 8 cu in.")
    assert "octagon" in box_fill(box="round-2-1-8")["cautions"][0]
    assert "is one there?" in box_fill(grounds=0)["cautions"][0]


def test_an_empty_count_is_refused() -> None:
    with pytest.raises(Refused) as caught:
        box_fill(wires_14=0)
    assert caught.value.input == "wires_14"


def test_drawing_stacks_the_parts_to_their_share_of_the_box() -> None:
    values = {item.name: item.default for item in box_fill.inputs}
    answer = run(box_fill, {"wires_14": 9})
    drawn = box_fill_drawing(values, answer)
    tops = [shape["points"][2][1] for shape in drawn["shapes"] if shape["kind"] == "area"]
    assert len(tops) == len(answer["parts"])
    assert max(tops) / 3 == pytest.approx(answer["needed"] / answer["has"])
    assert "does not fit" in drawn["alt"]


def test_five_wires_of_12_with_a_device_do_not_go_into_20_cu_in() -> None:
    """Ground and yoke follow the 12 AWG: 5 x 2.25, the ground, two for the yoke, the clamps: 20.25."""
    answer = run(box_fill, {"wires_14": 0, "wires_12": 5, "box": "marked", "marked_volume": 20 / 1728})
    assert (round(answer["needed"] * 1728, 9), answer["fits"]) == (20.25, False)


@given(gauge=st.sampled_from(["14", "12", "10"]), wires=st.integers(1, 9), yokes=st.integers(0, 3))
def test_everything_in_a_box_of_one_gauge_counts_as_that_gauge(gauge: str, wires: int, yokes: int) -> None:
    answer = run(box_fill, {"wires_14": 0, f"wires_{gauge}": wires, "yokes": yokes})
    assert len({part["each"] for part in answer["parts"]}) == 1


@pytest.mark.parametrize(
    ("given", "input"),
    [
        ({"wires_14": 0, "wires_12": 4, "ground_gauge": "14"}, "ground_gauge"),
        ({"wires_14": 0, "wires_12": 4, "yoke_gauge": "14"}, "yoke_gauge"),
        ({"wires_14": 0, "wires_6": 3, "ground_gauge": "12"}, "ground_gauge"),
    ],
)
def test_a_gauge_that_cannot_be_is_refused(given: dict[str, Any], input: str) -> None:
    with pytest.raises(Refused) as caught:
        run(box_fill, given)
    assert caught.value.input == input


@pytest.mark.parametrize(
    ("yokes", "box", "gangs", "fits"),
    [
        (1, "device-3-1-2", 1, True),
        (2, "device-3-1-2", 1, False),
        (2, "square-2-1-8", 1, True),
        (3, "square-2-1-8", 1, False),
        (2, "marked", 1, False),
        (2, "marked", 2, True),
    ],
)
def test_one_yoke_to_a_gang(yokes: int, box: str, gangs: int, fits: bool) -> None:
    given = {"wires_14": 2, "yokes": yokes, "box": box, "marked_gangs": gangs, "marked_volume": 40 / 1728}
    answer = run(box_fill, given)
    assert answer["fits"] == fits
    assert any(said.startswith("One yoke to a gang") for said in answer["cautions"]) == (not fits)
    if not fits:
        assert answer["use"] != "device box 3 x 2 x 3-1/2 in"
