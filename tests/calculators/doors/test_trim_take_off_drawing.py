"""The opening that is drawn has the lengths that are cut."""

from __future__ import annotations

from tests.calculators.doors.test_trim_take_off import DEN, DOOR, WINDOW
from tests.shapes import drawing_of, measured, shapes_of


def test_a_door_s_legs_and_head() -> None:
    found, _ = drawing_of("trim-take-off", openings=[DOOR])
    assert measured(found) == {"left: 82-7/16 in": 82.4375, "above: 34-7/8 in": 34.875, "below: 30 in": 30}
    assert len(shapes_of(found, "area", fill="wood")) == 3
    assert found["title"] == "Bath, from the front"


def test_a_window_s_stool_reaches_past_the_casing() -> None:
    found, answer = drawing_of("trim-take-off", openings=[WINDOW])
    stool = next(row["length"] for row in answer["pieces"] if row["stock"] == "stool")
    assert measured(found)["below: 42-3/8 in"] == stool
    assert "the stool 42-3/8 in, the apron 40-7/8 in" in found["alt"]


def test_a_window_cased_all_round_has_four_pieces() -> None:
    found, _ = drawing_of("trim-take-off", openings=[WINDOW], window_trim="frame")
    assert measured(found)["left: 52-7/8 in"] == 52.875
    assert len(shapes_of(found, "area", fill="wood")) == 4


def test_without_openings_the_run_of_base_is_drawn() -> None:
    found, _ = drawing_of("trim-take-off", rooms=[DEN], no_base=96.0)
    assert measured(found) == {"above: 44' 0\"": 528, "below: 36' 0\"": 432}
    bare, _ = drawing_of("trim-take-off", rooms=[DEN], no_base=528.0)
    assert "with no base" in bare["alt"]
