"""The order of the fit-out laid out as a chart: a lane for each trade, time going down, a box for each procedure.

Each line runs through the gaps between the boxes: down out of a box, along the gap below it, down a gutter between two
lanes, along the gap above the next box, into its top. Lines that share a gap or a gutter lie side by side in tracks.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from build_tools.book.sequence import Graph, after

LETTER = 6.4
"""Width of an average letter of a box's title, in pixels."""
LINE = 15
BOX = 118
"""Width of a box."""
PAD = 8
TRACK = 5
"""Distance of two lines that lie side by side."""


@dataclass(frozen=True, slots=True)
class ProcedureBox:
    """A procedure: its place, and its title in lines. ``y`` is its upper edge."""

    id: str
    x: float
    y: float
    height: float
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SequenceChart:
    """Boxes, lines as SVG paths, and the middle of each lane."""

    width: float
    height: float
    boxes: tuple[ProcedureBox, ...]
    paths: tuple[str, ...]
    lanes: tuple[float, ...]


@dataclass(slots=True)
class _Way:
    """A line between two procedures, with the tracks that it takes."""

    start: str
    end: str
    gutter: int | None = None
    in_gutter: int = 0
    below: int = 0
    above: int = 0


def wrapped(title: str, letters: int) -> tuple[str, ...]:
    """A title in lines of at most that many letters.

    >>> wrapped("Lay a drain line to grade", 14)
    ('Lay a drain', 'line to grade')
    """
    lines = [""]
    for word in title.split():
        longer = f"{lines[-1]} {word}".strip()
        if len(longer) > letters and lines[-1]:
            lines.append(word)
        else:
            lines[-1] = longer
    return tuple(lines)


def lay_out(
    order: Sequence[str], graph: Graph, lane: dict[str, int], titles: dict[str, str], lanes: int
) -> SequenceChart:
    """The chart of procedures in that order; ``graph`` holds the links to draw, ``lane`` the lane of each."""
    row = _rows(order, graph, lane)
    ways = [_Way(start, end) for end in order for start in graph[end]]
    for way in ways:
        way.gutter = _gutter(lane[way.start], lane[way.end]) if row[way.end] > row[way.start] + 1 else None
    gutters = _tracks_of_gutters(ways, row, lane, lanes)
    lane_x, gutter_x, width = _columns(gutters, lanes)
    ports = _ports(order, ways, lane_x, lane)
    gaps = _tracks_of_gaps(ways, row, ports, gutter_x, max(row.values(), default=0) + 1)
    heights = {id: len(wrapped(titles[id], int((BOX - 2 * PAD) / LETTER))) * LINE + 2 * PAD for id in order}
    top, tall, height = _row_places(order, row, heights, gaps)
    boxes = [
        ProcedureBox(
            id, lane_x[lane[id]], top[row[id]], heights[id], wrapped(titles[id], int((BOX - 2 * PAD) / LETTER))
        )
        for id in order
    ]
    box = {each.id: each for each in boxes}
    paths = []
    for way in ways:
        x1, x2 = ports[way.start, way.end, "out"], ports[way.start, way.end, "in"]
        y1, y2 = box[way.start].y + box[way.start].height, box[way.end].y
        below = top[row[way.start]] + tall[row[way.start]] + TRACK * (way.below + 1)
        if way.gutter is None:
            bends = [(x1, y1), (x1, below), (x2, below), (x2, y2)]
        else:
            x = gutter_x[way.gutter] + TRACK * (way.in_gutter + 1)
            gap = row[way.end] - 1
            above = top[gap] + tall[gap] + TRACK * (way.above + 1)
            bends = [(x1, y1), (x1, below), (x, below), (x, above), (x2, above), (x2, y2)]
        paths.append("M" + " L".join(f"{x:g} {y:g}" for x, y in bends))
    middles = tuple(x + BOX / 2 for x in lane_x)
    return SequenceChart(width, height, tuple(boxes), tuple(paths), middles)


def _rows(order: Sequence[str], graph: Graph, lane: dict[str, int]) -> dict[str, int]:
    """The row of each: below everything before it, and alone in its lane."""
    row: dict[str, int] = {}
    taken: set[tuple[int, int]] = set()
    following = after(graph)
    for id in order:
        place = max((row[other] + 1 for other in graph[id]), default=0)
        while (place, lane[id]) in taken:
            place += 1
        row[id] = place
        taken.add((place, lane[id]))
    for id in reversed(order):  # what has time stands near what needs it
        later = [row[other] for other in following[id]]
        if later and not graph[id]:
            place = min(later) - 1
            while place > row[id] and (place, lane[id]) in taken:
                place -= 1
            taken.discard((row[id], lane[id]))
            row[id] = place
            taken.add((place, lane[id]))
    used = sorted(set(row.values()))
    return {id: used.index(place) for id, place in row.items()}


def _gutter(start: int, end: int) -> int:
    """The gutter that a line takes: beside the lane that it goes to, on the side that it comes from."""
    return end + 1 if start > end else end


def _first_free(spans: list[list[tuple[float, float]]], low: float, high: float) -> int:
    """The first track on which nothing lies between these two; the span is then taken."""
    for track, taken in enumerate(spans):
        if all(high < a or b < low for a, b in taken):
            taken.append((low, high))
            return track
    spans.append([(low, high)])
    return len(spans) - 1


def _tracks_of_gutters(ways: list[_Way], row: dict[str, int], lane: dict[str, int], lanes: int) -> list[int]:
    """Give each line its track in its gutter; how many tracks each gutter has."""
    spans: list[list[list[tuple[float, float]]]] = [[] for _ in range(lanes + 1)]
    for way in sorted(ways, key=lambda way: (row[way.end] - row[way.start], row[way.start])):
        if way.gutter is not None:
            way.in_gutter = _first_free(spans[way.gutter], row[way.start], row[way.end] - 0.5)
    return [len(each) for each in spans]


def _columns(gutters: list[int], lanes: int) -> tuple[list[float], list[float], float]:
    """The left edges of the lanes and of the gutters, and the width of all."""
    x = 0.0
    lane_x, gutter_x = [], []
    for index in range(lanes + 1):
        gutter_x.append(x)
        x += TRACK * (gutters[index] + 2)
        if index < lanes:
            lane_x.append(x)
            x += BOX
    return lane_x, gutter_x, x


def _ports(
    order: Sequence[str], ways: list[_Way], lane_x: list[float], lane: dict[str, int]
) -> dict[tuple[str, str, str], float]:
    """Where each line leaves and enters a box: spread over its edge, in the order of where they go."""
    ports = {}
    for side, here, there in (("out", "start", "end"), ("in", "end", "start")):
        mine: dict[str, list[_Way]] = {id: [] for id in order}
        for way in sorted(ways, key=lambda way: lane[getattr(way, there)]):
            mine[getattr(way, here)].append(way)
        for id, those in mine.items():
            for index, way in enumerate(those, 1):
                ports[way.start, way.end, side] = lane_x[lane[id]] + BOX * index / (len(those) + 1)
    return ports


def _tracks_of_gaps(
    ways: list[_Way], row: dict[str, int], ports: dict[tuple[str, str, str], float], gutter_x: list[float], rows: int
) -> list[int]:
    """Give each line its tracks in the gaps between rows; how many tracks each gap has."""
    spans: list[list[list[tuple[float, float]]]] = [[] for _ in range(rows)]
    for way in ways:
        x1, x2 = ports[way.start, way.end, "out"], ports[way.start, way.end, "in"]
        if way.gutter is None:
            way.below = _first_free(spans[row[way.start]], min(x1, x2) - 1, max(x1, x2) + 1)
            continue
        x = gutter_x[way.gutter] + TRACK * (way.in_gutter + 1)
        way.below = _first_free(spans[row[way.start]], min(x1, x) - 1, max(x1, x) + 1)
        way.above = _first_free(spans[row[way.end] - 1], min(x2, x) - 1, max(x2, x) + 1)
    return [len(each) for each in spans]


def _row_places(
    order: Sequence[str], row: dict[str, int], heights: dict[str, int], gaps: list[int]
) -> tuple[list[float], list[float], float]:
    """The upper edge and the height of each row, and the height of all."""
    tall = [0.0] * len(gaps)
    for id in order:
        tall[row[id]] = max(tall[row[id]], heights[id])
    top, y = [], 0.0
    for index, height in enumerate(tall):
        top.append(y)
        y += height + TRACK * (gaps[index] + 1) + 2
    return top, tall, y
