"""A driveway approach: quantities, refusals, cautions and the laws that its volume keeps."""

from __future__ import annotations

from math import isfinite
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.concrete.approach_concrete import approach_concrete
from calculators.declaration import Answer, Input, Refused
from calculators.run import compute, run, shown

STANDARD: dict[str, Any] = {one.name: one.default for one in approach_concrete.inputs}


def approach(**changes: Any) -> Answer:
    """The answer for the standard inputs with these changes."""
    return run(approach_concrete, changes)


def anything(one: Input) -> st.SearchStrategy[Any]:
    """Whatever the hard limits of an input let in."""
    if one.quantity == "yes-no":
        return st.booleans()
    if one.quantity == "choice":
        return st.sampled_from([choice.name for choice in one.choices])
    assert one.least is not None and one.most is not None
    return st.one_of(st.floats(one.least, one.most), st.sampled_from([one.least, one.most]))


lengths = st.integers(36, 240)
sizes = st.fixed_dictionaries(
    {"throat": lengths, "depth": lengths, "left": st.integers(6, 120), "right": st.integers(6, 120)}
)


def test_the_standard_approach() -> None:
    """102 sq ft of 6 in, and an 8 in edge under it: 2.09 cu yd, order 2-1/2."""
    answer = approach()
    assert answer["opening"] == 264
    assert answer["area"] == pytest.approx(102)
    assert answer["concrete"] / 27 == pytest.approx(2.083, abs=0.001)
    assert answer["order"] / 27 == pytest.approx(2.291, abs=0.001)
    assert answer["weight"] == 2.5 * 27 * 150
    assert (answer["loads"], answer["access"], answer["cautions"]) == (1, "within the limits", [])


def test_working_says_the_arithmetic() -> None:
    assert approach(slope=0.02)["working"] == [
        "Opening at the curb: 12' 0\" throat + 5' 0\" + 5' 0\" = 22' 0\"; at the walk 12' 0\".",
        "Plan: 6' 0\" deep x the mean of 22' 0\" and 12' 0\" = 102 sq ft; measured on the slopes 102.1 sq ft.",
        "Slab: 102.1 sq ft x 6 in = 51.06 cu ft; thickened edge 5.18 cu ft; together 56.24 cu ft.",
        "27 cu ft a yard: 56.24 / 27 = 2.08 cu yd, plus 10 % = 2.29, order 2-1/2 cu yd.",
        "Base: 6 in compacted = 2.15 cu yd, plus 25 % loose = 2.68 cu yd x 2950 lb = 3.96 tons.",
    ]


def test_a_plain_slab_is_length_times_width_times_thickness() -> None:
    answer = approach(side="none", throat=120, depth=60, slope=0, thickness=6, edge_thickness=6)
    assert answer["concrete"] == pytest.approx(10 * 5 * 0.5)
    assert answer["side_slope"] == 0


def test_the_thick_edge_adds_its_prism_and_half_its_taper() -> None:
    plain = approach(side="none", edge_thickness=6)["concrete"]
    thick = approach(side="none", edge_thickness=8)["concrete"]
    assert thick - plain == pytest.approx(144 * 2 * (12 + 12 / 2) / 1728)


def test_drop_and_changes_of_grade() -> None:
    answer = approach(slope=0.05, depth=100, gutter_slope=0.04, drive_slope=0.12)
    assert answer["drop"] == pytest.approx(5)
    assert answer["gutter_break"] == pytest.approx(0.09)
    assert answer["drive_break"] == pytest.approx(0.07)
    assert [text for text in answer["cautions"] if "at the gutter" in text] == [
        "The grade changes by 9 % at the gutter; 8 % is the most asked for: a low car scrapes. "
        "Flatten the approach, or ease the change over several feet."
    ]


def test_steep_slopes_matter_only_where_a_walk_crosses() -> None:
    steep = approach(slope=0.03, left=36, right=36)
    assert steep["access"] == "too steep where the walk crosses"
    assert len(steep["cautions"]) == 2
    assert approach(slope=0.03, left=36, right=36, walk_crosses=False)["cautions"] == []


def test_flares_are_triangles_and_wings_rectangles() -> None:
    none, flare, wing = (approach(side=side)["area"] for side in ("none", "flare", "wing"))
    assert (none, flare, wing) == (72, 102, 132)


def test_forms_and_stakes_follow_the_edges_that_are_formed() -> None:
    square = {"side": "none", "slope": 0}
    answer = approach(**square, form_walk=False)
    assert (answer["forms"], answer["stakes"], answer["strip"]) == (144, 6, 288)
    answer = approach(**square, form_walk=True, form_curb=True)
    assert (answer["forms"], answer["stakes"], answer["strip"]) == (432, 16, 0)


def test_bars_are_counted_only_where_asked_for() -> None:
    assert approach()["bars"] == 0
    bars = approach(reinforced=True, side="none", throat=126, depth=78)["bars"]
    assert bars == 5 * (126 - 6) + 8 * (78 - 6)
    assert approach(reinforced=True, side="none", throat=252, depth=78)["bars"] == 5 * (246 + 24) + 15 * 72
    assert (approach()["supports"], approach()["wire"]) == (0, 0)
    square = approach(reinforced=True, side="none", throat=144, depth=96, bars_a_roll=600)
    assert (square["supports"], square["wire"]) == (24, square["bars"] / 600)


def test_more_than_one_load_is_said() -> None:
    answer = approach(throat=288, depth=144, truck=135)
    assert answer["loads"] == 2
    assert [text.split(":")[0] for text in answer["cautions"]] == ["2 loads"]


def test_people_write_feet_and_percent() -> None:
    """What a helper types, and what he reads."""
    answer = compute(approach_concrete, {"throat": "14'", "depth": "6'", "slope": "2 %", "walk_crosses": "yes"})
    texts = shown(approach_concrete, answer)
    wanted = ("opening", "order", "forms", "side_slope", "drop")
    assert [texts[name] for name in wanted] == ["24' 0\"", "2-3/4 cu yd", "30 ft", "1:12", "1-7/16 in"]


def test_an_unusual_figure_is_cautioned() -> None:
    assert approach(thickness=4)["cautions"] == [
        "Slab thickness: 4 in is outside the usual 6 in to 8 in; measure it again"
    ]


@pytest.mark.parametrize(
    ("changes", "name", "words"),
    [
        (
            {"reinforced": True, "bar_lap": 72, "bar_stock": 60},
            "bar_lap",
            "A lap of 72 in is more than half of a bar of 5' 0\".",
        ),
        ({"left": 4}, "left", "A flare or wing is 0 or at least 6 in wide; 4 in cannot be formed."),
        ({"right": 4.5}, "right", "A flare or wing is 0 or at least 6 in wide; 4-1/2 in cannot be formed."),
        ({"lip": 5, "curb_height": 4}, "lip", "The lip of 5 in is higher than the curb of 4 in."),
        (
            {"edge_thickness": 5},
            "edge_thickness",
            "The curb edge of 5 in is thinner than the slab of 6 in. "
            "For an edge that is not thickened give the slab's thickness.",
        ),
        (
            {"depth": 24, "edge_width": 18},
            "edge_width",
            "The thick edge and its taper take 30 in; the approach is only 24 in deep.",
        ),
    ],
)
def test_what_cannot_be_formed_is_refused(changes: dict[str, Any], name: str, words: str) -> None:
    with pytest.raises(Refused) as caught:
        approach(**changes)
    assert (caught.value.input, caught.value.message) == (name, words)


@given(st.fixed_dictionaries({one.name: anything(one) for one in approach_concrete.inputs}))
def test_within_the_limits_it_answers_or_refuses(inputs: dict[str, Any]) -> None:
    try:
        answer = run(approach_concrete, inputs)
    except Refused as refused:
        assert approach_concrete.input(refused.input) is not None
        return
    numbers = [answer[one.name] for one in approach_concrete.outputs if one.quantity != "text"]
    assert all(isfinite(number) and number >= 0 for number in numbers)
    assert set(answer) == {one.name for one in approach_concrete.outputs} | {"cautions", "working"}


@given(sizes)
def test_more_side_takes_more_concrete(size: dict[str, Any]) -> None:
    none, flare, wing = (approach(side=side, **size)["concrete"] for side in ("none", "flare", "wing"))
    assert none < flare < wing


@given(sizes, st.floats(0, 0.2), st.floats(3, 8))
def test_never_less_than_the_plan_by_the_thickness(size: dict[str, Any], slope: float, thickness: float) -> None:
    answer = approach(slope=slope, thickness=thickness, **size)
    assert answer["concrete"] * 12 >= answer["area"] * thickness * (1 - 1e-12)


@given(sizes, st.floats(0, 40), st.floats(27, 405))
def test_the_loads_bring_the_order(size: dict[str, Any], waste: float, truck: float) -> None:
    answer = approach(waste=waste, truck=truck, **size)
    assert answer["order"] >= answer["concrete"]
    assert answer["loads"] * truck >= answer["order"] * (1 - 1e-9)
    assert (answer["loads"] - 1) * truck < answer["order"] + 27 / 4


@given(sizes)
def test_left_and_right_may_be_exchanged(size: dict[str, Any]) -> None:
    other = size | {"left": size["right"], "right": size["left"]}
    for name in ("concrete", "forms", "bars", "base"):
        assert approach(reinforced=True, **size)[name] == pytest.approx(approach(reinforced=True, **other)[name])


@given(sizes, st.sampled_from(["none", "flare", "wing"]))
def test_twice_as_large_every_way_is_eight_times_the_concrete(size: dict[str, Any], side: str) -> None:
    """Everything that is a length doubled, slopes as they are."""
    names = ("curb_height", "lip", "thickness", "edge_thickness", "edge_width", "edge_taper")
    small = {name: STANDARD[name] for name in names} | size
    large = {name: value * 2 for name, value in small.items()}
    assert approach(side=side, **large)["concrete"] == pytest.approx(8 * approach(side=side, **small)["concrete"])
