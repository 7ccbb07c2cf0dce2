"""The gas meter's place: row by row, and never without saying who decides."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.power.gas_meter_place import gas_meter_place
from calculators.power.gas_meter_place_drawing import gas_meter_place_drawing
from calculators.run import run

distances = st.integers(0, 200)


@given(ignition=distances, opening=distances, electric=distances, corner=distances, vehicles=distances)
def test_it_passes_where_every_row_does(ignition: int, opening: int, electric: int, corner: int, vehicles: int) -> None:
    answer = gas_meter_place(
        inside=False, ignition=ignition, opening=opening, electric=electric, corner=corner, vehicles=vehicles
    )
    rows = answer["distances"]
    assert all(each["passes"] == (each["measured"] >= each["limit"]) for each in rows)
    assert answer["passes"] == all(each["passes"] for each in rows)
    assert answer["faults"] == sum(not each["passes"] for each in rows)
    for each in rows:
        assert (each["what"] in answer["verdict"]) == (not each["passes"])


@pytest.mark.parametrize(
    ("given", "verdict"),
    [
        ({}, "passes; the utility decides"),
        ({"ignition": 35.9}, "fails: source of ignition"),
        ({"opening": 20.0, "electric": 40.0}, "fails: window, door or air intake, electric meter"),
        ({"vehicles": 10.0}, "fails: where vehicles drive"),
        ({"vehicles": 10.0, "guarded": True}, "passes; the utility decides"),
        ({"inside": True, "opening": 0.0}, "passes; the utility decides"),
        ({"inside": True, "ventilated": False}, "fails: no ventilation"),
        ({"ventilated": False}, "passes; the utility decides"),
    ],
)
def test_verdicts(given: dict[str, Any], verdict: str) -> None:
    assert run(gas_meter_place, given)["verdict"] == verdict


def test_it_always_says_whose_work_it_is() -> None:
    assert "licensed fitter" in gas_meter_place()["cautions"][0]
    assert "set no meter indoors" in gas_meter_place(inside=True)["cautions"][2]
    assert "Posts in concrete" in gas_meter_place(vehicles=10)["cautions"][2]
    assert "utility decides" in gas_meter_place.cannot_decide


def test_drawing_has_a_bar_for_each_row() -> None:
    answer = gas_meter_place(opening=0)
    drawn = gas_meter_place_drawing({}, answer)
    bars = [shape for shape in drawn["shapes"] if shape["kind"] == "area"]
    assert len(bars) == len(answer["distances"]) - 1
    assert "window, door or air intake 0 in where 36 in is least: fails" in drawn["alt"]


def test_the_law_is_not_typed_away() -> None:
    """49 CFR 192.353(c): 3 ft from ignition. A crew may ask for more."""
    with pytest.raises(Refused, match=r"0 in is looser than the 36 in of 49 CFR 192\.353"):
        run(gas_meter_place, {"ignition": 0, "ignition_least": 0})
    assert run(gas_meter_place, {"ignition": 40, "ignition_least": 48})["verdict"] == "fails: source of ignition"


@pytest.mark.parametrize(("input", "typical"), [("opening_least", 36), ("electric_least", 36), ("vehicles_least", 60)])
def test_a_distance_looser_than_utilities_ask_is_refused(input: str, typical: float) -> None:
    assert run(gas_meter_place, {input: typical})["cautions"][0].startswith("The utility sets the meter")
    with pytest.raises(Refused, match=f"is looser than the {typical} in of typical utility rules"):
        run(gas_meter_place, {input: typical - 1})
