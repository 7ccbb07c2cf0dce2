"""Figures that go two ways from nothing: the words of the way, and never a sign."""

from __future__ import annotations

import pytest

from calculators.answering import read_one, shown_value
from calculators.declaration import Calculator, Input, Output, Refused
from calculators.limits import limits, unusual_values
from calculators.registry import CALCULATORS
from calculators.run import compute

RISE = Input(
    "rise",
    "Floor",
    "length",
    "in",
    least=-2,
    most=4,
    usual=(-0.25, 0.5),
    ways=("floor above flange", "flange above floor"),
)
SIGNED = ("temperature",)
"""Quantities whose sign everybody reads alike."""


def read(text: str, metric: bool = False) -> float:
    """A text as a value of the inside."""
    value = read_one(RISE, text, "rise", "Floor", metric)
    assert isinstance(value, float)
    return value


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("5/8 in floor above flange", 0.625),
        ("5/8 flange above floor", -0.625),
        ('1 1/2" Flange Above Floor', -1.5),
        ("0", 0.0),
        ("0 in floor above flange", 0.0),
    ],
)
def test_a_figure_with_its_way(text: str, value: float) -> None:
    """The words say which way, in any case of letters; nothing needs none."""
    assert read(text) == value


def test_a_way_in_millimetres() -> None:
    """A bare figure means the unit of who works in metric."""
    assert read("25.4 flange above floor", metric=True) == pytest.approx(-1)


@pytest.mark.parametrize(
    ("text", "given", "size"),
    [("5/8 in", "5/8 in", "5/8 in"), ("-1/4", "-1/4", "1/4"), ("- 1/4 in flange above floor", "- 1/4 in", "1/4 in")],
)
def test_a_sign_is_no_way(text: str, given: str, size: str) -> None:
    """A figure without its way, or with a sign, is refused with what to write."""
    with pytest.raises(Refused) as caught:
        read(text)
    assert caught.value.message == (
        f"Floor: '{given}' does not say which way: write '{size} floor above flange' or '{size} flange above floor'"
    )


def test_limits_are_told_by_their_way() -> None:
    """Three inches of the second way are more than its two, never less."""
    assert limits([RISE], {"rise": -3}) == [
        ("rise", "Floor: 3 in flange above floor is more than the 2 in flange above floor that this answers for")
    ]
    assert unusual_values([RISE], {"rise": 1}) == [
        "Floor: 1 in floor above flange is outside the usual 1/4 in flange above floor to 1/2 in floor above flange; "
        "measure it again"
    ]


def test_an_output_is_rounded_to_its_safe_side_both_ways() -> None:
    """Rounded down, what is left is less and what is short is more."""
    left = Output("left", "Left", "number", step=0.1, rounds="down", ways=("", "short"))
    assert [shown_value(left, value, False) for value in (0.19, 0.0, -0.11)] == ["0.1", "0", "0.2 short"]


@pytest.mark.parametrize("calculator", CALCULATORS.values(), ids=lambda each: each.name)
def test_no_input_of_the_book_takes_a_sign(calculator: Calculator) -> None:
    """What may be less than nothing says its two ways in words, but for degrees of heat."""
    inputs = [column for item in calculator.inputs for column in (item, *item.columns)]
    signed = [item for item in inputs if item.least is not None and item.least < 0 and item.quantity not in SIGNED]
    assert [item.name for item in signed if len(item.ways) != 2 or not all(item.ways)] == []


def test_what_is_taught_and_what_is_asked_is_one_thing() -> None:
    """A floor half an inch above the flange takes the thick ring; a flange half an inch above the floor does not."""
    ring = CALCULATORS["wax-ring"]
    assert compute(ring, {"rise": "1/2 in floor above flange"})["ring_to_use"] == "1-1/2 in ring"
    assert compute(ring, {"rise": "1/2 in flange above floor"})["ring_to_use"] == "1 in ring"
