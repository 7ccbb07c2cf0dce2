"""Joint spacing against the published table and the published rules."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.concrete.joint_spacing import joint_spacing
from calculators.declaration import Answer
from calculators.run import run

THICKNESSES = (4, 5, 6, 7, 8, 9, 10)


def joints(**changes: Any) -> Answer:
    """The answer for the standard inputs with these changes."""
    return run(joint_spacing, changes)


@pytest.mark.parametrize(
    ("aggregate", "slump", "feet"),
    [
        ("up-to-3-4", 5, (8, 10, 12, 14, 16, 18, 20)),
        ("over-3-4", 5, (10, 13, 15, 18, 20, 23, 25)),
        ("up-to-3-4", 3, (12, 15, 18, 21, 24, 27, 30)),
        ("over-3-4", 3, (12, 15, 18, 21, 24, 27, 30)),
    ],
)
def test_pca_table(aggregate: str, slump: float, feet: tuple[int, ...]) -> None:
    """PCA, Concrete Floors on Ground, 2nd ed. 1983, joint spacing in whole feet for 4 to 10 in (seen quoted)."""
    found = [joints(thickness=t, aggregate=aggregate, slump=slump)["table_spacing"] / 12 for t in THICKNESSES]
    assert found == list(feet)


@pytest.mark.parametrize("aggregate", ["up-to-3-4", "over-3-4"])
@pytest.mark.parametrize("slump", [5, 3])
def test_aci_302_range(aggregate: str, slump: float) -> None:
    """ACI 302.1R-96: 24 to 36 times the thickness and not over 18 ft; 8 to 12 ft for 4 in (seen quoted)."""
    assert 8 <= joints(thickness=4, aggregate=aggregate, slump=slump)["spacing"] / 12 <= 12
    for t in THICKNESSES:
        spacing = joints(thickness=t, aggregate=aggregate, slump=slump)["spacing"]
        assert min(24 * t, 216) <= spacing <= min(36 * t, 216)


@pytest.mark.parametrize(("thickness", "depth"), [(4, 1), (6, 1.5), (8, 2), (10, 2.5)])
def test_joint_depth(thickness: float, depth: float) -> None:
    """A quarter of the thickness: ACI 302.1R (from memory); CSA A23.1-94 20.2.2 asks a quarter to a third (seen)."""
    found = joints(thickness=thickness)["joint_depth"]
    assert found == depth
    assert thickness / 4 <= found <= thickness / 3


@pytest.mark.parametrize(
    ("length", "width", "verdict"),
    [(18, 12, "pass"), (15, 12, "pass"), (17, 11, "fail"), (18, 11.9, "fail")],
)
def test_panel_shape(length: float, width: float, verdict: str) -> None:
    """ACI 302.1R, ACI 360R: the long side at most 1.5 times the short one (seen quoted)."""
    answer = joints(thickness=10, length=length * 12, width=width * 12, along=1, across=1)
    assert answer["verdict"] == verdict
