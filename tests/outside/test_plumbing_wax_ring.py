"""The wax ring against what the trade says, and the one figure of it that a code prints."""

from __future__ import annotations

import pytest

from calculators.plumbing.wax_ring import wax_ring


@pytest.mark.parametrize(
    ("material", "thickness"),
    [("brass", 0.125), ("plastic", 0.25), ("iron", 0.25)],
)
def test_ipc_405_4_1_flange_on_the_finished_floor(material: str, thickness: float) -> None:
    """IPC 405.4.1 prints the least thickness of a floor flange. One that lies on the finished floor stands that far
    above it, and takes the standard ring."""
    assert wax_ring(rise=-thickness)["ring_to_use"] == "1 in ring"


def test_the_default_rise_is_a_plastic_flange_on_the_finished_floor() -> None:
    """IPC 405.4.1: plastic, 1/4 in."""
    declared = wax_ring.input("rise")
    assert declared is not None
    assert declared.default == -0.25


@pytest.mark.parametrize(
    ("said", "rise", "rings"),
    [
        ("flange 1/4 in above the floor: standard ring", -0.25, ["1 in ring"]),
        ("flange up to 1/2 in above the floor: standard ring still goes down", -0.5, ["1 in ring"]),
        ("flange flush: standard by some, thick by others", 0.0, ["1 in ring", "1-1/2 in ring"]),
        ("flange up to 1/4 in below: standard by some, thick by others", 0.25, ["1 in ring", "1-1/2 in ring"]),
        ("flange 3/8 in below: thick ring", 0.375, ["1-1/2 in ring"]),
        ("flange 1/2 in below, the floor tiled over it: thick ring", 0.5, ["1-1/2 in ring"]),
    ],
)
def test_common_practice_names_the_ring(said: str, rise: float, rings: list[str]) -> None:
    """Common practice, no source. Trade pages agree on these heights, save at flush and 1/4 in below, where two
    schools stand; the answer must be one of theirs."""
    assert wax_ring(rise=rise)["ring_to_use"] in rings


@pytest.mark.parametrize(("said", "rise"), [("more than 3/4 in below: raise the flange", 0.8125)])
def test_common_practice_raises_a_flange_that_lies_deep(said: str, rise: float) -> None:
    """Common practice, no source."""
    assert wax_ring(rise=rise)["ring_to_use"].startswith("raise the flange")


def test_common_practice_does_not_set_a_bowl_on_a_flange_that_stands_high() -> None:
    """Common practice, no source: more than 1/2 in above the floor and the bowl rocks on the flange."""
    assert wax_ring(rise=-0.625)["ring_to_use"].startswith("lower the flange")
