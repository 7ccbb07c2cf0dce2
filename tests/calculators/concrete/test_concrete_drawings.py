"""The concrete drawings are to scale: the points stand where the figures say."""

from __future__ import annotations

import pytest

from calculators.drawing import circle, enlarged, label, rectangle
from tests.shapes import corners, drawing_of, measured, shapes_of

APPROACH = {"throat": 168.0, "depth": 72.0, "left": 60.0, "right": 48.0}


def test_approach_with_flares_from_above() -> None:
    sheet, _ = drawing_of("approach-concrete", side="flare", **APPROACH)
    plan = shapes_of(sheet, "area", style="cut", fill="none")[0]["points"]
    assert plan == [[-60.0, 0.0], [216.0, 0.0], [168.0, 72.0], [0.0, 72.0]]
    found = measured(sheet)
    assert found["above: throat 14' 0\""] == 168.0
    assert found["above: 5' 0\""] == 60.0
    assert found["above: 4' 0\""] == 48.0
    assert found["above: 23' 0\""] == 276.0


def test_approach_with_wings_and_with_neither() -> None:
    wings, _ = drawing_of("approach-concrete", side="wing", **APPROACH)
    assert shapes_of(wings, "area", style="cut", fill="none")[0]["points"][2] == [216.0, 72.0]
    none, _ = drawing_of("approach-concrete", side="none", **APPROACH)
    assert shapes_of(none, "area", style="cut", fill="none")[0]["points"][0] == [0.0, 0.0]


def test_approach_in_section_is_one_multiple_of_its_figures() -> None:
    standing = {"slope": 0.02, "thickness": 6.0, "edge_thickness": 8.0, "base_thickness": 4.0}
    sheet, _ = drawing_of("approach-concrete", **APPROACH, **standing)
    times = float(next(s["text"] for s in shapes_of(sheet, "label") if "section" in s["text"]).split()[2])
    found = measured(sheet)
    assert found["right: slab 6 in"] == pytest.approx(6 * times)
    assert found["right: base 4 in"] == pytest.approx(4 * times)
    assert found["left: edge 8 in"] == pytest.approx(8 * times)
    (slab,) = shapes_of(sheet, "area", fill="concrete")
    (front_x, front_y), (back_x, back_y) = slab["points"][:2]
    assert back_x - front_x == pytest.approx(72 * times)
    assert (back_y - front_y) / (back_x - front_x) == pytest.approx(0.02)
    high = corners(slab)[3]
    assert high < 0.0, "the section stands under the plan"


def test_joints_stand_at_the_panels() -> None:
    sheet, answer = drawing_of("joint-spacing", length=240.0, width=192.0, thickness=4.0)
    joints = [shape["points"] for shape in shapes_of(sheet, "line", style="outline")]
    assert (answer["panels_along"], answer["panels_across"]) == (3, 2)
    assert joints == [[[80.0, 0.0], [80.0, 192.0]], [[160.0, 0.0], [160.0, 192.0]], [[0.0, 96.0], [240.0, 96.0]]]
    assert measured(sheet) == {
        "above: 6' 8\"": 80.0,
        "left: 8' 0\"": 96.0,
        "below: 20' 0\"": 240.0,
        "right: 16' 0\"": 192.0,
    }


def test_a_detail_is_larger_in_every_direction() -> None:
    made = enlarged([rectangle(0.0, 0.0, 2.0, 1.0), circle(1.0, 1.0, 0.5), label(0.0, 0.0, "x", 2.0)], 10.0, -5.0, 3.0)
    assert corners(made[0]) == (10.0, 16.0, -5.0, -2.0)
    assert made[1]["radius"] == 1.5
    assert made[2]["room"] == 6.0
