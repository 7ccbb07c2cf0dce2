"""The take-off against what is printed elsewhere. Each table names its source."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, get_coordinates

from calculators.flooring.strip_floor_take_off import (
    board_feet_a_sq_ft,
    counted_thickness,
    schedule_of,
    strip_floor_take_off,
)
from calculators.run import run


def take_off(**inputs: Any) -> dict[str, Any]:
    defaults = {declared.name: declared.default for declared in strip_floor_take_off.inputs}
    return run(strip_floor_take_off, {**defaults, **inputs})


# Twelve inches over the face width, as trade tables of lineal feet print it.
@pytest.mark.parametrize(("face_width", "lineal"), [(1.5, 8.000), (2.0, 6.000), (2.25, 5.333), (3.25, 3.692)])
def test_lineal_feet_a_square_foot(face_width: float, lineal: float) -> None:
    answer = take_off(measured_area=100, waste=0, face_width=face_width)
    assert answer["lineal_feet"] / 12 / 100 == pytest.approx(lineal, abs=0.001)


# Oak flooring association and old estimating handbooks: add this much to the floor's square feet for board feet.
# From memory; the arithmetic of counted size and 5 % for end matching agrees. The row for 3-1/4 in is left out: the
# 29 % that is printed is not what the rule gives (28.08 %).
@pytest.mark.parametrize(("face_width", "allowance"), [(1.5, 55.0), (2.0, 42.5), (2.25, 38.33)])
def test_board_foot_allowance(face_width: float, allowance: float) -> None:
    answer = take_off(measured_area=100, waste=0, face_width=face_width)
    assert answer["board_feet"] * 12 == pytest.approx(100 + allowance, abs=0.01)


# Building Trades Pocketbook, carpentry, estimating quantities: matched flooring 3 in wide takes a quarter more for
# tongue and groove, narrower a third; 7/8 in stuff counts as 1 in thick and 1-1/8 in as 1-1/4 in.
@pytest.mark.parametrize(("face_width", "more"), [(3.0, 1 / 4), (2.25, 1 / 3)])
def test_the_part_for_tongue_and_groove(face_width: float, more: float) -> None:
    end_matching = 0.05
    assert board_feet_a_sq_ft(face_width, 0.875) - end_matching == pytest.approx(1 + more)


@pytest.mark.parametrize(("thickness", "counted"), [(0.875, 1.0), (1.125, 1.25)])
def test_the_counted_thickness(thickness: float, counted: float) -> None:
    assert counted_thickness(thickness) == counted


# Wood flooring installation guidelines (national association, revised 2019), fastener schedule, solid flooring:
# least and most spacing, least and most distance from each end.
@pytest.mark.parametrize(
    ("face_width", "thickness", "schedule"),
    [
        (2.25, 0.75, (8, 10, 1, 3)),
        (3.25, 0.75, (6, 8, 1, 3)),
        (5.0, 0.75, (6, 8, 1, 3)),
        (2.25, 0.625, (6, 8, 1, 3)),
        (2.0, 0.5, (3, 4, 1, 2)),
        (1.5, 0.375, (3, 4, 1, 2)),
    ],
)
def test_fastener_schedule(face_width: float, thickness: float, schedule: tuple[int, ...]) -> None:
    found = schedule_of(face_width, thickness)
    assert (found["least"], found["most"], found["end_least"], found["end_most"]) == schedule


# The same guidelines and the oak association: under 3 in is strip, from 3 in plank, over 5 in glued as well as nailed.
@pytest.mark.parametrize(
    ("face_width", "strip", "glued"), [(2.75, True, False), (3.0, False, False), (5.25, False, True)]
)
def test_classes_of_width(face_width: float, strip: bool, glued: bool) -> None:
    answer = take_off(measured_area=100, face_width=face_width)
    assert answer["schedule"].startswith("8 to 10" if strip else "6 to 8")
    assert any("glued" in caution for caution in answer["cautions"]) == glued


# 12 / 2.25 x 12 / spacing: fasteners a square foot of 2-1/4 in strip before the board ends add theirs. Worked out
# from the schedule above.
@pytest.mark.parametrize(("spacing", "each_sq_ft"), [(8.0, 8.0), (10.0, 6.4)])
def test_fasteners_a_square_foot(spacing: float, each_sq_ft: float) -> None:
    answer = take_off(measured_area=1000, nail_spacing=spacing)
    assert answer["fasteners_field"] / 1000 == pytest.approx(each_sq_ft, abs=0.05)
    assert answer["fasteners"] > answer["fasteners_field"]


# A gallon of floor finish covers 400 to 600 sq ft a coat: spread rates of suppliers' lists; 500 is the middle.
@pytest.mark.parametrize(
    ("area", "coats", "coverage", "gallons"), [(500, 1, 500, 1), (800, 3, 500, 4.8), (1200, 2, 400, 6)]
)
def test_gallons_of_finish(area: float, coats: int, coverage: float, gallons: float) -> None:
    answer = take_off(measured_area=area, coats=coats, finish_coverage=coverage)
    assert answer["finish"] * 1728 / 231 == pytest.approx(gallons)


@pytest.mark.parametrize(("coverage", "cautioned"), [(399, True), (400, False), (600, False), (601, True)])
def test_a_coverage_out_of_the_printed_range_is_told(coverage: float, cautioned: bool) -> None:
    answer = take_off(measured_area=100, finish_coverage=coverage)
    assert any("A gallon of finish covers" in caution for caution in answer["cautions"]) == cautioned


# A printed example of measuring for a wood floor: 13 ft x 20 ft, 10 % for cutting, 286 sq ft to order; 15 % when the
# boards run diagonally.
def test_a_printed_example_of_waste() -> None:
    plan = [{"name": "room", "less": False, "points": [[0, 0], [240, 0], [240, 156], [0, 156]]}]
    assert take_off(rooms=plan, waste=10)["ordered_area"] == pytest.approx(286)
    assert take_off(rooms=plan, layout="diagonal")["ordered_area"] == pytest.approx(260 * 1.15)


# Roofing trade articles: a roll of 15 lb felt is 36 in x 144 ft, 432 sq ft, and covers four squares with 2 in laps.
def test_a_roll_of_felt() -> None:
    answer = take_off(measured_area=400, roll_area=36 * 144 / 12, roll_width=36, lap=2)
    assert 0.95 < answer["rolls"] <= 1


# shapely, a general library of plane geometry, for rooms of any shape.
corners = st.lists(st.tuples(st.integers(0, 600), st.integers(0, 600)), min_size=3, max_size=9, unique=True)


@settings(max_examples=60)
@given(corners)
def test_areas_of_any_room_agree_with_shapely(points: list[tuple[int, int]]) -> None:
    hull = Polygon(points).convex_hull
    if hull.area < 144:
        return
    outline = [[float(x), float(y)] for x, y in get_coordinates(hull)[:-1]]
    answer = take_off(rooms=[{"name": "room", "less": False, "points": outline}])
    assert answer["net_area"] == pytest.approx(hull.area / 144)
    assert answer["perimeter"] == pytest.approx(hull.length)
