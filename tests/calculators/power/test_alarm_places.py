"""Alarms of a dwelling: every place is counted once, and what cannot be is refused."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.power.alarm_places import alarm_places
from calculators.run import run


@given(
    storeys=st.integers(1, 4),
    basement=st.booleans(),
    attic=st.booleans(),
    rooms=st.integers(1, 12),
    fuel=st.booleans(),
    garage=st.booleans(),
    each_level=st.booleans(),
    combined=st.booleans(),
)
def test_the_places_add_up(
    storeys: int, basement: bool, attic: bool, rooms: int, fuel: bool, garage: bool, each_level: bool, combined: bool
) -> None:
    answer = alarm_places(
        storeys=storeys,
        basement=basement,
        attic=attic,
        sleeping_rooms=rooms,
        sleeping_areas=1,
        sleeping_levels=1,
        split_levels=0,
        fuel=fuel,
        garage=garage,
        fuel_rooms=0,
        co_each_level=each_level,
        combined=combined,
    )
    assert answer["smoke"] == sum(each["smoke"] for each in answer["places"])
    assert answer["co"] == sum(each["co"] for each in answer["places"])
    assert answer["smoke"] == rooms + 1 + (storeys + basement + attic - 1)
    assert answer["devices"] == answer["both"] + answer["smoke_only"] + answer["co_only"]
    assert answer["devices"] == (answer["smoke"] if combined else answer["smoke"] + answer["co"])
    assert answer["co"] <= answer["smoke"]
    assert (answer["co"] > 0) == (fuel or garage)


@pytest.mark.parametrize(
    ("given", "smoke", "co"),
    [
        ({}, 3, 1),
        ({"storeys": 2, "basement": True, "sleeping_rooms": 3}, 6, 3),
        ({"storeys": 2, "basement": True, "sleeping_rooms": 3, "co_each_level": False}, 6, 1),
        ({"storeys": 2, "sleeping_rooms": 3, "sleeping_areas": 2, "sleeping_levels": 2}, 5, 2),
        ({"storeys": 2, "split_levels": 1}, 3, 1),
        ({"fuel": False}, 3, 0),
        ({"fuel": False, "garage": True}, 3, 1),
        ({"fuel": False, "fuel_rooms": 1}, 3, 2),
        ({"attic": True}, 4, 2),
    ],
)
def test_dwellings(given: dict[str, Any], smoke: int, co: int) -> None:
    answer = run(alarm_places, given)
    assert [answer["smoke"], answer["co"]] == [smoke, co]


@pytest.mark.parametrize(
    ("given", "input"),
    [
        ({"sleeping_areas": 3}, "sleeping_areas"),
        ({"storeys": 2, "sleeping_levels": 2}, "sleeping_levels"),
        ({"sleeping_areas": 2, "sleeping_levels": 2}, "sleeping_levels"),
        ({"split_levels": 1}, "sleeping_levels"),
        ({"fuel_rooms": 3}, "fuel_rooms"),
    ],
)
def test_what_no_dwelling_has_is_refused(given: dict[str, Any], input: str) -> None:
    with pytest.raises(Refused) as refused:
        alarm_places(**given)
    assert refused.value.input == input


def test_it_says_what_a_place_may_ask_besides() -> None:
    assert "ask before you leave it out" in alarm_places(co_each_level=False)["cautions"][1]
    assert "The place may" in alarm_places(fuel=False)["cautions"][1]
    assert "foot of the stairs" in alarm_places(basement=True)["cautions"][-1]
    assert "ask the fitter" in alarm_places(fuel_rooms=1)["cautions"][1]
