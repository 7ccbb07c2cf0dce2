"""One spot for a smoke alarm: row by row, and the limits belong to what it hangs on."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.power.alarm_spot import alarm_spot
from calculators.power.alarm_spot_drawing import alarm_spot_drawing
from calculators.run import run

distances = st.integers(0, 300)
mounts = st.sampled_from(["ceiling", "wall", "slope"])


@given(mount=mounts, cooking=distances, bath=distances, edge=distances, down=distances, across=distances)
def test_it_passes_where_every_row_does(mount: str, cooking: int, bath: int, edge: int, down: int, across: int) -> None:
    answer = alarm_spot(
        mount=mount,
        sensor="photoelectric",
        cooking=cooking,
        bath=bath,
        register=60,
        fan=60,
        door=60,
        edge=edge,
        down=down,
        peak_across=across,
        peak_down=down,
    )
    rows = answer["distances"]
    assert answer["passes"] == all(each["passes"] for each in rows)
    assert answer["faults"] == sum(not each["passes"] for each in rows)
    assert len(rows) == (7 if mount == "slope" else 6)
    for each in rows:
        assert (each["what"] in answer["verdict"]) == (not each["passes"])


@pytest.mark.parametrize(
    ("given", "verdict"),
    [
        ({}, "passes"),
        ({"cooking": 71.0}, "fails: cooking appliance"),
        ({"cooking": 119.0, "sensor": "ionization-silenced"}, "fails: cooking appliance"),
        ({"bath": 35.0, "register": 10.0}, "fails: bathroom door, grille that blows"),
        ({"fan": 30.0}, "fails: tip of a fan's blade"),
        ({"door": 253.0}, "fails: way to the sleeping room's door"),
        ({"edge": 3.0}, "fails: nearest wall"),
        ({"mount": "wall", "edge": 0.0}, "passes"),
        ({"mount": "wall", "down": 13.0}, "fails: top of the alarm to the ceiling"),
        ({"mount": "wall", "down": 2.0}, "fails: top of the alarm to the ceiling"),
        ({"mount": "slope", "peak_across": 37.0}, "fails: across to the peak"),
        ({"mount": "slope", "peak_down": 3.0}, "fails: down from the peak"),
    ],
)
def test_verdicts(given: dict[str, Any], verdict: str) -> None:
    assert run(alarm_spot, given)["verdict"] == verdict


def test_it_warns_near_the_kitchen_and_on_walls() -> None:
    assert "listed for it" in alarm_spot(cooking=90)["cautions"][1]
    assert len(alarm_spot(cooking=120)["cautions"]) == 1
    assert len(alarm_spot(cooking=60)["cautions"]) == 1
    assert "inside wall" in alarm_spot(mount="wall")["cautions"][1]
    assert "maker's sheet wins" in alarm_spot.cannot_decide


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"mount": "ceiling", "edge": 3.0}, "3 in from the wall, where 4 in is least"),
        ({"mount": "wall", "down": 10.0}, "10 in below the ceiling, where 4 in to 12 in is asked"),
        ({"mount": "slope", "peak_across": 30.0}, "30 in across from the peak, where 36 in is most"),
    ],
)
def test_drawing_says_where_it_hangs(given: dict[str, Any], said: str) -> None:
    values: dict[str, Any] = {"edge": 12.0, "down": 6.0, "peak_across": 24.0, "peak_down": 6.0, **given}
    answer = alarm_spot(**values)
    drawn = alarm_spot_drawing(values, answer)
    assert said in drawn["alt"]
    assert answer["verdict"] in drawn["alt"]
    assert any(shape.get("style") == "limit" for shape in drawn["shapes"])
