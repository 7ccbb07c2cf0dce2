"""The moisture that wood comes to: its shape over temperature and humidity, and what is refused."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.flooring.wood_moisture import CELSIUS, balance, moisture_at, wood_moisture
from calculators.registry import CALCULATORS
from calculators.run import compute

temperatures = st.floats(30, 210)
humidities = st.floats(0, 99.9)


@given(temperature=temperatures, humidity=st.floats(0, 98))
def test_damper_air_makes_damper_wood(temperature: float, humidity: float) -> None:
    assert moisture_at(temperature, humidity + 1) > moisture_at(temperature, humidity)


@given(temperature=st.floats(70, 200), humidity=st.floats(10, 95))
def test_warmer_air_of_the_same_humidity_makes_drier_wood(temperature: float, humidity: float) -> None:
    assert moisture_at(temperature + 10, humidity) < moisture_at(temperature, humidity)


@given(temperature=st.floats(35, 180), humidity=st.floats(1, 95))
def test_both_scales_agree(temperature: float, humidity: float) -> None:
    other = balance(CELSIUS, (temperature - 32) / 1.8, humidity / 100)
    assert moisture_at(temperature, humidity) == pytest.approx(other, abs=0.1)


@given(temperature=temperatures, humidity=humidities)
def test_every_answer_is_a_moisture(temperature: float, humidity: float) -> None:
    answer = wood_moisture(temperature=temperature, humidity=humidity)
    assert 0 <= answer["drier"] <= answer["moisture"] <= answer["damper"] < 40


@pytest.mark.parametrize("humidity", [100.0, 120.0])
def test_air_that_is_full_of_water_is_refused(humidity: float) -> None:
    with pytest.raises(Refused, match="give less than 100 %") as caught:
        moisture_at(70, humidity)
    assert caught.value.input == "humidity"


@pytest.mark.parametrize("humidity", ["100 %", "101 %"])
def test_the_calculator_refuses_it_too(humidity: str) -> None:
    with pytest.raises(Refused, match="100 %"):
        compute(CALCULATORS["wood-moisture"], {"humidity": humidity})


def test_cautions_stand_where_they_belong() -> None:
    assert wood_moisture(temperature=70, humidity=40)["cautions"] == []
    assert "mould" in wood_moisture(temperature=70, humidity=80)["cautions"][0]
    assert "can rot" in wood_moisture(temperature=70, humidity=92)["cautions"][1]
    assert "half a percent" in wood_moisture(temperature=70, humidity=10)["cautions"][0]


def test_working_shows_constants_and_both_scales() -> None:
    assert wood_moisture(temperature=70, humidity=40)["working"] == [
        "W = 381.98, K = 0.8193, K1 = 5.936, K2 = 2.635 at 70 F",
        "equation 4-5 with h = 0.4: 7.7 %",
        "the handbook's constants for degrees C, at 21.1 C: 7.7 %",
    ]
