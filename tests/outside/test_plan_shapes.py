"""Polygons against shapely, the reference library for plane geometry."""

from __future__ import annotations

from math import isclose

from hypothesis import given
from hypothesis import strategies as st
from shapely import LinearRing, Polygon

from calculators.polygons import area_sq_ft, bounds, fault, perimeter_in
from calculators.shapes import read_plan

coordinates = st.integers(0, 60)
corner_lists = st.lists(st.tuples(coordinates, coordinates), min_size=3, max_size=8)


def in_whole_numbers(corners: list[tuple[int, int]]) -> list[list[float]]:
    """Corners as our points."""
    return [[float(x), float(y)] for x, y in corners]


@given(corner_lists)
def test_faults_are_those_that_shapely_finds(corners: list[tuple[int, int]]) -> None:
    """A sound shape is one whose ring is simple and has an inside; shapely leaves the same corner twice alone."""
    points = in_whole_numbers(corners)
    twice_running = any(corners[i] == corners[i - 1] for i in range(len(corners)))
    sound = len(set(corners)) > 2 and bool(LinearRing(corners).is_simple) and bool(Polygon(corners).is_valid)
    assert (fault(points) == "") == (sound and not twice_running)


@given(corner_lists)
def test_area_way_round_and_bounds(corners: list[tuple[int, int]]) -> None:
    points = in_whole_numbers(corners)
    if fault(points) != "":
        return
    polygon = Polygon(corners)
    assert isclose(area_sq_ft(points) * 144, polygon.area)
    assert isclose(perimeter_in(points), polygon.length)
    assert bounds(points) == polygon.bounds


@given(corner_lists)
def test_a_written_plan_is_the_polygon_it_names(corners: list[tuple[int, int]]) -> None:
    if fault(in_whole_numbers(corners)) != "":
        return
    (shape,) = read_plan("corners " + " ".join(f"{x}',{y}'" for x, y in corners))
    assert isclose(area_sq_ft(shape["points"]), Polygon(corners).area)


@given(st.lists(st.tuples(st.integers(1, 20), st.integers(1, 20)), min_size=1, max_size=6))
def test_walked_steps_are_the_polygon_they_walk(steps: list[tuple[int, int]]) -> None:
    """A stair of walls: along and down by each step, back along the foot, and up to the start."""
    along = sum(step[0] for step in steps)
    down = sum(step[1] for step in steps)
    written = "walls " + " left ".join(f"{x}' right {y}'" for x, y in steps) + f" right {along}' right {down}'"
    corners, x, y = [(0, 0)], 0, 0
    for step in steps:
        corners += [(x + step[0], y), (x + step[0], y + step[1])]
        x, y = corners[-1]
    (shape,) = read_plan(written)
    polygon = Polygon([*corners, (0, y)])
    assert isclose(area_sq_ft(shape["points"]), polygon.area)
    assert isclose(perimeter_in(shape["points"]) / 12, polygon.length)
