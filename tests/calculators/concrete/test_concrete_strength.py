"""Strength by days and warmth: counting the days, who may cross, what is said in frost and heat."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.concrete.concrete_strength import concrete_strength, may_cross
from calculators.concrete.maturity import counted_hours, days_to_share, hours_until, share_at
from calculators.declaration import Refused
from calculators.run import compute, run

temperatures = st.floats(-20, 120).map(lambda drawn: round(drawn, 3))
spells = st.lists(st.fixed_dictionaries({"time": st.floats(1, 200), "temperature": temperatures}), max_size=4)


def test_mild_weather_gives_the_crew_waits() -> None:
    answer = run(concrete_strength, {})
    assert (answer["walk"], answer["car"], answer["truck"]) == ("1 day", "2 days", "7 days")
    assert answer["may_cross"] == "people, cars and trucks"
    assert answer["cautions"] == [
        "Never before, a car: 2 days is looser than the 7 days of much published advice; "
        "keep to it, or ask whoever answers for the work"
    ]


def test_heat_never_shortens_the_crew_waits() -> None:
    answer = concrete_strength(temperature=95)
    assert (answer["walk"], answer["car"], answer["truck"]) == ("1 day", "2 days", "7 days")


def test_a_cold_spell_counts_for_less() -> None:
    answer = compute(concrete_strength, {"weather": "2 days, 52.5 F; 1 day, 32 F", "age": "4 days"})
    assert answer["equivalent_age"] == pytest.approx(48)
    assert answer["working"] == [
        "2 days at 53 F x (53 - 32) / (73 - 32) = 1 at 73 F",
        "1 day at 32 F, at or below the datum of 32 F: counts nothing",
        "1 day at 73 F x (73 - 32) / (73 - 32) = 1 at 73 F",
        "share of the 28-day strength: 2 / (4 + 0.85 x 2) = 35.1 %; of 4000 psi: 1404 psi",
    ]
    assert answer["car"] == "4 days"
    assert answer["may_cross"] == "people and cars"


def test_weather_beyond_the_age_is_not_in_the_working() -> None:
    answer = compute(concrete_strength, {"weather": "5 days, 60 F; 5 days, 70 F", "age": "3 days"})
    assert [line[0:7] for line in answer["working"]] == ["3 days ", "share o"]


def test_nobody_crosses_what_froze_too_young() -> None:
    """The curve does not hold for concrete that froze before it had 500 psi (ACI 306R)."""
    answer = concrete_strength(weather=[{"time": 24.0, "temperature": 30.0}], temperature=73, age=28 * 24)
    assert answer["may_cross"] == "nobody"
    assert {answer["walk"], answer["car"], answer["truck"]} == {"not known: it froze too young"}
    assert concrete_strength(weather=[{"time": 96.0, "temperature": 70.0}], temperature=30)["car"] == "2.5 days"


def test_an_average_near_freezing_has_nights_that_freeze() -> None:
    assert "nights that freeze" in concrete_strength(temperature=38)["cautions"][0]


@pytest.mark.parametrize("looser", [{"frost_safe": 400}, {"walk_strength": 400}])
def test_what_concrete_must_have_is_not_typed_away(looser: dict[str, float]) -> None:
    with pytest.raises(Refused):
        run(concrete_strength, looser)


def test_a_colder_datum_is_cautioned() -> None:
    assert "14 F is looser than the 32 F of ASTM C1074" in run(concrete_strength, {"datum": 14})["cautions"][0]


def test_what_never_comes_is_said() -> None:
    week = [{"time": 168.0, "temperature": 73.0}]
    assert concrete_strength(weather=week, temperature=32, truck_strength=3500)["truck"] == "not in this weather"
    assert concrete_strength(strength=2500, truck_strength=3000)["truck"].startswith("never: this mix")
    assert concrete_strength(temperature=30)["may_cross"] == "nobody"


@pytest.mark.parametrize(
    ("weather", "frozen"),
    [
        ([], False),
        ([{"time": 12, "temperature": 60}, {"time": 12, "temperature": 30}], True),
        ([{"time": 72, "temperature": 60}, {"time": 12, "temperature": 30}], False),
        ([{"time": 12, "temperature": 43}], False),
    ],
)
def test_frost_on_young_concrete_is_cautioned(weather: list[dict[str, Any]], frozen: bool) -> None:
    cautions = concrete_strength(weather=weather)["cautions"]
    assert [caution.startswith("It freezes before the concrete has 500 psi") for caution in cautions] == [True] * frozen


def test_heat_and_the_first_day_are_cautioned() -> None:
    assert "weaker for good" in concrete_strength(temperature=105)["cautions"][0]
    assert "has to set first" in concrete_strength(age=6)["cautions"][0]


@pytest.mark.parametrize(
    ("hours", "who"),
    [(23, "nobody"), (24, "people on foot"), (48, "people and cars"), (168, "people, cars and trucks")],
)
def test_who_may_cross(hours: float, who: str) -> None:
    assert may_cross(hours, 24, 48, 168) == who


@given(age=st.floats(0, 8000), weather=spells, temperature=temperatures)
def test_more_days_never_make_it_weaker(age: float, weather: list[dict[str, Any]], temperature: float) -> None:
    younger = concrete_strength(weather=weather, temperature=temperature, age=age)
    older = concrete_strength(weather=weather, temperature=temperature, age=age + 24)
    assert older["strength_then"] >= younger["strength_then"]


@given(age=st.floats(0, 8000), weather=spells, temperature=temperatures)
def test_warmer_weather_never_makes_it_weaker(age: float, weather: list[dict[str, Any]], temperature: float) -> None:
    cool = concrete_strength(weather=weather, temperature=temperature, age=age)
    warm = concrete_strength(weather=weather, temperature=temperature + 10, age=age)
    assert warm["strength_then"] >= cool["strength_then"]


@given(wanted=st.floats(1, 2000), weather=spells, temperature=temperatures, datum=st.integers(0, 50))
def test_the_wait_counts_for_what_was_wanted(
    wanted: float, weather: list[dict[str, Any]], temperature: float, datum: int
) -> None:
    hours = hours_until(wanted, weather, temperature, datum)
    if hours < 0:
        assert temperature <= datum
    else:
        assert counted_hours(hours, weather, temperature, datum) == pytest.approx(wanted, rel=1e-6)


@given(share=st.floats(0.01, 1.05), cement=st.sampled_from(["ordinary", "early"]))
def test_days_and_share_are_each_other_turned_round(share: float, cement: str) -> None:
    assert share_at(days_to_share(share, cement), cement) == pytest.approx(share)
