"""What the take-off of floor finish promises."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.flooring.floor_finish import floor_finish, next_start
from calculators.flooring.floor_inputs import CUBIC_FEET_A_GALLON
from calculators.run import run


def finish(**inputs: Any) -> dict[str, Any]:
    """The answer for an area, the rest at their defaults."""
    defaults = {declared.name: declared.default for declared in floor_finish.inputs}
    return run(floor_finish, {**defaults, "measured_area": 500.0, **inputs})


def test_gallons_are_area_coats_and_what_stays_in_the_can() -> None:
    answer = finish(waste=0)
    assert answer["finish"] / CUBIC_FEET_A_GALLON == pytest.approx(3)
    assert answer["containers"] == pytest.approx(3)
    assert finish(waste=10, container=5 * CUBIC_FEET_A_GALLON)["containers"] == pytest.approx(3.3 / 5)


def test_pads_and_strainers_go_by_the_coat_and_screens_by_the_floor() -> None:
    answer = finish(coats=2)
    assert (answer["pads"], answer["strainers"], answer["screens"]) == (2, 2, 1)
    assert finish(coats=3, screen_coverage=200)["screens"] == 2 * 3


def test_three_coats_a_day_apart_shut_the_house_for_three_days() -> None:
    answer = finish(coats=3, recoat_wait=24, walk_wait=24)
    assert answer["closed"] == 72
    assert [row["day"] for row in answer["schedule"]] == [1, 2, 3]
    assert answer["closed_all"] == pytest.approx(72 + answer["work_coat"])


def test_a_quick_finish_takes_two_coats_a_day_and_the_third_next_morning() -> None:
    answer = finish(coats=3, recoat_wait=4, walk_wait=12)
    assert [row["start"] for row in answer["schedule"]] == [0, 4, 24]
    assert answer["work_days"] == 2
    assert answer["closed"] == 36


def test_a_wait_that_ends_at_night_waits_for_the_morning() -> None:
    assert next_start(12, 1, 8) == 24
    assert next_start(30, 1, 8) == 30
    assert next_start(31.5, 1, 8) == 48


def test_what_cannot_go_well_is_said() -> None:
    assert "longer than the working day" in finish(measured_area=5000, people=1)["cautions"][0]
    assert any("wet floor" in text for text in finish(measured_area=2000, recoat_wait=2)["cautions"])
    assert any("Socks" in text for text in finish(walk_wait=12)["cautions"])
    assert finish()["cautions"] == []


def test_no_floor_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        finish(measured_area=0)
    assert refused.value.input == "rooms"


@given(area=st.floats(10, 3000), coats=st.integers(1, 8), wait=st.floats(1, 240), people=st.integers(1, 6))
def test_every_coat_waits_and_ends_in_the_working_day(area: float, coats: int, wait: float, people: int) -> None:
    answer = finish(measured_area=area, coats=coats, recoat_wait=wait, walk_wait=wait, people=people)
    starts = [row["start"] for row in answer["schedule"]]
    assert len(starts) == coats
    for before, after in pairwise(starts):
        assert after - before >= wait - 1e-6
        in_day = round(after, 6) % 24
        assert in_day + min(answer["work_coat"], 8) <= 8 + 1e-6 or in_day < 1e-6
    assert 1 <= answer["work_days"] <= coats
    assert answer["closed"] >= coats * wait - 1e-6
