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
    assert device_for_place(sink=72)["ground_fault"]
    assert device_for_place(tub=72)["ground_fault"]
    assert not device_for_place(sink=72.125, tub=72.125)["ground_fault"]


@pytest.mark.parametrize(("tub", "allowed"), [(0, False), (35.875, False), (36, True)])
def test_three_feet_of_tub_or_shower(tub: float, allowed: bool) -> None:
    """NEC 2020 and 2023 406.9(C), as training pages quote it: no receptacle within 3 ft across of a tub or shower."""
    assert device_for_place(room="bathroom", tub=tub, breaker="20")["allowed"] is allowed


@pytest.mark.parametrize("room", ["bathroom", "laundry", "kitchen"])
def test_rooms_on_20_a(room: str) -> None:
    """NEC 2017 210.11(C)(1) to (3), as electricians quote it: 20 A for kitchen, laundry and bathroom receptacles."""
    assert device_for_place(room=room)["circuit"] == 20
    assert not device_for_place(room=room, breaker="15")["allowed"]
    assert device_for_place(room=room, breaker="20")["allowed"]


def test_tamper_resistant_height() -> None:
    """NEC 406.12: receptacles above 5-1/2 ft are excepted. From memory."""
    assert device_for_place(height=66)["marks"] == "TR"
    assert device_for_place(height=66.125)["marks"] == ""
