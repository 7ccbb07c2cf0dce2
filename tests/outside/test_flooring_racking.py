"""Racking against what is published of end joints and grades, and against a bound that no layout can beat."""

from __future__ import annotations

import pytest

from calculators.flooring.rack_room import rack_room
from calculators.flooring.racking.pile import drawn_pile
from calculators.flooring.racking.plan import Pile, boards_of, rack, rules_of
from calculators.run import compute

RULES = rules_of(6, 1, 18, 6, 0.125)


@pytest.mark.parametrize(("grade", "average"), [("select", 39), ("No. 1 common", 33), ("No. 2 common", 27)])
def test_a_drawn_pile_averages_as_the_grade_does(grade: str, average: int) -> None:
    """Oak flooring association, grading rules: average lengths of 3-1/4, 2-3/4 and 2-1/4 ft, boards of 9 to 84 in;
    all from memory."""
    boards = drawn_pile(16 * 12 * 4000, 9 * 16, 84 * 16, average * 16, 3)
    lengths = [board.length / 16 for board in boards]
    assert sum(lengths) / len(lengths) == pytest.approx(average, rel=0.05)
    assert min(lengths) >= 9
    assert max(lengths) <= 84


def test_end_joints_stand_six_inches_apart() -> None:
    """Oak flooring association, installation: end joints of adjacent runs at least 6 in apart. It is where the input
    starts, and the plan keeps it."""
    declared = rack_room.input("end_joint")
    assert declared is not None
    assert declared.default == 6
    assert compute(rack_room, {"room": "12' x 6'"})["closest"] >= 6


@pytest.mark.parametrize("seed", range(6))
def test_no_layout_uses_less_than_the_best_choice_of_boards(seed: int) -> None:
    """Integer arithmetic: whichever boards are used, their lengths are some subset sum of the pile, and at least what
    the rows come to. The least such sum, found by going through all of them (a dynamic program over bits), bounds every
    layout; the search comes within 1 % of it."""
    plan = [{"name": "", "less": False, "points": [[0, 0], [120, 0], [120, 60], [0, 60]]}]
    racked = rack(plan, 0.25, 2.25, 1, RULES, Pile([], 33, 9, 84, 15, seed))
    assert racked.boards == boards_of(Pile([], 33, 9, 84, 15, seed), racked.lineal)
    sums = 1
    for board in racked.boards:
        sums |= sums << board.length
    beyond = sums >> racked.lineal
    least = racked.lineal + (beyond & -beyond).bit_length() - 1
    used = racked.layout.used_length(racked.boards)
    assert least <= used <= least * 1.01
