"""The drawing of a tile floor is to scale: cuts and joints stand where the figures say."""

from __future__ import annotations

import pytest

from tests.shapes import drawing_of, measured, shapes_of


def test_cuts_at_the_walls_are_dimensioned_and_alike() -> None:
    sheet, answer = drawing_of("tile-take-off", length=100, width=70)
    assert measured(sheet)["below: 8' 4\""] == 100
    outline, floor = shapes_of(sheet, "area")
    assert floor["points"][0] == [answer["gap_along"], answer["gap_across"]]
    assert outline["points"][2] == [100, 70]
    above = [shape for shape in sheet["shapes"] if shape.get("side") == "above" and shape["kind"] == "dimension"]
    assert [shape["points"][1][0] - shape["points"][0][0] for shape in above] == pytest.approx(
        [answer["cut_along"]] * 2
    )
    upright = [s for s in shapes_of(sheet, "line", style="fine") if s["points"][0][0] == s["points"][1][0]]
    assert len(upright) == 2 * (answer["full_along"] + 2) - 2


def test_many_small_tiles_are_not_all_drawn() -> None:
    sheet, _ = drawing_of("tile-take-off", length=600, width=600, tile_length=2, tile_width=2)
    assert len(sheet["shapes"]) < 100


def test_a_diagonal_crosses_the_middle_of_the_room() -> None:
    sheet, _ = drawing_of("tile-take-off", length=120, width=96, layout="diagonal")
    lines = [shape["points"] for shape in shapes_of(sheet, "line", style="fine")]
    through = [
        p for p in lines if abs((p[0][0] + p[1][0]) / 2 - 60) < 1e-6 and abs((p[0][1] + p[1][1]) / 2 - 48) < 1e-6
    ]
    assert len(through) == 2
    for (x1, y1), (x2, y2) in lines:
        assert abs(x2 - x1) == pytest.approx(abs(y2 - y1))
        assert all(0.25 - 1e-6 <= x <= 119.75 + 1e-6 for x in (x1, x2))
        assert all(0.25 - 1e-6 <= y <= 95.75 + 1e-6 for y in (y1, y2))
