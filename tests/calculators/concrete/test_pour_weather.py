"""Weather for a pour: the verdicts, and how the rate moves with each input."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.concrete.evaporation import larger, wind_that_dries
from calculators.concrete.pour_weather import pour_weather
from calculators.declaration import Refused
from calculators.run import run

airs = st.floats(0, 125)
mixes = st.floats(33, 125)
humidities = st.floats(1, 100)
winds = st.floats(0, 60)


@pytest.mark.parametrize(
    ("given", "verdict"),
    [
        ({}, "pour"),
        ({"mix": 87, "wind": 12}, "pour only with the drying held back"),
        ({"mix": 95.5}, "refuse the load: too hot"),
        ({"mix": 95, "wind": 3}, "pour"),
        ({"mix": 54.5}, "refuse the load: too cold"),
        ({"mix": 55, "air": 55}, "pour"),
        ({"coldest": 39}, "put it off: too cold"),
        ({"coldest": 40}, "pour"),
        ({"mix": 96, "coldest": 30}, "refuse the load: too hot"),
        ({"air": 25}, "put it off: too cold"),
        ({"air": 39, "coldest": 45, "mix": 60}, "put it off: too cold"),
        ({"frozen": True}, "put it off: frozen ground"),
        ({"frozen": True, "air": 30}, "put it off: frozen ground"),
        ({"rain": "falling"}, "put it off: rain or snow"),
        ({"rain": "falling", "mix": 87, "wind": 12}, "put it off: rain or snow"),
        ({"rain": "possible"}, "pour only with a cover for the whole slab at hand"),
        (
            {"rain": "possible", "mix": 87, "wind": 12},
            "pour only with the drying held back and a cover for the whole slab at hand",
        ),
    ],
)
def test_verdicts(given: dict[str, Any], verdict: str) -> None:
    answer = run(pour_weather, given)
    assert answer["verdict"] == verdict
    assert answer["passes"] == (verdict == "pour")


def test_a_fast_drying_slab_is_told_what_to_do() -> None:
    answer = pour_weather(mix=87, wind=12)
    assert answer["todo"].startswith("wind break upwind, fog over the slab, cover")
    assert answer["calm"] == "up to 9 mph"
    assert answer["cautions"][0].startswith("Above 0.2 lb/sq ft/h the top cracks before it is hard")


def test_working_says_the_arithmetic() -> None:
    assert pour_weather(mix=87, wind=12)["working"] == [
        "vapour at the concrete 0.634 psi; in the air 50 % of 0.506 psi",
        "Menzel: 0.44 x difference x (0.253 + 0.096 x 12) = 0.236 lb/sq ft/h",
        "Uno: 0.233 lb/sq ft/h; the larger counts, act above 0.2",
        "air 80 F at the pour, 50 F at its coldest; 40 F is the least for both",
    ]


def test_within_the_error_of_the_estimate_the_protection_is_at_hand() -> None:
    assert pour_weather(wind=12)["cautions"] == [
        "Within 40 % of the limit, which is how far off the estimate may be: have the protection ready."
    ]
    assert pour_weather(wind=8)["cautions"] == []


def test_cold_speaks_of_frozen_ground_and_of_fumes() -> None:
    caution = pour_weather(coldest=20)["cautions"][0]
    assert "frozen ground" in caution
    assert "kills by its fumes" in caution


def test_frozen_ground_and_rain_say_why() -> None:
    assert pour_weather(frozen=True)["cautions"][0].startswith("No concrete on frozen ground, ice or snow")
    assert any("thins its top for good" in said for said in pour_weather(rain="possible")["cautions"])


@given(
    air=st.floats(-40, 125),
    coldest=st.floats(-40, 110),
    rain=st.sampled_from(["dry", "possible", "falling"]),
    frozen=st.booleans(),
)
def test_it_never_says_pour_on_a_day_that_freezes_or_rains(air: float, coldest: float, rain: str, frozen: bool) -> None:
    answer = pour_weather(air=air, coldest=coldest, rain=rain, frozen=frozen)
    if min(air, coldest) < 40 or rain != "dry" or frozen:
        assert answer["verdict"] != "pour"
        assert not answer["passes"]


@pytest.mark.parametrize(
    "looser", [{"coldest_air": 35}, {"coldest_mix": 45}, {"hottest_mix": 100}], ids=lambda one: next(iter(one))
)
def test_a_published_limit_is_not_typed_away(looser: dict[str, float]) -> None:
    with pytest.raises(Refused, match="never looser"):
        run(pour_weather, looser)


def test_a_looser_limit_of_drying_is_cautioned() -> None:
    assert "looser than the 0.2 lb/sq ft/h of ACI 305R" in run(pour_weather, {"act_above": 0.24})["cautions"][0]


def test_a_cold_mix_under_wet_air_takes_water_up() -> None:
    answer = pour_weather(air=90, humidity=95, mix=56)
    assert answer["evaporation"] == 0.0
    assert "bleed water stays long" in answer["cautions"][-1]


@given(air=airs, humidity=humidities, mix=mixes, wind=winds)
def test_more_wind_never_dries_less(air: float, humidity: float, mix: float, wind: float) -> None:
    assert larger(air, humidity, mix, wind + 1) >= larger(air, humidity, mix, wind)


@given(air=airs, humidity=humidities, mix=mixes, wind=winds)
def test_damper_air_never_dries_more(air: float, humidity: float, mix: float, wind: float) -> None:
    assert larger(air, humidity, mix, wind) <= larger(air, humidity / 2, mix, wind)


@given(air=airs, humidity=humidities, mix=mixes, wind=winds)
def test_warmer_concrete_never_dries_less(air: float, humidity: float, mix: float, wind: float) -> None:
    assert larger(air, humidity, mix + 5, wind) >= larger(air, humidity, mix, wind)


@given(air=airs, humidity=humidities, mix=mixes, limit=st.floats(0.05, 0.25))
def test_the_wind_that_is_named_keeps_within_the_limit(air: float, humidity: float, mix: float, limit: float) -> None:
    said = wind_that_dries(air, humidity, mix, limit)
    if said == "not even still air":
        assert larger(air, humidity, mix, 0) > limit
    elif said.startswith("up to"):
        wind = float(said.split()[2])
        assert larger(air, humidity, mix, wind) <= limit + 1e-9
        assert larger(air, humidity, mix, wind + 1) > limit
    else:
        assert larger(air, humidity, mix, 60) <= limit + 1e-9
