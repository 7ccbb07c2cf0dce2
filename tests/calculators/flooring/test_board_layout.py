"""What the layout of a strip floor promises."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.flooring.board_layout import board_layout
from calculators.run import run

TINY = 1e-5


def layout(**inputs: Any) -> dict[str, Any]:
    """The answer; what is not given stands at its default, and the room is 12 ft across."""
    defaults = {declared.name: declared.default for declared in board_layout.inputs}
    return run(board_layout, {**defaults, "width_near": 144.0, **inputs})


def narrowest(answer: dict[str, Any]) -> float:
    """The least width of the first and the last row."""
    return float(min(answer[name] for name in ("first_near", "first_far", "last_near", "last_far")))


def best_by_trial(near: float, far: float, gap: float, face: float, parts: int = 200) -> float:
    """The greatest narrowest row that any start line gives, by trying start lines one after the other."""
    best = 0.0
    narrow, wide = min(near, far) - 2 * gap, max(near, far) - 2 * gap
    for share in range(11):
        in_first = (wide - narrow) * share / 10
        in_last = wide - narrow - in_first
        for step in range(parts + 1):
            first = face * step / parts
            last = (wide - first) % face
            for end in (last, last + face if last < TINY else last):
                if end <= face + TINY:
                    best = max(best, min(first - in_first, end - in_last))
    return best


def test_a_full_first_row_is_kept_when_the_last_is_wide_enough() -> None:
    answer = layout()
    assert answer["first_near"] == answer["first_far"] == 2.25
    assert answer["last_near"] == 1.75
    assert answer["shift_near"] == 0
    assert answer["line_near"] == 2.5
    assert answer["row_length"] == 144 - 0.5
    assert answer["cautions"] == []


def test_a_sliver_is_shared_with_the_first_row() -> None:
    answer = layout(width_near=142.5)
    # 142 in between the gaps: 63 rows and 1/4 in, or 62 rows and 2-1/2 in for two
    assert answer["full_rows"] == 62
    assert answer["first_near"] == answer["last_near"] == 1.25
    assert answer["shift_near"] == 1.0


def test_rows_that_come_out_even_stay_whole() -> None:
    answer = layout(width_near=2.25 * 64 + 0.5)
    assert answer["first_near"] == answer["last_far"] == 2.25
    assert answer["rows"] == 64


def test_rows_in_millimetres_come_out_even_too() -> None:
    face = 90 / 25.4
    answer = layout(width_near=face * 41 + 0.5, face_width=face)
    assert answer["rows"] == 41
    assert answer["last_near"] == pytest.approx(face)


def test_a_small_taper_stays_in_the_last_row() -> None:
    answer = layout(width_far=144.375)
    assert not answer["split"]
    assert answer["first_near"] == answer["first_far"] == 2.25
    assert answer["last_far"] - answer["last_near"] == pytest.approx(0.375)


def test_a_large_taper_is_split_and_the_start_line_is_turned() -> None:
    answer = layout(width_near=143.25, width_far=144.25)
    assert answer["split"]
    assert answer["first_far"] - answer["first_near"] == pytest.approx(0.5)
    assert answer["last_far"] - answer["last_near"] == pytest.approx(0.5)
    assert answer["line_far"] - answer["line_near"] == pytest.approx(0.5)
    assert any("half is ripped off the first row" in caution for caution in answer["cautions"])


def test_the_wider_end_may_be_the_near_one() -> None:
    one = layout(width_near=143.25, width_far=144.25)
    other = layout(width_near=144.25, width_far=143.25)
    assert one["first_near"] == other["first_far"]
    assert one["last_far"] == other["last_near"]


def test_out_of_parallel_is_told_for_ten_feet() -> None:
    answer = layout(width_far=144.5, room_length=240)
    assert answer["out_of_parallel"] == 0.5
    assert answer["out_of_parallel_10_ft"] == 0.25


def test_a_sliver_that_nothing_helps_is_told() -> None:
    answer = layout(width_near=142.5, least_width=2)
    assert any("no start line gives more" in caution for caution in answer["cautions"])


def test_a_row_too_narrow_for_the_nailer_is_told() -> None:
    answer = layout(width_near=20 * 1.5 + 0.6, face_width=1.5, least_width=0.5)
    assert narrowest(answer) < 1
    assert any("face-nail" in caution for caution in answer["cautions"])


def test_ends_a_whole_board_apart_are_refused() -> None:
    with pytest.raises(Refused) as refused:
        layout(width_far=147)
    assert refused.value.input == "width_far"
    assert "3 in" in refused.value.message


def test_a_far_end_of_next_to_nothing_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        layout(width_far=12)
    assert "give 0" in refused.value.message


def test_a_least_row_wider_than_the_board_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        layout(least_width=3)
    assert refused.value.input == "least_width"


rooms = st.floats(24, 1200)
tapers = st.floats(-2, 2)
gaps = st.floats(0, 1.5)
faces = st.floats(1, 8)


@given(rooms, tapers, gaps, faces, st.floats(0.25, 4), st.floats(0, 2))
def test_rows_and_gaps_fill_the_room_at_both_ends(
    width: float, taper: float, gap: float, face: float, least: float, most_taper: float
) -> None:
    far = width + taper
    assume(24 <= far <= 1200 and abs(taper) < face and least <= face)
    answer = layout(width_near=width, width_far=far, gap=gap, face_width=face, least_width=least, most_taper=most_taper)
    middle = answer["full_rows"] * face + 2 * gap
    assert middle + answer["first_near"] + answer["last_near"] == pytest.approx(width)
    assert middle + answer["first_far"] + answer["last_far"] == pytest.approx(far)
    assert narrowest(answer) > 0
    for name in ("first_near", "first_far", "last_near", "last_far"):
        assert answer[name] <= face * (1 + TINY)


@given(st.floats(24, 120), st.floats(-1, 1), st.floats(1.5, 4), st.floats(0.25, 2), st.floats(0, 2))
def test_no_row_is_narrower_than_the_least_whenever_any_start_line_allows_it(
    width: float, taper: float, face: float, least: float, most_taper: float
) -> None:
    far = width + taper
    assume(far >= 24 and least <= face)
    answer = layout(width_near=width, width_far=far, face_width=face, least_width=least, most_taper=most_taper)
    best = best_by_trial(width, far, 0.25, face)
    assert narrowest(answer) >= min(least, best) - 0.02
    if best >= least + 0.02:
        assert not any("no start line gives more" in caution for caution in answer["cautions"])


@given(rooms, gaps, faces)
def test_parallel_walls_give_parallel_rows(width: float, gap: float, face: float) -> None:
    answer = layout(width_near=width, gap=gap, face_width=face, least_width=0.25)
    assert answer["first_near"] == answer["first_far"]
    assert answer["last_near"] == pytest.approx(answer["last_far"])
    assert not answer["split"]
    assert narrowest(answer) >= min(0.25, face / 2) - TINY
