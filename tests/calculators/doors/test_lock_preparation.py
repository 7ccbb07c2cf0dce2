"""The lock preparation: where the bores, the faceplate and the strike come to lie, and what does not fit."""

from __future__ import annotations

from math import isfinite
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.declaration import Input, Refused
from calculators.doors.lock_preparation import lock_preparation
from calculators.run import compute, run, shown

DEFAULTS = {declared.name: declared.default for declared in lock_preparation.inputs}
NUMBERS = [output.name for output in lock_preparation.outputs if output.quantity == "length"]


def answer(**inputs: Any) -> dict[str, Any]:
    """The answer for a 1-3/8 in door, with everything that is not given at its default."""
    return run(lock_preparation, {"thickness": 1.375, **inputs})


def whats(found: dict[str, Any]) -> str:
    return " / ".join(line["what"] for line in found["misfits"])


def test_a_standard_door_takes_a_standard_lock() -> None:
    found = answer()
    assert found["fits"] is True
    assert found["thickness_fits"] is True
    assert found["misfits"] == []
    assert found["cautions"] == []


def test_the_marks_of_the_faceplate_lie_the_same_distance_above_and_below() -> None:
    found = answer(height=36)
    assert (found["faceplate_bottom"], found["faceplate_top"]) == (34.875, 37.125)


def test_a_drive_in_latch_needs_no_mortise_and_its_marks_are_those_of_the_bore() -> None:
    found = answer(faceplate="drive-in", height=36)
    assert (found["faceplate_width"], found["faceplate_height"], found["mortise_depth"]) == (0, 0, 0)
    assert (found["faceplate_bottom"], found["faceplate_top"]) == (35.5, 36.5)


def test_a_deadbolt_is_marked_at_its_own_height_and_everything_else_goes_up_with_it() -> None:
    latch, bolt = answer(), answer(kind="deadbolt")
    for name in ("centre_height", "from_door_bottom", "faceplate_top", "faceplate_bottom", "strike_height"):
        assert bolt[name] - latch[name] == DEFAULTS["spacing"]
    assert bolt["deadbolt_height"] == latch["deadbolt_height"] == bolt["centre_height"]


def test_the_hole_behind_the_strike_is_deeper_than_the_throw() -> None:
    assert answer()["strike_bore_depth"] == 0.625
    assert answer(kind="deadbolt")["strike_bore_depth"] == 1.125


def test_a_backset_that_is_not_common_is_cautioned() -> None:
    assert answer()["cross_bore_centre"] == 2.375
    found = answer(backset=5)
    assert found["cross_bore_centre"] == 5
    assert found["cautions"] == ["5 in is not a common backset: have the latch in hand before boring."]


def test_the_wider_faceplate_comes_with_a_caution() -> None:
    assert answer(backset=2.75)["cautions"] == [
        "Many latches have a 1 in faceplate at this backset too: scribe around the one in hand."
    ]
    assert answer(backset=2.75, faceplate="one-inch")["cautions"] == []


@pytest.mark.parametrize(
    ("inputs", "input_name", "words"),
    [
        ({"backset": 1.0}, "backset", "must be over 1-1/16 in"),
        ({"edge_bore": 1.5, "cross_bore": 1.5}, "edge_bore", "1-1/2 in is not smaller than the cross bore, 1-1/2 in"),
        ({"thickness_least": 2.0}, "thickness_least", "2 in is more than the thickest door, 1-3/4 in"),
    ],
)
def test_what_cannot_be_is_refused_beside_its_input(inputs: dict[str, Any], input_name: str, words: str) -> None:
    with pytest.raises(Refused) as refused:
        answer(**inputs)
    assert refused.value.input == input_name
    assert words in refused.value.message


@pytest.mark.parametrize(
    ("inputs", "what"),
    [
        ({"thickness": 1.25}, "The door is 1-1/4 in thick; the hardware takes 1-3/8 in to 1-3/4 in"),
        ({"thickness": 2.25}, "The door is 2-1/4 in thick; the hardware takes 1-3/8 in to 1-3/4 in"),
        ({"stile": 3.75}, "The solid edge is 3-3/4 in wide; this lock needs 3-15/16 in"),
        ({"rose": 2.125}, "A rose of 2-1/8 in does not cover a bore of 2-1/8 in"),
        ({"thickness": 1.0, "thickness_least": 1.0}, "0 in of wood is left each side of faceplate and edge bore"),
        ({"cut": True, "cut_cross_bore": 1.5}, "The cross bore in the door is 1-1/2 in; the hardware wants 2-1/8 in"),
        ({"cut": True, "cut_edge_bore": 0.875}, "The edge bore in the door is 7/8 in; the hardware wants 1 in"),
        ({"cut": True, "cut_backset": 2.75}, "The backset in the door is 2-3/4 in; the hardware wants 2-3/8 in"),
        ({"cut": True, "cut_cross_bore": 2.625}, "A rose of 2-5/8 in does not cover a bore of 2-5/8 in"),
        ({"kind": "deadbolt", "strike_screw": 1.5}, "Strike screws of 1-1/2 in go 1/4 in into the stud; 3/4 in is the"),
        ({"kind": "deadbolt", "spacing": 2.5}, "At 2-1/2 in apart the roses of knob and deadbolt meet"),
    ],
)
def test_what_does_not_fit_is_said_with_both_figures(inputs: dict[str, Any], what: str) -> None:
    found = answer(**inputs)
    assert what in whats(found)
    assert found["fits"] is False
    assert all(line["mend"] for line in found["misfits"])


def test_the_thickness_has_an_answer_of_its_own() -> None:
    assert answer(stile=3.0)["thickness_fits"] is True
    assert answer(thickness=2.25)["thickness_fits"] is False


def test_holes_within_the_tolerance_are_good_holes() -> None:
    found = answer(cut=True, cut_cross_bore=2.125 + 0.0625, cut_edge_bore=1.0625, cut_backset=2.375 - 0.0625)
    assert found["fits"] is True


def test_short_screws_are_no_matter_where_there_is_no_deadbolt() -> None:
    assert answer(strike_screw=0.75)["fits"] is True


def test_a_gap_that_eats_the_latch_is_a_caution() -> None:
    caution = "The gap of 1/4 in takes half of the throw or more: mend the hang of the door before the lock."
    assert caution in answer(reveal=0.25)["cautions"]
    assert caution not in answer(reveal=0.25, kind="deadbolt")["cautions"]


def test_the_example_is_read_and_shown_as_people_write() -> None:
    texts = shown(lock_preparation, compute(lock_preparation, lock_preparation.example))
    names = ("centre_height", "faceplate_bottom", "faceplate_top", "strike_bore_depth", "low_edge", "fits")
    assert [texts[name] for name in names] == ["41-1/2 in", "40-3/8 in", "42-5/8 in", "1-1/8 in", "2-9/32 in", "yes"]


@pytest.mark.parametrize(
    ("inputs", "caution"),
    [
        ({"height": 50.0}, "is outside the usual"),
        ({"spacing": 4.0}, "is outside the usual"),
        ({"reveal": 0.25}, "is outside the usual"),
    ],
)
def test_an_unusual_figure_is_answered_with_a_caution(inputs: dict[str, Any], caution: str) -> None:
    assert any(caution in line for line in answer(**inputs)["cautions"])


def test_a_door_thicker_than_any_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        answer(thickness=3.5)
    assert refused.value.input == "thickness"


def any_value(declared: Input) -> st.SearchStrategy[Any]:
    """Any value that the declaration lets through."""
    if declared.quantity == "choice":
        return st.sampled_from([choice.name for choice in declared.choices])
    if declared.quantity == "yes-no":
        return st.booleans()
    return st.floats(declared.least, declared.most)


ANY = st.fixed_dictionaries({declared.name: any_value(declared) for declared in lock_preparation.inputs})


@given(ANY)
@settings(max_examples=400)
def test_every_input_within_its_limits_has_an_answer_or_a_reason(inputs: dict[str, Any]) -> None:
    try:
        found = run(lock_preparation, inputs)
    except Refused as refused:
        assert refused.input in DEFAULTS
        return
    assert set(found) == {output.name for output in lock_preparation.outputs} | {"cautions", "working"}
    assert all(isfinite(found[name]) for name in NUMBERS)
    assert found["fits"] == (found["misfits"] == [])
    assert found["edge_bore_depth"] > 0
    assert found["low_edge"] <= found["cross_bore_centre"]
    assert found["strike_from_stop"] - found["strike_from_jamb_edge"] == pytest.approx(inputs["stop_gap"])
    assert found["faceplate_top"] + found["faceplate_bottom"] == pytest.approx(2 * found["strike_height"])


@given(ANY, st.floats(0.0, 1.0))
def test_a_wider_solid_edge_never_makes_a_lock_fit_less(inputs: dict[str, Any], more: float) -> None:
    narrow = {**inputs, "stile": max(inputs["stile"], 0.5)}
    wide = {**narrow, "stile": narrow["stile"] + more}
    try:
        before, after = run(lock_preparation, narrow), run(lock_preparation, wide)
    except Refused:
        return
    assert len(after["misfits"]) <= len(before["misfits"])
