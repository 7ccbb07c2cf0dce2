"""The floor's drawing is to scale: rows and walls stand where the figures say."""

from __future__ import annotations

import pytest

from tests.shapes import corners, drawing_of, measured, shapes_of


def test_rows_stand_at_the_start_line_and_every_face_from_there() -> None:
    sheet, answer = drawing_of("board-layout", width_near=144.0, width_far=144.75, room_length=192.0)
    room = shapes_of(sheet, "area", style="cut")[0]["points"]
    assert room == [[0.0, 0.0], [192.0, 0.0], [192.0, 144.75], [0.0, 144.0]]
    first, last = shapes_of(sheet, "area", fill="wood")
    assert first["points"][3] == [0.25, answer["line_near"]]
    assert first["points"][3][1] - first["points"][0][1] == answer["first_near"]
    assert last["points"][3][1] - last["points"][0][1] == pytest.approx(answer["last_near"])
    assert last["points"][2][1] - last["points"][1][1] == pytest.approx(answer["last_far"])
    rows = shapes_of(sheet, "line", style="fine")
    assert len(rows) == answer["full_rows"] - 1
    assert rows[9]["points"][0][1] == pytest.approx(answer["line_near"] + 10 * 2.25)
    assert shapes_of(sheet, "line", style="limit")[0]["points"][0] == [0.0, answer["line_near"]]


def test_dimensions_measure_what_they_say() -> None:
    sheet, _ = drawing_of("board-layout", width_near=144.0, room_length=192.0)
    found = measured(sheet)
    assert found["left: 12' 0\""] == 144.0
    assert found["below: 16' 0\""] == 192.0
    assert found["left: first 2-1/4 in"] == pytest.approx(2.25)
    assert found["left: last 1-3/4 in"] == pytest.approx(1.75)


def test_many_narrow_rows_are_drawn_at_the_walls_alone() -> None:
    sheet, answer = drawing_of("board-layout", width_near=1200.0, face_width=1.5, room_length=1200.0)
    rows = shapes_of(sheet, "line", style="fine")
    assert len(rows) == 12
    assert corners(rows[0])[2] == pytest.approx(answer["line_near"] + 1.5)
    assert corners(rows[-1])[3] == pytest.approx(answer["line_far"] + (answer["full_rows"] - 1) * 1.5)
