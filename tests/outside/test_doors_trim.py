"""The trim take-off against another library's geometry, another solver, and a published bound."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box, get_coordinates

from calculators.doors.trim_pieces import sticks_for
from calculators.doors.trim_take_off import trim_take_off
from calculators.run import run
from tests.outside.test_doors_cut_list import least_by_highs


def take_off(**inputs: Any) -> dict[str, Any]:
    defaults = {declared.name: declared.default for declared in trim_take_off.inputs}
    return run(trim_take_off, {**defaults, **inputs})


# shapely: the frame of casing is what lies between the opening grown by the reveal, and the opening grown by reveal
# and casing, corners square. Mitred pieces have the middle of their two edges as their mean length.
@given(st.integers(12, 120), st.integers(24, 96), st.integers(8, 40), st.integers(0, 5))
def test_a_mitred_frame_covers_what_shapely_s_does(width: int, height: int, casing: int, reveal: int) -> None:
    wide, back = casing / 8, reveal / 16
    window = {"name": "", "kind": "window", "width": width, "height": height, "sides": 1, "count": 1}
    answer = take_off(openings=[window], window_trim="frame", casing_width=wide, reveal=back, casing_stock=288)
    outer = box(0, 0, width, height).buffer(back + wide, join_style="mitre")
    inner = box(0, 0, width, height).buffer(back, join_style="mitre")
    lengths = {row["piece"]: row["length"] for row in answer["pieces"]}
    left, low, right, high = outer.bounds
    assert lengths == {
        "window: leg": pytest.approx(high - low),
        "window: head and bottom": pytest.approx(right - left),
    }
    assert sum(row["count"] * (row["length"] - wide) * wide for row in answer["pieces"]) == pytest.approx(
        outer.area - inner.area
    )


# shapely: the walls of a room of any shape, less what lies in a band as wide as the cased door.
corners = st.lists(st.tuples(st.integers(0, 600), st.integers(0, 600)), min_size=3, max_size=9, unique=True)


@settings(max_examples=60)
@given(corners)
def test_walls_of_any_room_agree_with_shapely(points: list[tuple[int, int]]) -> None:
    hull = Polygon(points).convex_hull
    if hull.area < 144 or hull.length < 60:
        return
    outline = [[float(x), float(y)] for x, y in get_coordinates(hull)[:-1]]
    door = {"name": "", "kind": "door", "width": 30.0, "height": 80.0, "sides": 1, "count": 1}
    answer = take_off(rooms=[{"name": "room", "less": False, "points": outline}], openings=[door])
    cased = box(0, 0, 30, 80).buffer(2.25 + 3 / 16, join_style="mitre")
    assert answer["base"] == pytest.approx(hull.length - (cased.bounds[2] - cased.bounds[0]))


# First fit by length takes at most 11/9 of the least number of sticks and 6/9 of one: proved, and the bound is tight
# (G. Dosa, 2007). The least is scipy's milp over every way to cut a stick.
@settings(max_examples=30, deadline=None)
@given(st.lists(st.tuples(st.integers(30, 160), st.integers(1, 6)), min_size=1, max_size=5, unique_by=lambda p: p[0]))
def test_sticks_keep_the_proved_bound(drawn: list[tuple[int, int]]) -> None:
    lengths, counts = [float(length) for length, _ in drawn], [count for _, count in drawn]
    kerf = 0.125
    with_kerf = [length + kerf for length in lengths]
    least = round(least_by_highs(with_kerf, counts, [168 + kerf]) / (168 + kerf))
    pieces = [{"length": length, "count": count} for length, count in drawn]
    assert least <= sticks_for(pieces, 168, kerf) <= 11 / 9 * least + 6 / 9 + 1e-9


# A door of 2 ft 6 in x 6 ft 8 in with 2-1/4 in casing set back 3/16 in: legs a little under 7 ft, so that two come
# out of a stick of 14 ft, as the trade's stock lengths are made for. Worked by hand.
def test_the_trade_s_stock_lengths_fit_a_door() -> None:
    door = {"name": "", "kind": "door", "width": 30.0, "height": 80.0, "sides": 2, "count": 4}
    answer = take_off(openings=[door])
    assert [row["length"] for row in answer["pieces"]] == [82.4375, 34.875]
    assert answer["casing_fitted"] == 8 + 2
