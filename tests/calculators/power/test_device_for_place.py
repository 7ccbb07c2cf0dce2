"""The device for a place: one device each time, and its protection by room, water and height."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.power.device_for_place import ROOMS, device_for_place
from calculators.run import run

devices = st.sampled_from(["receptacle", "switch", "three-way", "dimmer"])
rooms = st.sampled_from(list(ROOMS))


@given(
    device=devices,
    room=rooms,
    sink=st.integers(0, 400),
    tub=st.integers(0, 400),
    height=st.integers(0, 140),
    upstream=st.booleans(),
    breaker=st.sampled_from(["15", "20"]),
)
def test_one_device_for_one_place(
    device: str, room: str, sink: int, tub: int, height: int, upstream: bool, breaker: str
) -> None:
    answer = device_for_place(
        device=device, room=room, sink=sink, tub=tub, height=height, damp=False, upstream=upstream, breaker=breaker
    )
    counts = [answer["receptacles"], answer["gfci_devices"], answer["switches"], answer["dimmers"]]
    assert sorted(counts) == [0, 0, 0, int(answer["allowed"])]
    assert answer["answer"].startswith("none") == (not answer["allowed"])
    assert ("TR" in answer["marks"]) == (device == "receptacle" and height <= 66)
    assert not (answer["ground_fault"] and device != "receptacle")
    assert (answer["gfci_devices"] == 1) == (answer["ground_fault"] and not upstream and answer["allowed"])
    if device == "receptacle":
        wet = room in ("kitchen", "bathroom", "laundry")
        assert answer["allowed"] == (tub >= 36 and not (wet and breaker == "15"))


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"room": "bathroom", "tub": 0.0, "breaker": "20"}, "none here: within 3 ft of a tub or shower"),
        ({"room": "bathroom", "tub": 35.875, "breaker": "20"}, "none here: within 3 ft of a tub or shower"),
        ({"tub": 20.0}, "none here: within 3 ft of a tub or shower"),
        ({"device": "switch", "tub": 0.0}, "none here: inside the space of a tub or shower"),
        ({"room": "bathroom"}, "none on this circuit: receptacles of a bathroom are on 20 A"),
        ({"room": "laundry"}, "none on this circuit: receptacles of a laundry are on 20 A"),
        ({"room": "kitchen"}, "none on this circuit: receptacles of a kitchen are on 20 A"),
    ],
)
def test_where_none_goes(given: dict[str, Any], said: str) -> None:
    answer = run(device_for_place, given)
    assert (answer["answer"], answer["allowed"]) == (said, False)
    assert "ask the electrician" in answer["cautions"][1]


def test_a_sink_is_no_tub() -> None:
    """A receptacle stands beside a basin, and not beside a tub."""
    beside_basin = run(device_for_place, {"room": "bathroom", "sink": 6.0, "tub": 60.0, "breaker": "20"})
    assert beside_basin["allowed"] and beside_basin["ground_fault"]
    assert not run(device_for_place, {"room": "bathroom", "sink": 60.0, "tub": 6.0, "breaker": "20"})["allowed"]


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({}, "a receptacle, 15 A, marked TR"),
        ({"height": 70.0}, "a receptacle, 15 A"),
        ({"room": "kitchen", "breaker": "20"}, "a receptacle with ground-fault device, 15 A, marked TR"),
        ({"room": "kitchen", "breaker": "20", "upstream": True}, "a receptacle, 15 A, marked TR"),
        ({"room": "bathroom", "breaker": "20", "tub": 36.0}, "a receptacle with ground-fault device, 15 A, marked TR"),
        ({"room": "outdoors"}, "a receptacle with ground-fault device, 15 A, marked TR and WR"),
        ({"damp": True}, "a receptacle with ground-fault device, 15 A, marked TR and WR"),
        ({"breaker": "20", "alone": True}, "a receptacle, 20 A, marked TR"),
        ({"breaker": "20"}, "a receptacle, 15 A, marked TR"),
        ({"device": "switch", "room": "outdoors"}, "a switch, in a weatherproof box and cover"),
        ({"device": "three-way"}, "a three-way switch"),
        ({"device": "dimmer"}, "a dimmer"),
    ],
)
def test_what_to_take(given: dict[str, Any], said: str) -> None:
    assert run(device_for_place, given)["answer"] == said


def test_cautions() -> None:
    assert "go dead" in device_for_place(room="garage", upstream=True)["cautions"][1]
    assert "20 A circuit of its own" in device_for_place(room="garage")["cautions"][1]
    assert "far wall" in device_for_place(room="bathroom", tub=30, breaker="20")["cautions"][2]
    assert "within 3 ft of each basin" in device_for_place(room="bathroom", breaker="20")["cautions"][1]
    assert "kind of load" in device_for_place(device="dimmer")["cautions"][1]
    assert "neutral" in device_for_place(device="switch")["cautions"][1]
    assert "keeps rain out" in device_for_place(damp=True)["cautions"][1]
