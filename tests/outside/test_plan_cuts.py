"""The cut lists of whole jobs against a solver of another kind: scipy's milp (HiGHS) over every way to cut a stick."""

from __future__ import annotations

from collections import Counter

import pytest
from scipy.optimize import Bounds, LinearConstraint, milp

from build_tools.plan.order_quantities import ordered
from tests.build_tools.plan.fit_out_jobs import closet, planned
from tests.outside.test_doors_cut_list import ways_to_cut

KERF = 1 / 8
STICKS = [72.0, 96.0, 144.0, 192.0]
"""Rods are sold in 6, 8, 12 and 16 ft."""


def least(lengths: dict[float, int]) -> float:
    """The least length of sticks from which these pieces come, with a kerf between each two; proved by HiGHS."""
    taken = [length + KERF for length in lengths]
    ways = [(stick, way) for stick in STICKS for way in ways_to_cut(taken, stick + KERF)]
    rows = [[way[at] for _, way in ways] for at in range(len(taken))]
    found = milp(
        [stick for stick, _ in ways],
        constraints=LinearConstraint(rows, list(lengths.values())),
        integrality=[1] * len(ways),
        bounds=Bounds(0, sum(lengths.values())),
    )
    assert found.success
    return float(found.fun)


@pytest.mark.parametrize(
    "widths",
    [
        ["30 in", "30 in", "60 in", "72 in"],
        ["47 in", "47 in", "50 in", "50 in", "64 in", "64 in"],
        ["36 in", "40 in", "41 in", "66 in", "66 in", "66 in", "95 in"],
    ],
)
def test_the_rods_of_a_job_take_the_least_that_another_solver_proves(widths: list[str]) -> None:
    plan = planned({f"c{number}": closet(width) for number, width in enumerate(widths)})
    (rods,) = (each for each in ordered(plan) if each.material == "closet-rod-stock")
    assert rods.cuts is not None
    pieces = Counter(float(width.removesuffix(" in")) - 0.125 for width in widths)
    assert rods.quantity * 12 == pytest.approx(least(pieces))
    assert rods.cuts.answer["proved"]
