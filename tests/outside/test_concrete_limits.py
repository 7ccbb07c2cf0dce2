"""The approach's slopes and the crew's standard figures against published limits."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.concrete.approach_concrete import approach_concrete
from calculators.declaration import Answer
from calculators.run import run

STANDARD: dict[str, Any] = {one.name: one.default for one in approach_concrete.inputs}


def approach(**changes: Any) -> Answer:
    """The answer for the standard inputs with these changes."""
    return run(approach_concrete, changes)


@pytest.mark.parametrize(
    ("slope", "passes"), [(0.0, True), (0.02, True), (1 / 48, True), (1 / 47, False), (1 / 20, False)]
)
def test_cross_slope_of_a_walk(slope: float, passes: bool) -> None:
    """2010 ADA Standards 403.3 and 405.3: 1:48 at most."""
    assert (approach(slope=slope)["access"] == "within the limits") == passes


@pytest.mark.parametrize(("flare", "passes"), [(60, True), (50, True), (49.5, False), (36, False)])
def test_flare_of_a_curb_ramp(flare: float, passes: bool) -> None:
    """2010 ADA Standards 406.3: 1:10 at most. A 6 in curb with a 1 in lip needs 50 in."""
    assert (approach(left=flare)["access"] == "within the limits") == passes


@pytest.mark.parametrize(("wing", "passes"), [(72, True), (60, True), (59, False)])
def test_wing_that_carries_the_walk_is_a_ramp(wing: float, passes: bool) -> None:
    """2010 ADA Standards 405.2: 1:12 at most. 5 in of rise needs 60 in."""
    assert (approach(side="wing", right=wing)["access"] == "within the limits") == passes


def test_change_of_grade() -> None:
    """TxDOT Roadway Design Manual, driveway profiles: 3 % suits most vehicles, 6 to 8 % may work."""
    assert 0.06 <= STANDARD["grade_break"] <= 0.08
    assert approach(walk_crosses=False, slope=0.06, drive_slope=0.06)["cautions"] == []
    assert len(approach(walk_crosses=False, slope=0.065, drive_slope=0.06)["cautions"]) == 1


@pytest.mark.parametrize(
    ("name", "least", "most"),
    [
        # A city's code asks 6 in of concrete at a driveway entrance: Landis NC 93.079(A); West Dundee IL the same where
        # a walk runs through the drive.
        ("thickness", 6, 6),
        # Common practice, no source: 8 in at the curb; 1 to 2 % of slope, half a percent short of the walk's limit.
        ("edge_thickness", 8, 8),
        ("slope", 0.01, 1 / 48 - 0.005),
        # A supplier's worked example takes 5 to 10 % over.
        ("waste", 5, 10),
        # Common practice, no source: 4 in under a walk, 6 in under wheels.
        ("base_thickness", 4, 6),
    ],
)
def test_standards_lie_where_practice_has_them(name: str, least: float, most: float) -> None:
    assert least <= STANDARD[name] <= most


def test_no_bars_unless_somebody_asks() -> None:
    """Common practice, no source: a residential approach is plain concrete."""
    assert STANDARD["reinforced"] is False
