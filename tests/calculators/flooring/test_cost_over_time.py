"""Two floors over the years: each cost in its year, break-even, and the sums beside plain Python ones."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.flooring.cost_over_time import cost_in, cost_over_time
from calculators.run import compute, run

prices = st.integers(0, 60).map(lambda quarters: quarters / 4)
every = st.integers(0, 40).map(float)


def answer(**given: Any) -> dict[str, Any]:
    return run(cost_over_time, given)


@given(install=prices, refinish=prices, refinish_every=every, replace=prices, replace_every=every)
def test_the_sum_is_that_of_the_years_counted_one_by_one(
    install: float, refinish: float, refinish_every: float, replace: float, replace_every: float
) -> None:
    """Counted anew: the age of the floor goes up by one a year and back to 0 when it is replaced."""
    total, age = install, 0
    for _ in range(50):
        age += 1
        if replace_every and age == replace_every:
            total, age = total + replace, 0
        elif refinish_every and age % refinish_every == 0:
            total += refinish
    found = answer(
        area=1.0,
        years=50.0,
        install_a=install,
        refinish_a=refinish,
        refinish_every_a=refinish_every,
        replace_a=replace,
        replace_every_a=replace_every,
    )
    assert found["total_first"] == pytest.approx(total)


@given(rate=st.floats(0, 20), years=st.integers(1, 60).map(float))
def test_a_discount_never_makes_it_dearer(rate: float, years: float) -> None:
    plain, less = answer(years=years), answer(years=years, rate=rate)
    assert less["total_first"] <= plain["total_first"] + 1e-9
    assert less["total_second"] <= plain["total_second"] + 1e-9


@given(years=st.integers(1, 99).map(float))
def test_cost_never_falls(years: float) -> None:
    assert answer(years=years + 1)["total_first"] >= answer(years=years)["total_first"]


@pytest.mark.parametrize(
    ("year", "cost"), [(0, 12), (1, 0), (10, 4), (20, 4), (25, 14), (30, 0), (35, 4), (45, 4), (50, 14)]
)
def test_replacing_starts_the_years_of_refinishing_anew(year: int, cost: float) -> None:
    assert cost_in(year, 12, 4, 10, 14, 25) == cost


@pytest.mark.parametrize(
    ("given", "words", "year"),
    [
        ({}, "the first floor has cost no more from year 24, and stays so from year 36", 24),
        ({"refinish_every_a": 0.0}, "the first floor has cost no more from year 12 on", 12),
        ({"replace_every_b": 0.0}, "the first floor costs more to lay and does not make it up in 40 years", 0),
        ({"years": 30.0}, "the first floor has cost no more in year 24, but not at the end", 24),
        ({"install_b": 12.0}, "both cost the same to lay", 1),
        (
            {"install_a": 2.0, "refinish_every_a": 2.0, "replace_every_b": 0.0},
            "the second floor has cost no more from year 2 on",
            2,
        ),
    ],
)
def test_break_even(given: dict[str, float], words: str, year: int) -> None:
    found = answer(**given)
    assert (found["break_even"], found["break_even_year"]) == (words, year)


def test_years_are_listed_where_something_is_paid() -> None:
    found = answer(area=1.0, years=25.0)
    assert [(row["year"], row["first"], row["second"]) for row in found["years_list"]] == [
        (0, 12, 6),
        (10, 16, 6),
        (12, 16, 14),
        (20, 20, 14),
        (24, 20, 22),
        (25, 20, 22),
    ]


def test_the_floor_asked_for_stands_alone() -> None:
    assert answer()["cost"] == answer()["total_first"]
    assert answer(asked="second")["cost"] == answer()["total_second"]


@pytest.mark.parametrize(
    ("first", "second", "says"),
    [(3.0, 9.0, "the first floor"), (9.0, 3.0, "the second floor"), (5.0, 5.0, "neither: both have cost the same")],
)
def test_the_cheaper(first: float, second: float, says: str) -> None:
    found = answer(install_a=first, install_b=second, refinish_every_a=0.0, replace_every_b=0.0)
    assert found["cheaper"] == says


def test_cautions_stand_where_they_belong() -> None:
    assert answer()["cautions"] == []
    assert "Nothing is ever done to the first floor" in answer(refinish_every_a=0.0)["cautions"][0]
    assert "second floor is replaced in the last year" in answer(years=36.0)["cautions"][0]


def test_working_says_the_sums() -> None:
    assert compute(cost_over_time, {"rate": "3 %"})["working"] == [
        "300 sq ft to lay: 3600 and 1800 dollars",
        "the first floor: refinished every 10 years for 4 dollars a sq ft, never replaced",
        "the second floor: never refinished, replaced every 12 years for 8 dollars a sq ft",
        "a cost of year n counts as cost / (1 + 0.03)^n",
    ]


def test_every_price_says_that_it_is_invented() -> None:
    helps = [item.help for item in cost_over_time.inputs if item.unit == "dollars"]
    assert helps == ["Invented: put in your own price."] * 6
