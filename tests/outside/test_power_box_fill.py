"""Box fill against the code's own figures and published worked examples."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.power.box_counts import BOXES, GAUGES, VOLUMES
from calculators.power.box_fill import box_fill

BARE: dict[str, Any] = {"wires_14": 0, "grounds": 0, "yokes": 0, "clamps": False}


@pytest.mark.parametrize(
    ("gauge", "volume"),
    [("18", 1.5), ("16", 1.75), ("14", 2.0), ("12", 2.25), ("10", 2.5), ("8", 3.0), ("6", 5.0)],
)
def test_nec_314_16_b_1_volume_of_a_conductor(gauge: str, volume: float) -> None:
    """NEC Table 314.16(B)(1), cubic inches."""
    assert VOLUMES[GAUGES.index(gauge)] == volume


@pytest.mark.parametrize(
    ("box", "volume"),
    [
        ("round-1-1-2", 15.5),
        ("round-2-1-8", 21.5),
        ("square-1-1-2", 21.0),
        ("square-2-1-8", 30.3),
        ("large-2-1-8", 42.0),
        ("device-2-1-2", 12.5),
        ("device-2-3-4", 14.0),
        ("device-3-1-2", 18.0),
    ],
)
def test_nec_314_16_a_volume_of_a_box(box: str, volume: float) -> None:
    """NEC Table 314.16(A), single facts of it, cubic inches."""
    assert [each["volume"] for each in BOXES if each["name"] == box] == [volume]


def test_worked_example_of_nine_conductors() -> None:
    """Published worked example: nine 12 AWG need 20.25 cu in; a 4 in square box 1-1/2 in deep (21.0) holds them."""
    answer = box_fill(**{**BARE, "wires_12": 9, "box": "square-1-1-2"})
    assert answer["needed"] * 1728 == pytest.approx(20.25)
    assert answer["fits"]
    assert not box_fill(**{**BARE, "wires_12": 10, "box": "square-1-1-2"})["fits"]


def test_worked_example_of_an_octagon_box() -> None:
    """Published worked example: a 4 in octagon box 1-1/2 in deep holds seven 14 AWG."""
    assert box_fill(**{**BARE, "wires_14": 7, "box": "round-1-1-2"})["fits"]
    assert not box_fill(**{**BARE, "wires_14": 8, "box": "round-1-1-2"})["fits"]


def test_worked_example_of_a_device_box() -> None:
    """Published worked example: four 14 AWG, a yoke, grounds, no clamp: seven counts, 14.0 cu in."""
    answer = box_fill(**{**BARE, "wires_14": 4, "grounds": 2, "yokes": 1, "box": "device-2-3-4"})
    assert (answer["allowances"], answer["needed"] * 1728) == (pytest.approx(7), pytest.approx(14.0))
    assert answer["fits"]


def test_two_cables_and_a_device() -> None:
    """Worked by hand from NEC 314.16(B): two 12/2 cables, a yoke, clamps, grounds: 8 x 2.25 = 18.0 cu in."""
    answer = box_fill(**{**BARE, "wires_12": 4, "grounds": 2, "yokes": 1, "clamps": True})
    assert (answer["allowances"], answer["needed"] * 1728) == (pytest.approx(8), pytest.approx(18.0))


@pytest.mark.parametrize(("grounds", "counts"), [(1, 1.0), (4, 1.0), (5, 1.25), (6, 1.5), (8, 2.0)])
def test_nec_2020_grounding_wires(grounds: int, counts: float) -> None:
    """NEC 2020 314.16(B)(5), from memory: one for up to four, a quarter for each more."""
    bare = box_fill(**{**BARE, "wires_14": 1})["allowances"]
    assert box_fill(**{**BARE, "wires_14": 1, "grounds": grounds})["allowances"] - bare == pytest.approx(counts)
