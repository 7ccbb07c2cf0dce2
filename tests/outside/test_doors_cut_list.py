"""Cut lists against a published example, another library's solver and a proved bound."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from calculators.doors.cut_list import cut_list
from calculators.doors.cutting_stock import Question, Stock, by_columns, first_fit, pack

MM = 1 / 25.4
ROLLS = {
    1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20, 2000: 10, 2050: 12, 2100: 14, 2140: 16,
    2150: 18, 2200: 20,
}  # fmt: skip
"""The published example of paper rolls 5600 mm wide: width to how many (encyclopaedia, 'Cutting stock problem')."""


def ways_to_cut(lengths: list[float], most: float) -> list[tuple[int, ...]]:
    """Every way to cut a stick, full or not, found by trying all counts."""
    ranges = [range(int(most // length) + 1) for length in lengths]
    return [
        counts
        for counts in product(*ranges)
        if any(counts) and sum(n * length for n, length in zip(counts, lengths, strict=True)) <= most + 1e-6
    ]


def test_the_published_paper_rolls() -> None:
    """Published: 73 rolls and 0.401 % of waste, with a bound of 72.7; proved."""
    pieces = [{"length": width * MM, "count": count, "name": ""} for width, count in ROLLS.items()]
    answer = cut_list(pieces=pieces, stock=[{"length": 5600 * MM, "price": 0.0}], kerf=0.0)
    assert answer["sticks"] == 73
    assert answer["proved"]
    assert answer["waste"] == pytest.approx(0.401, abs=0.0005)
    assert answer["cut"] / (5600 * MM) == pytest.approx(72.7, abs=0.05)


def test_a_textbook_s_453_rolls() -> None:
    """Chvatal, *Linear Programming* (1983), chapter 13, from memory: rolls of 100; 97, 610, 395 and 211 of 45, 36, 31
    and 14. The linear bound is 452.25, so 453 is least."""
    packing = pack(Question((45.0, 36.0, 31.0, 14.0), (97, 610, 395, 211), (Stock(100.0, 1),), 0.0, 0.0), 5.0)
    assert (packing.cost, packing.proved) == (453, True)


def least_by_highs(lengths: list[float], counts: list[int], stocks: list[float]) -> float:
    """The least length bought, by scipy's milp (HiGHS) over every way to cut every stick."""
    ways = [(stock, way) for stock in stocks for way in ways_to_cut(lengths, stock)]
    rows = [[way[at] for _, way in ways] for at in range(len(lengths))]
    found = milp(
        [stock for stock, _ in ways],
        constraints=LinearConstraint(rows, counts),
        integrality=[1] * len(ways),
        bounds=Bounds(0, max(counts)),
    )
    assert found.success
    return float(found.fun)


small = st.dictionaries(st.integers(16, 70).map(float), st.integers(1, 6), min_size=1, max_size=4)


@settings(max_examples=20, deadline=None)
@given(wanted=small, stocks=st.lists(st.sampled_from([72.0, 96.0, 144.0]), min_size=1, max_size=2, unique=True))
def test_another_solver_finds_the_same_least(wanted: dict[float, int], stocks: list[float]) -> None:
    """scipy.optimize.milp (HiGHS), a solver that shares nothing with ours."""
    pieces = [{"length": length, "count": count, "name": ""} for length, count in wanted.items()]
    answer = cut_list(pieces=pieces, stock=[{"length": stock, "price": 0.0} for stock in stocks], kerf=0.0)
    assert answer["proved"]
    assert answer["bought"] == pytest.approx(least_by_highs(list(wanted), list(wanted.values()), stocks))


@settings(max_examples=15, deadline=None)
@given(wanted=small, stocks=st.lists(st.sampled_from([72, 96, 144]), min_size=1, max_size=2, unique=True))
def test_ways_made_one_by_one_bound_another_solver_s_least(wanted: dict[float, int], stocks: list[int]) -> None:
    """scipy.optimize.milp (HiGHS): its least lies between our bound and our cost."""
    lengths = tuple(sorted(wanted, reverse=True))
    counts = tuple(wanted[length] for length in lengths)
    question = Question(lengths, counts, tuple(Stock(float(stock), stock) for stock in stocks), 0.0, 0.0)
    sticks, least = by_columns(question, first_fit(question), 0, 5.0)
    cost = sum(question.stock[stick.stock].cost for stick in sticks)
    assert least <= least_by_highs(list(lengths), list(counts), [float(stock) for stock in stocks]) + 1e-6
    assert cost >= least_by_highs(list(lengths), list(counts), [float(stock) for stock in stocks]) - 1e-6


@settings(max_examples=20, deadline=None)
@given(wanted=st.dictionaries(st.integers(16, 96).map(float), st.integers(1, 8), min_size=1, max_size=6))
def test_first_fit_decreasing_keeps_its_guarantee(wanted: dict[float, int]) -> None:
    """Dosa (2007), from memory: first fit decreasing takes at most 11/9 of the fewest, and 6/9."""
    lengths = tuple(sorted(wanted, reverse=True))
    question = Question(lengths, tuple(wanted[length] for length in lengths), (Stock(96.0, 1),), 0.0, 0.0)
    packing = pack(question, 5.0)
    assert packing.proved
    assert packing.cost <= len(first_fit(question)) <= 11 / 9 * packing.cost + 6 / 9
