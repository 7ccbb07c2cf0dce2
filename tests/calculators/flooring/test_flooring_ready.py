"""Ready to lay: each verdict at its edge, the order of verdicts, the meter's temperature."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.flooring.flooring_ready import (
    DAMP_BOARDS,
    DAMP_HOUSE,
    DO,
    DRY_BOARDS,
    READY,
    WET_BOARDS,
    WET_SPOT,
    WET_SUBFLOOR,
    flooring_ready,
)
from calculators.run import compute, run

readings = st.lists(st.floats(4, 20), min_size=1, max_size=30)


def rows(*values: float) -> list[dict[str, float]]:
    return [{"reading": value} for value in values]


def answer(subfloor: tuple[float, ...], boards: tuple[float, ...], **more: Any) -> dict[str, Any]:
    return run(flooring_ready, {"subfloor": rows(*subfloor), "boards": rows(*boards), **more})


@pytest.mark.parametrize(
    ("subfloor", "boards", "width", "verdict"),
    [
        ((11.5,), (7.5,), 2.25, READY),
        ((11.75,), (7.5,), 2.25, WET_SUBFLOOR),
        ((9.5,), (7.5,), 3.0, READY),
        ((9.75,), (7.5,), 3.0, WET_SUBFLOOR),
        ((9.75,), (7.5,), 2.875, READY),
        ((8.0, 8.0, 12.25), (7.5,), 2.25, WET_SPOT),
        ((5.0,), (9.5,), 2.25, WET_BOARDS),
        ((9.0,), (11.0,), 2.25, DAMP_BOARDS),
        ((11.0,), (11.0,), 2.25, DAMP_HOUSE),
        ((8.0,), (5.0,), 2.25, DRY_BOARDS),
    ],
)
def test_each_verdict(subfloor: tuple[float, ...], boards: tuple[float, ...], width: float, verdict: str) -> None:
    found = answer(subfloor, boards, board_width=width)
    assert found["verdict"] == verdict
    assert found["ready"] == (verdict == READY)
    assert found["to_do"] == DO[verdict]


def test_the_wettest_place_comes_first() -> None:
    assert answer((20.0, 20.0), (7.0,))["verdict"] == WET_SPOT


def test_a_cold_board_is_damper_than_the_meter_says() -> None:
    """11.5 % read at 50 F is 12.5 %: over the limit of a single place."""
    assert answer((11.5,), (8.5,))["verdict"] == READY
    cold = answer((11.5,), (8.5,), wood_temperature=50.0)
    assert (cold["wettest"], cold["verdict"]) == (12.5, WET_SPOT)


@given(subfloor=readings, boards=readings, temperature=st.floats(40, 100))
def test_temperature_moves_both_averages_alike(subfloor: list[float], boards: list[float], temperature: float) -> None:
    there = answer(tuple(subfloor), tuple(boards), wood_temperature=temperature)
    assert there["difference"] == pytest.approx(answer(tuple(subfloor), tuple(boards))["difference"])


@given(subfloor=readings, boards=readings)
def test_ready_keeps_every_limit(subfloor: list[float], boards: list[float]) -> None:
    found = answer(tuple(subfloor), tuple(boards))
    if found["ready"]:
        assert max(subfloor) <= 12 + 1e-9
        assert abs(sum(subfloor) / len(subfloor) - sum(boards) / len(boards)) <= 4 + 1e-9
        assert found["service_least"] - 1.001 <= found["boards_average"] <= found["service_most"] + 1.001


@given(subfloor=readings, boards=readings)
def test_the_order_of_readings_says_nothing(subfloor: list[float], boards: list[float]) -> None:
    found = answer(tuple(subfloor), tuple(boards))
    turned = answer(tuple(reversed(subfloor)), tuple(reversed(boards)))
    assert found["subfloor_average"] == pytest.approx(turned["subfloor_average"])
    assert found["boards_average"] == pytest.approx(turned["boards_average"])


def test_too_few_readings_are_said() -> None:
    cautions = answer((8.0,), (7.5,), area=320.0)["cautions"]
    assert cautions[0] == "Readings of the subfloor: 1. This area wants 7."
    assert cautions[1] == "Readings of the boards: 1. This area wants 13."
    assert answer((8.0,), (7.5,))["cautions"] == []


def test_boards_that_scatter_and_a_cold_house_are_said() -> None:
    assert "more than 2 %" in answer((8.0,), (6.0, 6.0, 6.0, 10.0))["cautions"][0]
    assert "far from the meter's temperature" in answer((8.0,), (7.5,), wood_temperature=45.0)["cautions"][-1]


@pytest.mark.parametrize("missing", ["subfloor", "boards"])
def test_no_reading_is_refused(missing: str) -> None:
    given = {"subfloor": rows(8.0), "boards": rows(7.5), missing: []}
    with pytest.raises(Refused, match="at least one is wanted") as caught:
        run(flooring_ready, given)
    assert caught.value.input == missing


def test_humidities_the_wrong_way_round_are_refused() -> None:
    with pytest.raises(Refused, match="the least humidity, 50 %, is more than the most, 40 %"):
        answer((8.0,), (7.5,), humidity_least=50.0, humidity_most=40.0)


def test_readings_are_written_as_a_list() -> None:
    found = compute(flooring_ready, {"subfloor": "9; 10; 11", "boards": "7 %; 8 %"})
    assert (found["subfloor_average"], found["boards_average"]) == (10.0, 7.5)
