"""Room for the bowl against the codes: at the limit it passes, 1/16 in less fails. Each fact with its clause."""

from __future__ import annotations

import pytest

from calculators.plumbing.water_closet_place import water_closet_place

HAIR = 1 / 16


def results(**inputs: float | str) -> dict[str, str]:
    """Each row's result by its name."""
    return {str(row["what"]): str(row["result"]) for row in water_closet_place(**inputs)["checks"]}


@pytest.mark.parametrize(
    ("clause", "code", "side_is", "limit"),
    [
        ("IPC 405.3.1", "ipc-irc", "wall", 15),
        ("IPC 405.3.1", "ipc-irc", "fixture", 30),
        ("UPC 402.5", "upc", "wall", 15),
        ("UPC 402.5", "upc", "fixture", 30),
    ],
)
def test_sides(clause: str, code: str, side_is: str, limit: float) -> None:
    """Centre to a side wall or obstruction, and centre to centre between fixtures."""
    assert results(code=code, left_is=side_is, left=limit)[f"left to {side_is}"] == "passes"
    assert results(code=code, left_is=side_is, left=limit - HAIR)[f"left to {side_is}"] == "short by 1/16 in"


@pytest.mark.parametrize(
    ("clause", "code", "limit"),
    [("IPC 405.3.1, IRC R307.1", "ipc-irc", 21), ("UPC 402.5", "upc", 24)],
)
def test_front(clause: str, code: str, limit: float) -> None:
    """Clear in front of the bowl."""
    nose = 18.0
    assert results(code=code, nose=nose, front=nose + limit)["front of the bowl"] == "passes"
    assert results(code=code, nose=nose, front=nose + limit - HAIR)["front of the bowl"] == "short by 1/16 in"


@pytest.mark.parametrize(
    ("left", "result"),
    [(15.9375, "short by 1/16 in"), (16, "passes"), (17, "passes"), (18, "passes"), (18.0625, "over by 1/16 in")],
)
def test_2010_ada_604_2_centreline(left: float, result: str) -> None:
    """2010 ADA Standards 604.2: 16 in at least and 18 in at most from the side wall."""
    assert results(code="ada", left=left, right=60, front=50)["centre to the wall beside"] == result


def test_2010_ada_604_3_1_clearance() -> None:
    """2010 ADA Standards 604.3.1: 60 in from the side wall, 56 in from the rear wall."""
    enough = results(code="ada", left=16, right=44, rough_in=12, front=44)
    assert enough["clear width, side to side"] == "passes"
    assert enough["clear depth from the back wall"] == "passes"
    short = results(code="ada", left=16, right=44 - HAIR, rough_in=12, front=44 - HAIR)
    assert short["clear width, side to side"] == "short by 1/16 in"
    assert short["clear depth from the back wall"] == "short by 1/16 in"


@pytest.mark.parametrize("rough", [10, 12, 14])
def test_stock_rough_ins(rough: float) -> None:
    """Common practice, no source: bowls are made for 10, 12 and 14 in."""
    assert water_closet_place(rough_in=rough)["bowl"] == f"{rough} in bowl"
