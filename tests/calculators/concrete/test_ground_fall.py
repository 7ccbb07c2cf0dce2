"""Ground falling away from a house: with room and without, soil and paving, and its drawing."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.concrete.ground_fall import ground_fall
from calculators.declaration import Answer, Refused
from calculators.run import run
from tests.shapes import drawing_of, measured, shapes_of


def fall(**changes: Any) -> Answer:
    """The answer for the standard inputs with these changes."""
    return run(ground_fall, changes)


def test_with_the_whole_strip() -> None:
    answer = fall()
    assert (answer["drop_wanted"], answer["drop_fresh"], answer["way"]) == (6, 7, "falls off freely")
    assert (answer["verdict"], answer["cautions"]) == ("passes", [])
    assert fall(room=600)["drop_wanted"] == 6


def test_with_less_room_a_swale_takes_it() -> None:
    answer = fall(room=60, reading=4)
    assert (answer["drop_wanted"], answer["way"]) == (3, "to a swale or a drain")
    (said,) = answer["cautions"]
    assert said.startswith("Less room than 10' 0\"")


def test_working_says_the_arithmetic() -> None:
    assert fall(room=60)["working"] == [
        "Over 5' 0\" the ground drops 3 in at least, 5 %.",
        "Fresh: 3 in + 1 in that it settles = 4 in.",
        "Swale: 40' 0\" x 2 % = 9-5/8 in.",
    ]


def test_paving_does_not_settle() -> None:
    answer = fall(paved=True, reading=2.4)
    assert answer["drop_wanted"] == answer["drop_fresh"] == pytest.approx(2.4)
    assert answer["verdict"] == "passes"


@pytest.mark.parametrize(("reading", "verdict"), [(6, "passes"), (5.5, "short by 1/2 in"), (-1, "short by 7 in")])
def test_a_reading_is_judged(reading: float, verdict: str) -> None:
    assert fall(reading=reading)["verdict"] == verdict


def test_what_passes_by_a_hair_is_cautioned() -> None:
    assert fall(reading=6)["cautions"] == ["It passes today. Fresh ground settles about 1 in at the wall; build 7 in."]


@given(st.floats(12, 2400), st.booleans())
def test_the_slope_is_the_drop_over_what_is_there(room: float, paved: bool) -> None:
    answer = fall(room=room, paved=paved)
    assert answer["slope"] * min(room, 120) == pytest.approx(answer["drop_wanted"])
    assert answer["drop_fresh"] >= answer["drop_wanted"]


@pytest.mark.parametrize("looser", [{"drop": 5}, {"short_slope": 0.04}, {"paved_fall": 0.01}])
def test_a_rule_of_the_code_is_not_typed_away(looser: dict[str, float]) -> None:
    """IRC R401.3: 6 in within 10 ft, 5 % where there is less room, 2 % on paving."""
    with pytest.raises(Refused, match=r"looser than .* of IRC R401\.3"):
        fall(**looser)


def test_a_stricter_crew_is_followed() -> None:
    assert fall(drop=8)["drop_wanted"] == 8
    (said,) = fall(swale_fall=0.01, reading=7)["cautions"]
    assert said.startswith("Fall of the swale: 1 % is looser than the 2 % of IRC R401.3 within 10 ft of a house")


def test_beyond_the_limits_it_refuses() -> None:
    with pytest.raises(Refused):
        fall(room=6)


def test_the_drawing_is_to_scale() -> None:
    sheet, _ = drawing_of("ground-fall", room=60.0)
    assert measured(sheet) == {"above: 5' 0\"": 60.0, "right: drop 4 in": 4.0}
    assert [one["text"] for one in shapes_of(sheet, "leader")] == ["house wall", "swale or drain"]
    ground = shapes_of(sheet, "area", fill="earth")[0]["points"]
    assert ground[:2] == [[0.0, 0.0], [60.0, -4.0]]
    whole, _ = drawing_of("ground-fall")
    assert [one["text"] for one in shapes_of(whole, "leader")] == ["house wall"]
