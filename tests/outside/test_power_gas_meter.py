"""The gas meter's place against the federal rule and published utility rules."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.power.gas_meter_place import gas_meter_place


@pytest.mark.parametrize(
    ("input", "least", "source"),
    [
        ("ignition", 36, "49 CFR 192.353(c); NFPA 54 5.7: 3 ft from any source of ignition"),
        (
            "opening",
            36,
            "utility requirements: 3 ft from windows, doors and air intakes, straight from the relief vent",
        ),
        ("electric", 48, "a utility's guide: 4 ft from the electric meter"),
    ],
)
def test_published_distances(input: str, least: float, source: str) -> None:
    """Each distance passes at its published figure and fails an eighth of an inch below."""
    assert gas_meter_place(**dict[str, Any]({input: least}))["passes"], source
    assert not gas_meter_place(**dict[str, Any]({input: least - 0.125}))["passes"], source


def test_another_utility_takes_the_electric_meter_for_a_source_of_ignition() -> None:
    """Utility requirements: 3 ft, the electric meter among the sources of ignition. The limit is an input."""
    assert gas_meter_place(electric=36, electric_least=36)["passes"]


def test_a_meter_inside_is_ventilated() -> None:
    """49 CFR 192.353(c)."""
    assert not gas_meter_place(inside=True, ventilated=False)["passes"]
