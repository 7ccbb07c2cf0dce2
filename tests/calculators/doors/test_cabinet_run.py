"""Cabinets along a wall: widths in steps, fillers, openings."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.doors.cabinet_run import cabinet_run
from calculators.doors.cabinet_run_drawing import cabinet_run_drawing
from calculators.run import compute


def piece(width: float = 0.0, kind: str = "cabinet") -> dict[str, Any]:
    return {"name": "Base", "kind": kind, "width": width}


def test_a_wall_of_a_known_kitchen() -> None:
    answer = compute(cabinet_run, dict(cabinet_run.example))
    assert [row["width"] for row in answer["run"]] == [2, 21, 24, 33, 18, 30, 18, 2]
    assert [row["start"] for row in answer["run"]] == [0, 2, 23, 47, 80, 98, 128, 146]
    assert (answer["cabinets"], answer["openings"], answer["fits"]) == (4, 2, True)


def test_widths_come_in_the_steps_of_the_shop() -> None:
    answer = cabinet_run(pieces=[piece(), piece()], wall=62, step=1.5)
    assert [row["width"] for row in answer["run"]] == [1, 30, 30, 1]
    assert [row["width"] for row in cabinet_run(pieces=[piece(), piece()], wall=60.5)["run"]] == [1.75, 30, 27, 1.75]


@pytest.mark.parametrize(
    ("left", "right", "fillers"),
    [("wall", "wall", (1.5, 1.5)), ("wall", "open", (3, 0)), ("open", "wall", (0, 3)), ("open", "open", (0, 0))],
)
def test_what_is_left_goes_to_the_ends_that_meet_a_wall(left: str, right: str, fillers: tuple[float, float]) -> None:
    answer = cabinet_run(pieces=[piece(30)], wall=33, left=left, right=right)
    assert (answer["filler_left"], answer["filler_right"]) == fillers


def test_a_run_open_at_both_ends_says_what_it_lacks() -> None:
    answer = cabinet_run(pieces=[piece()], wall=31, left="open", right="open")
    assert not answer["fits"]
    assert "1 in shorter" in answer["cautions"][0]


def test_a_wide_filler_and_a_wide_cabinet_are_told() -> None:
    assert "filler" in cabinet_run(pieces=[piece(30)], wall=40)["cautions"][0]
    assert "one more" in cabinet_run(pieces=[piece()], wall=120)["cautions"][0]


@pytest.mark.parametrize(
    ("pieces", "wall", "words"),
    [
        ([], 120, "at least one"),
        ([piece(kind="opening")], 120, "no width"),
        ([piece(60), piece(60)], 120, "the wall is"),
        ([piece(60), piece(), piece()], 72, "take one out"),
        ([piece()] * 21, 480, "More than 20"),
    ],
)
def test_what_cannot_be_is_refused(pieces: list[dict[str, Any]], wall: float, words: str) -> None:
    with pytest.raises(Refused, match=words):
        cabinet_run(pieces=pieces, wall=wall)


def test_fillers_the_wrong_way_round_are_refused() -> None:
    with pytest.raises(Refused, match="more than the most"):
        cabinet_run(pieces=[piece()], filler_least=4)


@given(st.integers(48 * 8, 240 * 8).map(lambda n: n / 8), st.integers(1, 5))
def test_a_run_fills_the_wall_in_steps(wall: float, count: int) -> None:
    try:
        answer = cabinet_run(pieces=[piece(24, "opening"), *[piece()] * count], wall=wall)
    except Refused:
        return
    assert sum(row["width"] for row in answer["run"]) == pytest.approx(wall)
    chosen = [row["width"] for row in answer["run"] if row["kind"] == "cabinet"]
    assert all(width % 3 == 0 for width in chosen)
    assert max(chosen) - min(chosen) in (0, 3)
    assert 1 <= answer["filler_left"] == answer["filler_right"] < 2.5 + 1e-9


def test_the_drawing_says_every_piece() -> None:
    answer = cabinet_run(pieces=[piece(24, "opening"), piece(), piece()], wall=100)
    alt = cabinet_run_drawing({"wall": 100.0, "left": "wall", "right": "wall"}, answer)["alt"]
    assert alt.count("Base") == 3 and alt.count("Filler") == 2
