"""The shape of a driveway approach: area, volume, edges and bars.

Seen from above it is a strip of drive (the throat) with a side piece left and right. A side piece is ``out`` wide at
the curb and ``back`` wide at the walk: a flare runs out to nothing (``back`` is 0), a wing keeps its width. y is the
distance from the curb line. All lengths are inches, areas square inches, volumes cubic inches.

The throat rises from the curb by ``slope``. A side piece rises with it, and outwards by ``rise``, its own slope along
the curb: from the drive's edge to the top of the curb. So every surface is a plane, and what follows is exact.
"""

from __future__ import annotations

from math import sqrt

from calculators.declaration import refuse
from calculators.writing import feet_inches, inches, whole


def width_at(front: float, back: float, depth: float, y: float) -> float:
    """Width from side to side at the distance y from the curb.

    >>> width_at(264, 144, 72, 36)
    204.0
    """
    return front + (back - front) * y / depth


def side_area(out: float, back: float, depth: float) -> float:
    """Area of one side piece, seen from above: a triangle for a flare, a rectangle for a wing.

    >>> [side_area(60, 0, 72), side_area(60, 60, 72)]
    [2160.0, 4320.0]
    """
    return (out + back) / 2 * depth


def tilt(slope: float, rise: float) -> float:
    """How much larger a sloping surface is than its plan: 1 for a level one.

    >>> tilt(0, 0.75)
    1.25
    """
    return sqrt(1 + slope * slope + rise * rise)


def thickening(front: float, back: float, depth: float, extra: float, flat: float, taper: float) -> float:
    """Concrete that a thickened curb edge adds under the slab.

    ``extra`` is added straight down for ``flat`` inches from the curb line, and runs out to nothing over ``taper``.
    Each part is as wide as the approach is there, so the prismoidal formula (both ends, four times the middle, over
    six) gives it exactly.

    >>> thickening(100, 100, 72, 2, 12, 12)
    3600.0
    """
    at_curb = width_at(front, back, depth, 0)
    mid_flat = width_at(front, back, depth, flat / 2)
    at_flat = width_at(front, back, depth, flat)
    mid_taper = width_at(front, back, depth, flat + taper / 2)
    whole_depth = extra * flat / 6 * (at_curb + 4 * mid_flat + at_flat)
    running_out = extra * taper / 6 * (at_flat + 4 * mid_taper / 2)
    return whole_depth + running_out


def side_edge(out: float, back: float, depth: float, slope: float, rise: float) -> float:
    """True length of a side's outer edge, from the curb to the walk: what its form measures.

    >>> side_edge(0, 0, 72, 0, 0)
    72.0
    """
    run = out - back
    up = slope * depth - rise * run
    return sqrt(run * run + depth * depth + up * up)


def straight_edge(throat: float, left: float, right: float, left_rise: float, right_rise: float) -> float:
    """True length of an edge along the curb or along the walk, side pieces included."""
    return throat + left * sqrt(1 + left_rise * left_rise) + right * sqrt(1 + right_rise * right_rise)


def lapped(length: float, lap: float, stock: float) -> float:
    """Steel for one run of that length, from bars ``stock`` long with laps.

    >>> [lapped(200, 24, 240), lapped(300, 24, 240), lapped(480, 24, 240), lapped(200, 24, 120)]
    [200, 324, 528, 224]
    """
    if length <= stock:
        return length
    return length + lap * whole((length - stock) / (stock - lap), "up")


def bars_along(
    front: float, back: float, depth: float, spacing: float, cover: float, lap: float, stock: float
) -> float:
    """Total length of the bars that run along the curb, evenly spread at the spacing or a little closer."""
    reach = depth - 2 * cover
    gaps = whole(reach / spacing, "up")
    total = 0.0
    for i in range(gaps + 1):
        y = cover + reach * i / gaps
        total = total + lapped(width_at(front, back, depth, y) - 2 * cover, lap, stock)
    return total


def depth_at(out: float, back: float, depth: float, beyond: float) -> float:
    """How far a side piece reaches from the curb, at a distance ``beyond`` the throat's edge.

    >>> [depth_at(60, 0, 72, 30), depth_at(60, 60, 72, 30)]
    [36.0, 72]
    """
    return depth if beyond <= back else depth * (out - beyond) / (out - back)


def bars_down(
    throat: float,
    left: float,
    left_back: float,
    right: float,
    right_back: float,
    depth: float,
    spacing: float,
    cover: float,
    lap: float,
    stock: float,
) -> float:
    """Total length of the bars that run from the curb to the walk; in a flare they are as long as it reaches."""
    reach = throat + left + right - 2 * cover
    gaps = whole(reach / spacing, "up")
    total = 0.0
    for i in range(gaps + 1):
        x = cover + reach * i / gaps - left
        length = depth
        if x < 0:
            length = depth_at(left, left_back, depth, -x)
        if x > throat:
            length = depth_at(right, right_back, depth, x - throat)
        if length > 2 * cover:
            total = total + lapped(length - 2 * cover, lap, stock)
    return total


def bars_both_ways(
    throat: float,
    left: float,
    left_back: float,
    right: float,
    right_back: float,
    depth: float,
    spacing: float,
    cover: float,
    lap: float,
    stock: float,
) -> float:
    """Total length of the bars of a mat; a rectangle is a throat alone. Inches.

    A lap of more than half of a bar is refused: the two laps of one bar would meet.

    >>> bars_both_ways(240, 0, 0, 0, 0, 120, 60, 0, 24, 240)
    1320.0
    """
    if lap > stock / 2:
        refuse("bar_lap", f"A lap of {inches(lap)} is more than half of a bar of {feet_inches(stock)}.")
    front = throat + left + right
    back = throat + left_back + right_back
    along = bars_along(front, back, depth, spacing, cover, lap, stock)
    return along + bars_down(throat, left, left_back, right, right_back, depth, spacing, cover, lap, stock)


def side_rise(out: float, height: float) -> float:
    """Slope of a side piece along the curb; 0 where there is none."""
    return 0.0 if out == 0 else height / out
