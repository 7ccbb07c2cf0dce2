"""A rectangular slab: its quantities by other ways of counting, its cautions and its drawing."""

from __future__ import annotations

from math import ceil, hypot
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.concrete.slab_concrete import slab_concrete
from calculators.declaration import Answer, Refused
from calculators.run import run
from tests.shapes import drawing_of, measured, shapes_of

lengths = st.floats(12, 2400)
counts = st.integers(0, 2)
inside = st.floats(2, 16)


def slab(**changes: Any) -> Answer:
    """The answer for the standard inputs with these changes."""
    return run(slab_concrete, changes)


def test_the_standard_pad() -> None:
    answer = slab()
    assert (answer["area"], answer["boards"], answer["stakes"], answer["loads"]) == (200, 4, 26, 1)
    assert answer["forms"] == 720
    assert answer["drop"] == pytest.approx(6)
    assert answer["cautions"] == []


def test_working_says_the_arithmetic() -> None:
    assert slab(length=240, width=192, thickness=4, waste=5)["working"] == [
        "20' 0\" x 16' 0\" = 320 sq ft; x 4 in = 106.67 cu ft; 27 cu ft a yard: 3.95 cu yd.",
        "Plus 5 % = 4.15, order 4-1/4 cu yd.",
        "Base: 21' 0\" x 17' 0\" x 4 in compacted = 4.41 cu yd, plus 25 % loose = 5.51 cu yd x 2950 lb = 8.13 tons.",
        "Forms: 2 x 16' 0\" + 2 x 20' 0\" = 72' 0\".",
    ]


def test_an_edge_without_a_form_has_a_strip_and_no_base_beyond() -> None:
    answer = slab(ends=1, sides=2)
    assert (answer["forms"], answer["strip"]) == (120 + 480, 120)
    assert answer["base"] == pytest.approx(246 * 132 * 4 / 1728)
    none = slab(ends=0, sides=0)
    assert (none["forms"], none["boards"], none["stakes"], none["strip"]) == (0, 0, 0, 720)
    assert none["base"] == pytest.approx(240 * 120 * 4 / 1728)


def test_bars_are_counted_both_ways() -> None:
    answer = slab(length=240, width=120, reinforced=True, bar_spacing=18)
    along = ceil(114 / 18) + 1
    across = ceil(234 / 18) + 1
    assert answer["bars"] == along * 234 + across * 114
    assert slab()["bars"] == slab()["supports"] == slab()["wire"] == 0
    assert answer["supports"] == 50
    assert slab(length=240, width=120, reinforced=True, support_spacing=36)["supports"] == ceil(28800 / 1296)
    assert answer["wire"] == answer["bars"] / 3840
    short = slab(length=240, width=120, reinforced=True, bar_spacing=18, bar_stock=120)
    assert short["bars"] == answer["bars"] + 2 * 24 * along
    assert slab(bag_yield=0.3)["bags"] == 2 * slab()["bags"]


def test_a_flat_slab_and_a_second_truck_are_cautioned() -> None:
    assert slab(fall=0)["cautions"] == [
        "Fall along its length: 0 % is looser than the 2 % of IRC R401.3 beside a house; "
        "keep to it, or ask whoever answers for the work"
    ]
    (said,) = slab(length=720, width=480)["cautions"]
    assert said.startswith("5 loads: agree the time between trucks")


@given(lengths, lengths, inside, counts, counts)
def test_every_slab_adds_up(length: float, width: float, thickness: float, ends: int, sides: int) -> None:
    answer = slab(length=length, width=width, thickness=thickness, ends=ends, sides=sides)
    assert answer["concrete"] == pytest.approx(length * width * thickness / 1728)
    assert answer["forms"] + answer["strip"] == pytest.approx(2 * (length + width))
    assert answer["diagonal"] == pytest.approx(hypot(length, width))
    assert answer["boards"] * 192 >= answer["forms"] - 1e-6
    edges = ends * [width] + sides * [length]
    assert answer["stakes"] >= sum(edge / 36 + 1 for edge in edges) - 1e-6
    assert answer["stakes"] < sum(edge / 36 + 2 for edge in edges) + 1e-6


@pytest.mark.parametrize(("name", "value"), [("length", 11.9), ("thickness", 17), ("ends", 3), ("fall", 0.11)])
def test_beyond_the_limits_it_refuses(name: str, value: float) -> None:
    with pytest.raises(Refused) as refused:
        slab(**{name: value})
    assert refused.value.input == name


def test_the_plan_is_to_scale_and_the_section_one_multiple() -> None:
    sheet, answer = drawing_of("slab-concrete", length=240.0, width=192.0, thickness=4.0, base_thickness=6.0)
    slab, base = shapes_of(sheet, "area", style="cut", fill="none")[0], shapes_of(sheet, "area", style="hidden")[0]
    assert slab["points"] == [[0.0, 0.0], [240.0, 0.0], [240.0, 192.0], [0.0, 192.0]]
    assert base["points"] == [[-6.0, -6.0], [246.0, -6.0], [246.0, 198.0], [-6.0, 198.0]]
    found = measured(sheet)
    assert (found["above: 20' 0\""], found["left: 16' 0\""]) == (240.0, 192.0)
    times = float(next(s["text"] for s in shapes_of(sheet, "label") if "section" in s["text"]).split()[5])
    assert found["right: slab 4 in"] == pytest.approx(4 * times)
    assert found["right: base 6 in"] == pytest.approx(6 * times)
    assert found["below: base beyond 6 in"] == pytest.approx(6 * times)
    (board,) = shapes_of(sheet, "area", fill="wood", style="cut")
    assert board["points"][1][1] - board["points"][2][1] == pytest.approx(-4 * times)
    assert answer["diagonal"] == pytest.approx(hypot(240, 192))


def test_without_forms_the_section_shows_the_strip() -> None:
    sheet, _ = drawing_of("slab-concrete", ends=0, sides=0)
    assert shapes_of(sheet, "area", fill="wood") == []
    assert [one["text"] for one in shapes_of(sheet, "leader") if "strip" in one["text"]] == ["isolation strip"]
