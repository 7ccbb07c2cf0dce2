"""The device for a place: one device each time, and its protection by room, water and height."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.power.device_for_place import CALCULATOR, ROOMS, device_for_place
from calculators.run import run

devices = st.sampled_from(["receptacle", "switch", "three-way", "dimmer"])
rooms = st.sampled_from([each["name"] for each in ROOMS])


@given(device=devices, room=rooms, water=st.integers(0, 400), height=st.integers(0, 140), upstream=st.booleans())
def test_one_device_for_one_place(device: str, room: str, water: int, height: int, upstream: bool) -> None:
    answer = device_for_place(device, room, water, height, False, upstream)
    counts = [answer["receptacles"], answer["gfci_devices"], answer["switches"], answer["dimmers"]]
    assert sorted(counts) == [0, 0, 0, 1]
    assert ("TR" in answer["marks"]) == (device == "receptacle" and height <= 66)
    assert not (answer["ground_fault"] and device != "receptacle")
    assert (answer["gfci_devices"] == 1) == (answer["ground_fault"] and not upstream)


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({}, "a receptacle, 15 A, marked TR"),
        ({"height": 70.0}, "a receptacle, 15 A"),
        ({"room": "kitchen"}, "a receptacle with ground-fault device, 15 A, marked TR"),
        ({"room": "kitchen", "upstream": True}, "a receptacle, 15 A, marked TR"),
        ({"room": "outdoors"}, "a receptacle with ground-fault device, 15 A, marked TR and WR"),
        ({"damp": True}, "a receptacle, 15 A, marked TR and WR"),
        ({"breaker": "20", "alone": True}, "a receptacle, 20 A, marked TR"),
        ({"breaker": "20"}, "a receptacle, 15 A, marked TR"),
        ({"device": "switch", "room": "outdoors"}, "a switch"),
        ({"device": "three-way"}, "a three-way switch"),
        ({"device": "dimmer"}, "a dimmer"),
    ],
)
def test_what_to_take(given: dict[str, Any], said: str) -> None:
    assert run(CALCULATOR, given)["answer"] == said


def test_cautions() -> None:
    assert "go dead" in device_for_place(room="garage", upstream=True)["cautions"][1]
    assert "20 A circuits" in device_for_place(room="kitchen")["cautions"][1]
    assert "zone of tub" in device_for_place(room="bathroom", water=30)["cautions"][1]
    assert "kind of load" in device_for_place(device="dimmer")["cautions"][1]
    assert "neutral" in device_for_place(device="switch")["cautions"][1]
    assert "keeps rain out" in device_for_place(damp=True)["cautions"][1]
