"""Alarms against published dwellings and published distances. The codes' texts were seen as others quote them."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.power.alarm_places import alarm_places
from calculators.power.alarm_spot import alarm_spot


def test_published_dwelling() -> None:
    """A published reading of IRC 2018 R314.3: three bedrooms on one floor, a basement and a second storey.

    Alarms in the three bedrooms, in their hall, in the basement and on the other storey: six places.
    """
    assert alarm_places(storeys=2, basement=True, sleeping_rooms=3)["smoke"] == 6


def test_split_level_with_a_basement_door() -> None:
    """IRC R314.3 item 3, as quoted: a lower level less than a storey down, without a door, is served from above."""
    apart = alarm_places(storeys=2, sleeping_rooms=3)["smoke"]
    assert alarm_places(storeys=2, sleeping_rooms=3, split_levels=1)["smoke"] == apart - 1


def test_carbon_monoxide_alarms_of_the_residential_code() -> None:
    """IRC R315.2, R315.3, as quoted: outside each sleeping area, and inside a bedroom that has a burner; where there is

    a fuel-burning appliance or an attached garage.
    """
    places: dict[str, Any] = {"storeys": 2, "sleeping_rooms": 4, "sleeping_areas": 2, "co_each_level": False}
    assert alarm_places(**places, fuel=False)["co"] == 0
    assert alarm_places(**places, fuel=False, garage=True)["co"] == 2
    assert alarm_places(**places, fuel_rooms=1)["co"] == 3


@pytest.mark.parametrize(
    ("given", "limit", "source"),
    [
        ({"sensor": "ionization"}, ("cooking", 240, "least"), "IRC R314.3.1, as quoted: 20 ft"),
        ({"sensor": "ionization-silenced"}, ("cooking", 120, "least"), "IRC R314.3.1, as quoted: 10 ft"),
        ({"sensor": "photoelectric"}, ("cooking", 72, "least"), "IRC R314.3.1, as quoted: 6 ft"),
        ({}, ("bath", 36, "least"), "IRC R314.3 item 4, as quoted: 3 ft from a bathroom with tub or shower"),
        ({}, ("register", 36, "least"), "a fire department on NFPA 72: 36 in from a supply register"),
        ({}, ("fan", 36, "least"), "a fire department on NFPA 72: 36 in from the tip of a fan's blade"),
        ({}, ("door", 252, "most"), "NFPA 72 29, as quoted: within 21 ft of a sleeping room's door"),
        ({}, ("edge", 4, "least"), "a maker's sheet: 4 in from the side wall"),
        ({"mount": "wall"}, ("down", 4, "least"), "a maker's sheet: top 4 in to 12 in below the ceiling"),
        ({"mount": "wall"}, ("down", 12, "most"), "a maker's sheet: top 4 in to 12 in below the ceiling"),
        ({"mount": "slope"}, ("peak_across", 36, "most"), "NFPA 72, as quoted: within 3 ft of the peak"),
        ({"mount": "slope"}, ("peak_down", 4, "least"), "NFPA 72, from memory: not in the top 4 in of the peak"),
    ],
)
def test_published_distances(given: dict[str, Any], limit: tuple[str, int, str], source: str) -> None:
    """Each distance passes at its published figure and fails an eighth of an inch beyond."""
    name, figure, side = limit
    beyond = figure - 0.125 if side == "least" else figure + 0.125
    assert alarm_spot(**{**given, name: figure})["passes"], source
    assert not alarm_spot(**{**given, name: beyond})["passes"], source
