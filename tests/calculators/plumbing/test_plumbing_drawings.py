"""The plumbing drawings are to scale: the points stand where the figures say."""

from __future__ import annotations

import pytest

from tests.shapes import corners, drawing_of, measured, shapes_of


def test_wax_ring_stands_between_flange_and_bowl() -> None:
    sheet, _ = drawing_of("wax-ring", rise=0.5, recess=0.625, ring=1.5)
    assert measured(sheet) == {
        "right: 1/2 in floor above flange": 0.5,
        "right: recess 5/8 in": 0.625,
        "left: gap 1-1/8 in": 1.125,
    }
    (wax,) = shapes_of(sheet, "area", fill="wax")
    assert corners(wax)[2:] == (0.0, 1.125)
    (bowl,) = shapes_of(sheet, "area", fill="china")
    assert corners(bowl)[2] == 0.5
    (floor,) = shapes_of(sheet, "area", fill="wood")
    assert corners(floor)[3] == 0.5


def test_a_thin_ring_ends_short_of_the_bowl() -> None:
    sheet, answer = drawing_of("wax-ring", rise=1.5, recess=0.625, ring=1.0)
    (wax,) = shapes_of(sheet, "area", fill="wax")
    assert corners(wax)[3] == 1.0 < answer["gap"]
    assert "1-1/8 in short of the bowl" in sheet["alt"]


def test_a_bowl_on_the_flange_hangs_over_the_floor() -> None:
    sheet, _ = drawing_of("wax-ring", rise=-2.0, recess=0.375)
    assert shapes_of(sheet, "area", fill="wax") == []
    (bowl,) = shapes_of(sheet, "area", fill="china")
    (floor,) = shapes_of(sheet, "area", fill="wood")
    assert corners(bowl)[2] == -0.375
    assert corners(floor)[3] == -2.0


@pytest.mark.parametrize(("run", "stretch"), [(240.0, 10.0), (12.0, 1.0), (1200.0, 10.0)])
def test_drain_falls_by_its_figures(run: float, stretch: float) -> None:
    sheet, answer = drawing_of("drain-fall", run=run, slope=0.25 / 12, upper_invert=-18.0)
    invert = shapes_of(sheet, "line", style="cut")[0]["points"]
    assert invert == [[0.0, -18.0], [run, answer["lower_invert"]]]
    least = shapes_of(sheet, "line", style="limit")[0]["points"]
    assert least[1] == [run, -18.0 - answer["least_fall"]]
    assert sheet["stretch"] == stretch


def test_water_closet_distances_are_those_read() -> None:
    sheet, _ = drawing_of(
        "water-closet-place", code="upc", left=14.5, right=18.0, rough_in=12.5, back_to_add=0.5, front=42.0
    )
    assert measured(sheet) == {
        "below: 14-1/2 in": 14.5,
        "below: 18 in": 18.0,
        "right: 12 in": 12.0,
        "right: clear 24 in": 24.0,
        "left: at least 24 in": 24.0,
    }
    limits = sorted(corners(shape)[0] for shape in shapes_of(sheet, "line", style="limit"))
    assert limits[0] == -15.0
    assert limits[-1] == 15.0


def test_a_fixture_beside_it_wants_30_in_centre_to_centre() -> None:
    sheet, _ = drawing_of("water-closet-place", left_is="fixture", left=32.0)
    limits = sorted(corners(shape)[0] for shape in shapes_of(sheet, "line", style="limit"))
    assert limits[0] == -30.0
    centres = [shape["points"][0] for shape in shapes_of(sheet, "circle", style="hidden")]
    assert [-32.0, 0.0] in centres


def test_far_walls_are_drawn_behind_a_break() -> None:
    sheet, _ = drawing_of("water-closet-place", left=200.0, front=200.0)
    assert len(shapes_of(sheet, "break")) == 2
    assert "below: 200 in" in measured(sheet)
