"""Runs of cabinets against an exhaustive search: no other widths in steps of 3 in leave smaller fillers."""

from __future__ import annotations

from itertools import combinations_with_replacement

import pytest

from calculators.doors.cabinet_run import cabinet_run


@pytest.mark.parametrize("wall", [60.0, 71.5, 84.25, 96.0, 99.875])
@pytest.mark.parametrize("count", [1, 2, 3])
def test_no_choice_of_widths_fills_the_wall_better(wall: float, count: int) -> None:
    """Every choice of stock widths from 9 to 96 in (common practice: steps of 3 in), with 1 in at least at each end."""
    stock = range(9, 97, 3)
    best = max(sum(some) for some in combinations_with_replacement(stock, count) if sum(some) <= wall - 2)
    pieces = [{"name": "Base", "kind": "cabinet", "width": 0.0}] * count
    assert cabinet_run(pieces=pieces, wall=wall)["taken"] == best
