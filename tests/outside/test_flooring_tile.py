"""Tile floors against what is printed elsewhere and a general geometry library. Each case names its source."""

from __future__ import annotations

from typing import Any

import pytest
from shapely.geometry import box
from shapely.ops import unary_union

from calculators.flooring.tile_joints import bed_of, joint_share
from calculators.flooring.tile_layout import balanced, positions
from calculators.flooring.tile_take_off import tile_take_off
from calculators.run import run

CUBIC_INCHES = 1728


def floor(**inputs: Any) -> dict[str, Any]:
    """The answer with these changes to the defaults."""
    defaults = {declared.name: declared.default for declared in tile_take_off.inputs}
    return run(tile_take_off, {**defaults, **inputs})


# A dealer's printed chart for sanded grout, full joint depth and 10 % waste: 0.94 lb a sq ft for tiles of 3/8 in x
# 3/8 in x 3/8 in with joints of 1/16 in. Dry weight of the grout from memory, about 100 lb a cu ft of joint.
def test_grout_of_a_printed_chart() -> None:
    pounds = joint_share(0.375, 0.375, 0.0625) * 0.375 / 12 * 100 * 1.10
    assert pounds == pytest.approx(0.94, rel=0.05)


# The rule on grout bags (from memory): kilograms a m2 = (A + B) / (A x B) x C x D x 1.6, all in mm. It takes the joints
# without their crossings, so for large tiles with narrow joints it says a little more than the joints hold.
@pytest.mark.parametrize(("a", "b", "c", "d"), [(300, 300, 3, 8), (600, 300, 3, 10), (450, 450, 5, 9)])
def test_grout_by_the_rule_on_the_bag(a: float, b: float, c: float, d: float) -> None:
    kilograms = (a + b) / (a * b) * c * d * 1.6
    ours = joint_share(a / 25.4, b / 25.4, c / 25.4) * d * 1.6
    assert ours <= kilograms
    assert ours == pytest.approx(kilograms, rel=0.03)


# Trade pages on coverage of a 50 lb bag: 1/4 x 1/4 in notch 80 to 100 sq ft, 1/4 x 3/8 in 50 to 80, 1/2 x 1/2 in 40 to
# 50 (the lower end of the middle one, 50 to 60, from memory).
@pytest.mark.parametrize(
    ("wide", "deep", "least", "most"), [(0.25, 0.25, 80, 100), (0.25, 0.375, 50, 80), (0.5, 0.5, 40, 50)]
)
def test_a_bag_of_mortar_covers_what_is_printed(wide: float, deep: float, least: float, most: float) -> None:
    assert least <= 0.6 / (bed_of(wide, deep) / 12) <= most


# ANSI A108.02, 4.3.7, as trade journals quote it: 1/32 in beside the tile's warp where joints are under 1/4 in, 1/16 in
# from 1/4 in. EJ171, as a trade journal quotes it: movement joints inside at most 25 ft apart each way.
def test_lippage_and_movement_joints_of_the_standards() -> None:
    assert floor(joint=0.1875)["lippage"] == 1 / 32
    assert floor(joint=0.25)["lippage"] == 1 / 16
    assert floor(length=25 * 12)["movement"] == 0
    assert floor(length=26 * 12)["movement"] == 1


# Areas by a general geometry library: the joints are what the tiles leave of the floor inside the gap.
@pytest.mark.parametrize(
    ("room", "other", "tile", "joint"), [(480, 360, 12, 0.125), (331.5, 288.25, 8, 0.25), (170, 163, 4, 0.1)]
)
def test_tiles_and_joints_fill_the_room(room: float, other: float, tile: float, joint: float) -> None:
    across = balanced(room, tile, joint, 0.25)
    up = balanced(other, tile, joint, 0.25)
    xs = positions(across, tile, joint, 10000)
    ys = positions(up, tile, joint, 10000)
    pieces = [box(xs[i], ys[j], xs[i + 1], ys[j + 1]) for i in range(0, len(xs), 2) for j in range(0, len(ys), 2)]
    laid = unary_union(pieces)
    assert len(pieces) == across["pieces"] * up["pieces"]
    assert laid.area == pytest.approx(sum(piece.area for piece in pieces))
    inside = box(across["gap"], up["gap"], room - across["gap"], other - up["gap"])
    assert inside.covers(laid.buffer(-1e-9))
    share = 1 - laid.area / inside.area
    assert share == pytest.approx(joint_share(tile, tile, joint), rel=0.05)
