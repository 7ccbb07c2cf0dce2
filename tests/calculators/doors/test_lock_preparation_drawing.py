"""The lock's drawing is to scale: bores, plates and strike stand where the figures say."""

from __future__ import annotations

from tests.shapes import corners, drawing_of, measured, shapes_of


def test_bores_stand_at_the_backset_and_the_middle_of_the_edge() -> None:
    sheet, answer = drawing_of("lock-preparation", thickness=1.75, backset=2.75, rose=2.625)
    (cross,) = shapes_of(sheet, "circle", style="cut")
    assert cross["points"] == [[2.75, 0.0]]
    assert cross["radius"] == 2.125 / 2
    edge_bore, strike = shapes_of(sheet, "circle", style="outline")
    assert edge_bore["radius"] == strike["radius"] == 0.5
    (rose,) = shapes_of(sheet, "circle", style="centre")
    assert rose["radius"] == 2.625 / 2
    found = measured(sheet)
    assert found["below: backset 2-3/4 in"] == 2.75
    assert found["below: 1-3/4 in"] == 1.75
    assert found["above: 7/8 in"] == 0.875
    assert found["below: 15/16 in"] == answer["strike_from_stop"] == 0.9375
    assert found["left: 2-1/4 in"] == 2.25


def test_edge_bore_reaches_the_cross_bore_behind_the_faceplate() -> None:
    sheet, answer = drawing_of("lock-preparation", thickness=1.75)
    hidden = [shape["points"] for shape in shapes_of(sheet, "line", style="hidden")]
    ends = [points for points in hidden if points[0][1] == points[1][1]]
    assert ends == [
        [[0.125, -0.5], [answer["edge_bore_depth"], -0.5]],
        [[0.125, 0.5], [answer["edge_bore_depth"], 0.5]],
    ]


def test_the_bevel_shows_the_low_edge() -> None:
    sheet, _ = drawing_of("lock-preparation", thickness=1.75, bevel=0.0625)
    upright = [corners(shape) for shape in shapes_of(sheet, "line", style="hidden")]
    assert any(left == right == 1.75 * 0.0625 for left, right, _, _ in upright)
    square, _ = drawing_of("lock-preparation", thickness=1.75, bevel=0.0)
    assert all(corners(s)[2] == corners(s)[3] for s in shapes_of(square, "line", style="hidden"))


def test_a_drive_in_latch_has_no_plate_and_a_stile_its_limit() -> None:
    sheet, _ = drawing_of("lock-preparation", thickness=1.75, faceplate="drive-in", stile=4.5)
    assert "left: 2-1/4 in" not in measured(sheet)
    assert shapes_of(sheet, "line", style="limit")[0]["points"][0][0] == 4.5
    assert "There is no faceplate." in sheet["alt"]
