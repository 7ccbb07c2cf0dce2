"""The layout of rows against what is printed elsewhere. Each case names its source."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.flooring.board_layout import board_layout
from calculators.run import run


def layout(**inputs: Any) -> dict[str, Any]:
    defaults = {declared.name: declared.default for declared in board_layout.inputs}
    return run(board_layout, {**defaults, **inputs})


# A printed how-to on staggering boards: lines a quarter inch off both walls; with 4 in boards and 1 in left over, the
# 1 in is added to a board and halved: the first and the last row are 2-1/2 in.
@pytest.mark.parametrize("full", [10, 29, 44])
def test_the_remainder_is_added_to_a_board_and_halved(full: int) -> None:
    answer = layout(width_near=4 * full + 1 + 2 * 0.25, face_width=4, least_width=2)
    assert answer["full_rows"] == full - 1
    assert answer["first_near"] == answer["last_near"] == pytest.approx(2.5)


# A printed how-to on rooms out of square: a room of 15 ft at one end and 15 ft 2 in at the other; the start line is
# turned by half the difference, 1 in.
def test_half_of_the_difference_goes_to_each_side() -> None:
    answer = layout(width_near=180, width_far=182, room_length=240, face_width=3.25)
    assert answer["split"]
    assert answer["line_far"] - answer["line_near"] == pytest.approx(1)
    assert answer["last_far"] - answer["last_near"] == pytest.approx(1)


# The same how-to: a quarter inch in 6 ft of wall is not noticed, about half an inch between the ends is where to act.
def test_how_crooked_a_wall_may_be() -> None:
    slight = layout(width_near=144, width_far=144.25, room_length=72)
    assert slight["out_of_parallel_10_ft"] == pytest.approx(0.25 * 120 / 72)
    assert not slight["split"]
    assert layout(width_near=144, width_far=144.75)["split"]


# US Army carpentry course, finish flooring: about 1/4 in is left along the wall for expansion, and the first board is
# set parallel to the long wall.
def test_a_quarter_inch_at_every_wall() -> None:
    answer = layout(width_near=144, room_length=192)
    assert answer["row_length"] == 192 - 2 * 0.25
    assert answer["line_near"] - answer["first_near"] == 0.25
    assert answer["line_near"] == answer["line_far"]
