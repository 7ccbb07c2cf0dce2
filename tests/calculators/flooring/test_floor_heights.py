"""What is said about two floors that meet."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.flooring.floor_heights import floor_heights
from calculators.run import run
from tests.shapes import drawing_of, measured


def meet(**inputs: Any) -> dict[str, Any]:
    """The answer with these changes."""
    defaults = {declared.name: declared.default for declared in floor_heights.inputs}
    return run(floor_heights, {**defaults, **inputs})


def test_our_layers_are_flush() -> None:
    answer = meet()
    assert answer["meeting"] == "flush"
    assert answer["higher"] == "neither"
    assert answer["cautions"] == []
    assert answer["reducer"] == 0


def test_a_reducer_and_its_bevel() -> None:
    answer = meet(backer=0.5)
    assert (answer["reducer"], meet(backer=0.5, doorway=30)["reducer"]) == (36, 30)
    assert answer["meeting"] == "reducer"
    assert answer["higher"] == "tile"
    assert answer["difference"] == pytest.approx(1.0 - 0.78125)
    assert answer["cautions"] == []
    wide = meet(backer=0.625)
    assert "bevelled" in wide["cautions"][0]
    assert wide["bevel"] == pytest.approx(2 * wide["difference"])


def test_too_much_is_settled_in_the_subfloor() -> None:
    answer = meet(backer=0, backer_bed=0, tile=0.1875, bed=0.0625)
    assert answer["meeting"] == "change the layers"
    assert answer["higher"] == "strip"


@given(tile=st.floats(0.125, 0.6), bed=st.floats(0.03125, 0.25), strip=st.floats(0.5, 1.5))
def test_the_backer_that_is_named_makes_them_flush(tile: float, bed: float, strip: float) -> None:
    answer = meet(tile=tile, bed=bed, strip=strip)
    if 0 < answer["backer_flush"] <= 1:
        assert meet(tile=tile, bed=bed, strip=strip, backer=answer["backer_flush"])["meeting"] == "flush"


def test_the_section_is_to_scale() -> None:
    sheet, answer = drawing_of("floor-heights")
    found = measured(sheet)
    assert found["left: 3/4 in"] == pytest.approx(answer["tile_height"])
