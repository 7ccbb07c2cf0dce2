"""Unit weights of material and waste against published figures."""

from __future__ import annotations

import pytest

from calculators.house import truck_trips
from calculators.house.truck_trips import settled_weights


def unit_weight(kind: str) -> float:
    """Pounds of one, at the standards that the crew and its suppliers have settled."""
    return truck_trips.unit_weight(kind, settled_weights(20, 0.75, 2950, 80, 50))


def test_gypsum_board() -> None:
    """ASCE 7-05 commentary, Table C3-1: 0.55 lb/sq ft for each 1/8 in of gypsum board (seen quoted)."""
    assert unit_weight("drywall-4x8") == pytest.approx(0.55 * 4 * 32)
    assert unit_weight("drywall-4x12") == pytest.approx(0.55 * 4 * 48)


def test_gypsum_board_against_the_metric_table() -> None:
    """The metric column of the same table, from memory: 0.008 kN/m2 for each millimetre."""
    pounds = 0.008 * 12.7 * 20.8854 * 32
    assert unit_weight("drywall-4x8") == pytest.approx(pounds, rel=0.05)


def test_plywood() -> None:
    """ASCE 7 commentary, Table C3-1, from memory: 0.4 lb/sq ft for each 1/8 in."""
    assert unit_weight("plywood") == pytest.approx(0.4 * 6 * 32)


def test_oak_strip_lies_below_the_dead_load_for_hardwood_floors() -> None:
    """ASCE 7 commentary, Table C3-1, from memory: hardwood 7/8 in thick, 4 lb/sq ft, which is on the safe side."""
    a_square_foot = unit_weight("strip-flooring") / 20
    assert 0.8 * 4 * (3 / 4) / (7 / 8) < a_square_foot < 4 * (3 / 4) / (7 / 8)


def test_lumber() -> None:
    """ASCE 7 commentary, Table C3-2, from memory: southern pine 37 lb/cu ft."""
    assert unit_weight("lumber-2x4") == pytest.approx(37 * 1.5 * 3.5 * 96 / 1728, rel=0.05)
    assert unit_weight("lumber-2x8") == pytest.approx(37 * 1.5 * 7.25 * 192 / 1728, rel=0.05)


@pytest.mark.parametrize(
    ("kind", "yard", "pounds"),
    [
        ("waste-concrete", 27, 2400),
        ("waste-wood", 1, 400),
        ("waste-drywall", 1, 500),
        ("waste-mixed", 1, 350),
    ],
)
def test_loose_waste(kind: str, yard: float, pounds: float) -> None:
    """Loose cubic yards: California's project estimates (concrete, wood); the 2009 guide's Table 2 (the others)."""
    assert unit_weight(kind) * yard == pytest.approx(pounds)


def test_a_builders_study_weighs_loose_drywall_and_wood_less() -> None:
    """Residential Construction Waste, 1995: loose drywall 400, wood 267 lb a cubic yard. Ours are on the safe side."""
    assert unit_weight("waste-drywall") >= 400
    assert unit_weight("waste-wood") >= 267


def test_crushed_base() -> None:
    """Washington State's design manual, Chapter 620: 1.475 ton of crushed base in a cubic yard in the truck."""
    assert unit_weight("base") * 27 == pytest.approx(2950)
