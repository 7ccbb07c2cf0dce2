"""Contraction joints: the layout of a pad, and what is said about one that somebody wants."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.concrete.joint_spacing import joint_spacing, least_panels, ratio_of, sawing
from calculators.declaration import Answer
from calculators.run import run

sides = st.floats(12, 2400)
spacings = st.floats(48, 360)
ratios = st.floats(1.25, 1.5)


def joints(**changes: Any) -> Answer:
    """The answer for the standard inputs with these changes."""
    return run(joint_spacing, changes)


def test_the_standard_pad_is_halved_once() -> None:
    answer = joints()
    assert (answer["panels_along"], answer["panels_across"], answer["verdict"]) == (2, 1, "pass")
    assert answer["joints"] == 72
    assert answer["joint_depth"] == 1.5


def test_working_says_the_arithmetic() -> None:
    assert joints()["working"] == [
        "24 x 6 in = 12' 0\"; at most 18' 0\": a joint every 12' 0\".",
        "Panels: 12' 0\" / 2 = 6' 0\" by 6' 0\" / 1 = 6' 0\"; ratio 1.",
        "Joints: 1 x 6' 0\" + 0 x 12' 0\" = 6' 0\".",
    ]


def test_a_layout_that_somebody_wants_is_judged() -> None:
    answer = joints(length=264, width=72, along=2, across=1)
    assert answer["verdict"] == "fail"
    assert answer["cautions"] == [
        "It will crack by itself: the long side is 1.83 times the short one, over 1.5. 3 x 1 panels fit."
    ]
    assert joints(length=264, width=72, along=3, across=1)["verdict"] == "pass"


def test_panels_that_are_too_long_are_named_both_ways() -> None:
    answer = joints(thickness=4, length=240, width=240, along=1, across=1)
    assert [text.split(".")[0] for text in answer["cautions"]] == [
        "It will crack by itself: panels 20' 0\" along the length are over 8' 0\"",
        "It will crack by itself: panels 20' 0\" across the width are over 8' 0\"",
    ]


def test_only_one_count_given_takes_the_other_from_the_spacing() -> None:
    answer = joints(thickness=4, length=240, width=192, along=4)
    assert (answer["panels_along"], answer["panels_across"]) == (4, 2)


def test_a_panel_near_the_limit_is_cautioned_not_failed() -> None:
    answer = joints(length=96, width=72, along=1, across=1)
    assert answer["verdict"] == "pass"
    assert answer["cautions"] == [
        "The long side is 1.33 times the short one: within the limit, and 1.25 or less is better."
    ]


def test_the_most_that_is_set_caps_the_rule() -> None:
    assert joints(thickness=10, slump=3)["spacing"] == 216
    assert joints(thickness=10, slump=3)["table_spacing"] == 360


def test_an_early_entry_saw_cuts_one_inch() -> None:
    assert joints(thickness=8, early_entry=True)["joint_depth"] == 1


@given(sides, sides, spacings, ratios)
def test_every_pad_has_a_layout_that_passes(length: float, width: float, most: float, ratio: float) -> None:
    answer = joints(thickness=12, slump=3, length=length, width=width, most_spacing=most, most_ratio=ratio)
    assert answer["verdict"] == "pass"
    assert max(answer["panel_length"], answer["panel_width"]) <= answer["spacing"] * (1 + 1e-9)
    assert answer["panel_length"] * answer["panels_along"] == pytest.approx(length)
    assert answer["panel_width"] * answer["panels_across"] == pytest.approx(width)


@given(st.floats(60, 720), st.floats(60, 720), st.floats(60, 240), ratios)
def test_no_layout_has_fewer_panels(length: float, width: float, spacing: float, ratio: float) -> None:
    """Against every layout of up to 30 x 30 panels."""
    along, across = least_panels(length, width, spacing, ratio)
    fitting = [
        (a * b, sawing(a, b, length, width))
        for a in range(1, 31)
        for b in range(1, 31)
        if max(length / a, width / b) <= spacing and ratio_of(length / a, width / b) <= ratio
    ]
    best = min(fitting)
    assert along * across <= best[0]
    if along * across == best[0]:
        assert sawing(along, across, length, width) <= best[1] * (1 + 1e-9)


@given(sides, sides)
def test_turning_the_pad_turns_the_layout(length: float, width: float) -> None:
    one = joints(length=length, width=width)
    other = joints(length=width, width=length)
    assert one["panels_along"] * one["panels_across"] == other["panels_along"] * other["panels_across"]
    assert one["joints"] == pytest.approx(other["joints"])
