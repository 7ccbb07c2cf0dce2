"""How much a floor moves: signs, proportions, the two equations, the gaps."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.flooring.wood_moisture import moisture_at
from calculators.flooring.wood_movement import change, wood_movement
from calculators.flooring.wood_species import FROM_MEMORY, NAMES, SPECIES
from calculators.run import run

linear = st.floats(6, 14)
moistures = st.floats(0, 30)
species = st.sampled_from(list(SPECIES))
widths = st.floats(1, 300)


def answer(**given: Any) -> dict[str, Any]:
    return run(wood_movement, given)


@given(name=species, start=moistures, end=moistures, width=widths)
def test_wetter_swells_and_drier_shrinks(name: str, start: float, end: float, width: float) -> None:
    moved = change(width, SPECIES[name]["flat"], start, end)
    assert (moved > 0) == (end > start) or moved == 0


@given(name=species, start=moistures, end=moistures, width=widths)
def test_flat_sawn_moves_more_than_quarter_sawn(name: str, start: float, end: float, width: float) -> None:
    flat = abs(change(width, SPECIES[name]["flat"], start, end))
    assert flat >= abs(change(width, SPECIES[name]["quarter"], start, end))


@given(name=species, start=linear, end=linear, width=widths)
def test_twice_the_width_moves_twice(name: str, start: float, end: float, width: float) -> None:
    part = SPECIES[name]["flat"]
    assert change(2 * width, part, start, end) == pytest.approx(2 * change(width, part, start, end))


@given(name=species, start=moistures, end=moistures)
def test_beyond_the_range_there_and_back_is_where_it_was(name: str, start: float, end: float) -> None:
    """Equation 13-3 is measured on one green board, so it comes back; 13-2 nearly does."""
    part = SPECIES[name]["flat"]
    there = 10 + change(10, part, start, end)
    assert there + change(there, part, end, start) == pytest.approx(10, abs=0.02)


@given(name=species, start=st.floats(6, 13.9))
def test_the_two_equations_meet_at_fourteen_percent(name: str, start: float) -> None:
    part = SPECIES[name]["flat"]
    assert change(10, part, start, 14) == pytest.approx(change(10, part, start, 14.0001), abs=0.02)


def test_seasons_take_the_moisture_of_the_air() -> None:
    moved = answer(by="seasons", humidity_from=30.0, humidity_to=50.0, temperature=70.0)
    assert (moved["start"], moved["end"]) == (moisture_at(70, 30), moisture_at(70, 50))
    plain = answer(moisture_from=moved["start"], moisture_to=moved["end"])
    assert plain["board_change"] == moved["board_change"]


def test_the_gap_is_half_of_the_swelling_and_none_when_it_shrinks() -> None:
    swollen = answer(moisture_from=7.0, moisture_to=8.0, room_width=144.0)
    assert swollen["gap_needed"] == pytest.approx(144 * 0.00369 / 2)
    assert answer(moisture_from=9.0, moisture_to=6.0)["gap_needed"] == 0


@pytest.mark.parametrize(
    ("later", "crew", "industry", "says"),
    [
        (6.5, True, True, None),
        (8.0, False, True, "or leave the wider gap"),
        (10.0, False, False, "more than any gap under a base shoe"),
    ],
)
def test_the_gap_stands_beside_both_rules(later: float, crew: bool, industry: bool, says: str | None) -> None:
    moved = answer(moisture_from=6.0, moisture_to=later, room_width=144.0)
    assert (moved["crew_takes"], moved["industry_takes"]) == (crew, industry)
    assert (moved["gap_crew"], moved["gap_industry"]) == (0.25, 0.75)
    assert [c for c in moved["cautions"] if says and says in c] == ([] if says is None else moved["cautions"])


def test_boards_nailed_swollen_crack() -> None:
    assert "Each joint opens by up to 1/32 in" in answer(moisture_from=11.0, moisture_to=7.0)["cautions"][0]


def test_saturated_wood_counts_as_thirty_percent() -> None:
    moved = answer(by="seasons", humidity_from=50.0, humidity_to=99.0, temperature=32.0)
    assert moved["end"] <= 30
    assert "saturated" in answer(moisture_from=8.0, moisture_to=30.0)["cautions"][-1]


def test_what_is_from_memory_says_so() -> None:
    assert set(NAMES) == set(SPECIES)
    assert set(FROM_MEMORY) < set(SPECIES)
    for name in SPECIES:
        moved = wood_movement(
            species=name,
            cut="flat",
            by="moisture",
            moisture_from=6,
            moisture_to=6.1,
            temperature=70,
            humidity_from=30,
            humidity_to=50,
            board_width=2.25,
            room_width=24,
            gap=0.25,
            thickness=0.75,
        )
        assert any("from memory" in caution for caution in moved["cautions"]) == (name in FROM_MEMORY)
        assert ("from memory" in NAMES[name]) == (name in FROM_MEMORY)


def test_working_says_which_equation() -> None:
    assert answer(moisture_from=6.0, moisture_to=9.0)["working"][0] == (
        "equation 13-2: 2-1/4 in x 0.00369 x (9 - 6) = 0.0249 in a board"
    )
    assert "equation 13-3 with a shrinkage of 10.3 %" in answer(moisture_from=4.0, moisture_to=9.0)["working"][0]
