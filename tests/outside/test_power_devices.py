"""Devices by place against the electrical code's rooms, as they are quoted."""

from __future__ import annotations

import pytest

from calculators.power.device_for_place import device_for_place


@pytest.mark.parametrize(
    ("room", "ground"),
    [
        ("bathroom", True),
        ("garage", True),
        ("outdoors", True),
        ("crawl-space", True),
        ("basement", True),
        ("kitchen", True),
        ("laundry", True),
        ("living", False),
    ],
)
def test_rooms_with_ground_fault_protection(room: str, ground: bool) -> None:
    """NEC 2014 210.8(A)(1) to (10), as a town quotes it. At the counter for a kitchen; later editions all of it."""
    assert device_for_place(room=room)["ground_fault"] is ground


def test_a_finished_basement_has_both() -> None:
    """NEC 2020 210.8(A)(5) has basements without 'unfinished'; 210.12(A) has rooms like a family room. From memory."""
    answer = device_for_place(room="finished-basement")
    assert answer["ground_fault"] and answer["arc_fault"]


def test_six_feet_of_water() -> None:
    """NEC 2014 210.8(A)(7) and (9), as a town quotes it: within 6 ft of a sink, tub or shower."""
    assert device_for_place(water=72)["ground_fault"]
    assert not device_for_place(water=72.125)["ground_fault"]


def test_tamper_resistant_height() -> None:
    """NEC 406.12: receptacles above 5-1/2 ft are excepted. From memory."""
    assert device_for_place(height=66)["marks"] == "TR"
    assert device_for_place(height=66.125)["marks"] == ""
