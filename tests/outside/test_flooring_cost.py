"""Present worth against a general solver, and the textbook factor for a series of equal costs."""

from __future__ import annotations

import pytest
from scipy.optimize import brentq

from calculators.flooring.cost_over_time import cost_over_time
from calculators.run import run


@pytest.mark.parametrize(("rate", "years"), [(1, 10), (3, 25), (5, 40), (8, 60)])
def test_series_present_worth_factor(rate: float, years: int) -> None:
    """Engineering economy, from memory: equal costs of 1 at the end of each of n years are worth
    ((1 + i)^n - 1) / (i (1 + i)^n) today."""
    answer = run(cost_over_time, yearly(rate, years))
    part = rate / 100
    assert answer["total_first"] == pytest.approx(((1 + part) ** years - 1) / (part * (1 + part) ** years))


def test_the_rate_at_which_two_floors_cost_the_same() -> None:
    """12 now against 2 a year for 10 years: the rate by a general solver (scipy) of sum 2 / (1 + i)^n = 12."""
    rate = 100 * brentq(lambda i: sum(2 / (1 + i) ** n for n in range(1, 11)) - 12, 1e-6, 1)
    both = yearly(rate, 10) | {"refinish_a": 2.0, "install_b": 12.0, "refinish_every_b": 0.0, "replace_every_b": 0.0}
    answer = run(cost_over_time, both)
    assert answer["total_first"] == pytest.approx(answer["total_second"], abs=1e-9)


def yearly(rate: float, years: int) -> dict[str, float]:
    """A first floor that costs nothing to lay and 1 dollar every year."""
    return {
        "area": 1.0,
        "years": float(years),
        "rate": float(rate),
        "install_a": 0.0,
        "refinish_a": 1.0,
        "refinish_every_a": 1.0,
    }
