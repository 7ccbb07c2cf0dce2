"""Size of a building drain: counting, the smallest size, what it carries, what is said."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.plumbing.drainage import drainage, flow_full, velocity
from calculators.run import compute, run

slopes = st.floats(0.125 / 12, 1)
sizes = st.sampled_from(["1.5", "2", "3", "4"])
roughnesses = st.floats(0.008, 0.03)


def test_a_two_bathroom_house() -> None:
    answer = compute(drainage, {"bathrooms": "2", "slope": "1/4 in/ft"})
    assert (answer["units"], answer["size"], answer["allowed"]) == (14, "3 in", 42)
    assert answer["fits"] is True
    assert answer["cautions"] == []


def test_working_says_the_arithmetic() -> None:
    assert drainage(bathrooms=2)["working"] == [
        "fixture units: 14; 3 in at 0.25 in/ft takes 42 (IPC Table 710.1(1))",
        "bore 3.068 in, R = bore / 4 = 0.0639 ft; speed = 1.486 / 0.013 x R^(2/3) x 0.02083^(1/2) = 2.64 ft/s",
        "half full 30.4 gpm, full 60.8 gpm",
    ]


@pytest.mark.parametrize(
    ("given", "size"),
    [
        ({"bathrooms": 0, "washers": 0, "kitchen_sinks": 1}, "1-1/2 in"),
        ({"bathrooms": 0, "washers": 1, "kitchen_sinks": 0}, "2 in"),
        ({"bathrooms": 0, "washers": 0, "kitchen_sinks": 2}, "2 in"),
        ({"bathrooms": 1, "washers": 0, "kitchen_sinks": 0}, "3 in"),
        ({"bathrooms": 8, "washers": 1, "kitchen_sinks": 1}, "4 in"),
        ({"bathrooms": 0, "washers": 0, "kitchen_sinks": 1, "slope": 0.125 / 12}, "3 in"),
    ],
)
def test_the_smallest_size(given: dict[str, float], size: str) -> None:
    assert run(drainage, given)["size"] == size


@pytest.mark.parametrize(
    ("given", "verdict"),
    [
        ({"pipe": "2"}, "too small for a water closet"),
        ({"pipe": "1.5", "bathrooms": 0.0}, "too small for a clothes washer"),
        ({"pipe": "2", "bathrooms": 0.0, "slope": 0.02}, "too flat for this size"),
        ({"pipe": "3", "bathrooms": 8.0}, "too small for so many units"),
        ({"pipe": "4"}, "large enough"),
    ],
)
def test_a_size_that_is_looked_at(given: dict[str, float | str], verdict: str) -> None:
    answer = run(drainage, given)
    assert answer["verdict"] == verdict
    assert answer["fits"] == (verdict == "large enough")


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"slope": 0.1 / 12}, "flatter than 1/8 in/ft"),
        ({"bathrooms": 0.0, "washers": 0.0, "kitchen_sinks": 0.0}, "No fixture is counted"),
        ({"other_units": 250.0}, "an engineer sizes it"),
    ],
)
def test_what_is_refused(given: dict[str, float], words: str) -> None:
    with pytest.raises(Refused) as caught:
        run(drainage, given)
    assert words in caught.value.message


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"slope": 0.125 / 12}, "slower than the 2 ft/s that carries solids along"),
        ({"pipe": "4"}, "does not clean itself better"),
        ({"bathrooms": 3.0}, "two or three toilets on a 3 in drain"),
        ({"other_units": 32.0}, "one more fixture takes the next size"),
        ({"slope": 0.06}, "Steeper than 1/2 in/ft"),
    ],
)
def test_cautions_stand_where_they_belong(given: dict[str, float | str], words: str) -> None:
    assert any(words in caution for caution in run(drainage, given)["cautions"])
    assert not any(words in caution for caution in run(drainage, {})["cautions"])


@given(bore=st.floats(1, 15), slope=slopes, n=roughnesses)
def test_rough_flat_and_narrow_pipes_carry_less(bore: float, slope: float, n: float) -> None:
    flow = flow_full(bore, slope, n)
    assert flow_full(bore, slope * 4, n) == pytest.approx(flow * 2)
    assert flow_full(bore, slope, n * 2) == pytest.approx(flow / 2)
    assert flow_full(bore * 8, slope, n) == pytest.approx(flow * 256)


@given(size=sizes, slope=slopes, n=roughnesses)
def test_flow_is_speed_times_area(size: str, slope: float, n: float) -> None:
    answer = drainage(pipe=size, slope=slope, roughness=n)
    assert answer["full"] == answer["half"] * 2
    assert answer["velocity"] > 0
    assert answer["cleans"] == (answer["velocity"] >= 2 - 1e-9)


@given(units=st.integers(1, 230), slope=slopes)
def test_more_units_never_take_a_smaller_drain(units: int, slope: float) -> None:
    def inches_for(count: float) -> float:
        answer = drainage(bathrooms=0, kitchen_sinks=0, washers=0, other_units=count, slope=slope)
        return {"1-1/2 in": 1.5, "2 in": 2.0, "3 in": 3.0, "4 in": 4.0}[answer["size"]]

    limit = 180 if slope < 0.25 / 12 - 1e-9 else 216
    count = min(units, limit - 1)
    assert inches_for(count) <= inches_for(count + 1)


def test_speed_in_a_known_pipe() -> None:
    assert velocity(4.0, 0.25 / 12, 0.013) == pytest.approx(3.148, abs=0.001)
