"""The chart of the order: whatever the graph, boxes stand apart and no line runs through one or over another."""

from __future__ import annotations

from itertools import combinations, pairwise

from hypothesis import given
from hypothesis import strategies as st

from build_tools.book.sequence import direct, in_order
from build_tools.pages.fit_out.sequence_chart import BOX, ProcedureBox, SequenceChart, lay_out, wrapped
from tests.build_tools.book.test_sequence import graphs

Point = tuple[float, float]


def corners(path: str) -> list[Point]:
    """The points of a path."""
    pairs = [point.split() for point in path.removeprefix("M").split(" L")]
    return [(float(x), float(y)) for x, y in pairs]


def chart_of(graph: dict[str, list[str]], lanes: int) -> tuple[SequenceChart, dict[str, list[str]]]:
    """The chart of a drawn graph, with titles of many lengths."""
    graph = direct(graph)
    lane = {id: int(id[1:]) % lanes for id in graph}
    titles = {id: "Set the thing that stands " * (int(id[1:]) % 3 + 1) for id in graph}
    return lay_out(in_order(graph, lane, lambda id: id), graph, lane, titles, lanes), graph


def inside(box: ProcedureBox, a: Point, b: Point) -> bool:
    """Whether a straight piece runs through the inside of a box."""
    (x1, x2), (y1, y2) = sorted((a[0], b[0])), sorted((a[1], b[1]))
    return x2 > box.x and x1 < box.x + BOX and y2 > box.y and y1 < box.y + box.height


@given(graphs(), st.integers(1, 6))
def test_boxes_stand_apart(graph: dict[str, list[str]], lanes: int) -> None:
    chart, _ = chart_of(graph, lanes)
    for one, other in combinations(chart.boxes, 2):
        apart = one.x + BOX <= other.x or other.x + BOX <= one.x
        assert apart or one.y + one.height < other.y or other.y + other.height < one.y
    assert all(box.x + BOX <= chart.width and box.y + box.height <= chart.height for box in chart.boxes)


@given(graphs(), st.integers(1, 6))
def test_a_line_leads_from_box_to_box_and_through_none(graph: dict[str, list[str]], lanes: int) -> None:
    chart, links = chart_of(graph, lanes)
    assert len(chart.paths) == sum(map(len, links.values()))
    box = {each.id: each for each in chart.boxes}
    ends = {(start, end) for end, before in links.items() for start in before}
    for path in chart.paths:
        points = corners(path)
        found = {
            (start, end)
            for start, end in ends
            if points[0][1] == box[start].y + box[start].height
            and box[start].x < points[0][0] < box[start].x + BOX
            and points[-1][1] == box[end].y
            and box[end].x < points[-1][0] < box[end].x + BOX
        }
        assert found
        for a, b in pairwise(points):
            assert not any(inside(each, a, b) for each in chart.boxes)


@given(graphs(), st.integers(1, 6))
def test_no_line_lies_on_another(graph: dict[str, list[str]], lanes: int) -> None:
    chart, _ = chart_of(graph, lanes)
    level = [
        (y, *sorted((x1, x2)))
        for path in chart.paths
        for (x1, y), (x2, y2) in pairwise(corners(path))
        if y == y2 and x1 != x2
    ]
    for (y, a1, a2), (other, b1, b2) in combinations(level, 2):
        assert y != other or a2 < b1 or b2 < a1


def test_a_title_keeps_its_words() -> None:
    assert " ".join(wrapped("Identify a circuit and prove it dead", 12)) == "Identify a circuit and prove it dead"
