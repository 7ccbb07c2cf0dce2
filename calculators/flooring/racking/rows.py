"""The rows of boards that a plan asks for: where each starts and ends, with the gap kept at every wall.

Boards run along x. A row that a jog of the wall crosses is as long as its longest place; the boards are notched
there. Where walls slant, the end is cut at their angle and the row counts to its longer point.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor
from typing import Any

from calculators.flooring.racking.pile import SIXTEENTHS

NUDGE = 1e-6
"""Inches to the side of a corner, so that a cut through the plan never runs along a wall."""
Spans = list[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of a row between two walls: the row's number from 0, and its ends in sixteenths from the left."""

    row: int
    start: int
    end: int

    @property
    def length(self) -> int:
        """How long it is."""
        return self.end - self.start

    @property
    def ends(self) -> tuple[int, int]:
        """Where it starts and ends."""
        return self.start, self.end


@dataclass(frozen=True, slots=True)
class Band:
    """A row's top and bottom in inches down the plan."""

    top: float
    bottom: float


def across(points: list[list[float]], y: float) -> Spans:
    """Where a level cut through a shape is inside of it."""
    cuts = []
    for at, point in enumerate(points):
        x1, y1 = points[at - 1]
        x2, y2 = point
        if (y1 < y) != (y2 < y):
            cuts.append(x1 + (x2 - x1) * (y - y1) / (y2 - y1))
    cuts.sort()
    return list(zip(cuts[::2], cuts[1::2], strict=True))


def joined(spans: Spans) -> Spans:
    """The spans with those that touch made one.

    >>> joined([(5, 9), (0, 5), (12, 14)])
    [(0, 9), (12, 14)]
    """
    whole: Spans = []
    for start, end in sorted(spans):
        if whole and start <= whole[-1][1] + NUDGE:
            whole[-1] = (whole[-1][0], max(whole[-1][1], end))
        else:
            whole.append((start, end))
    return whole


def common(first: Spans, second: Spans) -> Spans:
    """What lies in both.

    >>> common([(0, 9)], [(2, 4), (6, 12)])
    [(2, 4), (6, 9)]
    """
    both = [(max(a, c), min(b, d)) for a, b in first for c, d in second]
    return [(start, end) for start, end in both if end > start]


def less(spans: Spans, taken: Spans) -> Spans:
    """The spans without what is taken off.

    >>> less([(0, 9)], [(2, 4)])
    [(0, 2), (4, 9)]
    """
    for start, end in taken:
        spans = [part for a, b in spans for part in ((a, min(b, start)), (max(a, end), b)) if part[1] > part[0]]
    return spans


def floor_at(plan: list[dict[str, Any]], y: float) -> Spans:
    """Where a level cut through the whole plan is floor."""
    floor_spans = joined([span for shape in plan if not shape["less"] for span in across(shape["points"], y)])
    return less(floor_spans, [span for shape in plan if shape["less"] for span in across(shape["points"], y)])


def laid_at(plan: list[dict[str, Any]], corners: list[float], y: float, gap: float) -> Spans:
    """Where boards may lie on a level cut: floor for a gap's width above and below, and a gap from either end."""
    inside = floor_at(plan, y)
    cuts = [y - gap + NUDGE, y + gap - NUDGE]
    cuts += [corner + side for corner in corners if abs(corner - y) < gap for side in (-NUDGE, NUDGE)]
    for cut in cuts if gap > 0 else []:
        inside = common(inside, floor_at(plan, cut))
    return [(start + gap, end - gap) for start, end in inside if end - start > 2 * gap]


def runs(plan: list[dict[str, Any]], bands: list[Band], gap: float) -> list[Run]:
    """The runs of all rows, row by row and left to right.

    >>> room = {"name": "", "less": False, "points": [[0, 0], [120, 0], [120, 48], [0, 48]]}
    >>> [(run.row, run.start / 16, run.end / 16) for run in runs([room], [Band(0.25, 2.5), Band(2.5, 4.75)], 0.25)]
    [(0, 0.25, 119.75), (1, 0.25, 119.75)]
    """
    corners = sorted({float(y) for shape in plan for _, y in shape["points"]})
    turns = sorted({corner + side for corner in corners for side in (-gap, 0.0, gap)})
    found = []
    for row, band in enumerate(bands):
        edges = [band.top, *(y for y in turns if band.top < y < band.bottom), band.bottom]
        cuts = [edges[0] + NUDGE, *(y + side for y in edges[1:-1] for side in (-NUDGE, NUDGE)), edges[-1] - NUDGE]
        spans = joined([span for cut in cuts for span in laid_at(plan, corners, cut, gap)])
        for start, end in spans:
            run = Run(row, ceil(start * SIXTEENTHS - 0.001), floor(end * SIXTEENTHS + 0.001))
            if run.length >= SIXTEENTHS:
                found.append(run)
    return found
