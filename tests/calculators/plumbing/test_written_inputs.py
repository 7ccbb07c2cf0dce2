"""The plumbing calculators as people write to them: units read, limits kept, results in the field's precision."""

from __future__ import annotations

import pytest

from calculators.declaration import Calculator, Refused
from calculators.plumbing.drain_fall import drain_fall
from calculators.plumbing.water_closet_place import water_closet_place
from calculators.plumbing.wax_ring import wax_ring
from calculators.run import compute, shown


def shown_of(calculator: Calculator, written: dict[str, object], *names: str) -> list[object]:
    """The named outputs as a page shows them."""
    answer = shown(calculator, compute(calculator, written))
    return [answer[name] for name in names]


def test_a_wax_ring_from_written_lengths() -> None:
    written: dict[str, object] = {"rise": "12.7 mm floor above flange", "ring": "1-1/2 in"}
    assert shown_of(wax_ring, written, "gap", "squeeze", "fit", "ring_to_use", "thick_rings") == [
        "1-1/8 in",
        "3/8 in",
        "fits",
        "1-1/2 in ring",
        "1",
    ]


def test_a_place_from_written_lengths() -> None:
    written: dict[str, object] = {"code": "upc", "front": "3' 6\"", "rough_in": "12-1/2", "back_to_add": "1/2 in"}
    names = ("result", "front_clear", "finished_rough_in", "bowl")
    assert shown_of(water_closet_place, written, *names) == ["passes", "24 in", "12 in", "12 in bowl"]


@pytest.mark.parametrize("slope", ["1/4 in/ft", "1:48", "2.0833334 %", "1/4 in per ft"])
def test_a_drain_from_any_written_slope(slope: str) -> None:
    written: dict[str, object] = {"run": "20 ft", "slope": slope, "upper_invert": "18 in below the mark"}
    assert shown_of(drain_fall, written, "fall", "lower_invert", "least_slope", "result") == [
        "5 in",
        "23 in below the mark",
        "1/8 in/ft",
        "passes",
    ]


@pytest.mark.parametrize(
    ("calculator", "written", "input"),
    [
        (wax_ring, {"rise": "5 in floor above flange"}, "rise"),
        (water_closet_place, {"code": "uniform"}, "code"),
        (drain_fall, {"slope": "2:1"}, "slope"),
        (drain_fall, {"run": "0 ft"}, "run"),
    ],
)
def test_what_lies_outside_the_limits_is_refused(
    calculator: Calculator, written: dict[str, object], input: str
) -> None:
    with pytest.raises(Refused) as caught:
        compute(calculator, written)
    assert caught.value.input == input


def test_an_unusual_recess_is_answered_with_a_caution() -> None:
    answer = compute(wax_ring, {"recess": "1-1/4 in"})
    assert answer["gap"] == 1.0
    assert answer["cautions"][0].startswith("Recess under the bowl: 1-1/4 in is outside the usual")
