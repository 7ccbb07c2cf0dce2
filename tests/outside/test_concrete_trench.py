"""The trench against 29 CFR 1926 Subpart P and its neighbours, and its volume against scipy."""

from __future__ import annotations

import pytest
from scipy.integrate import quad

from calculators.concrete.trench import trench
from calculators.concrete.trench_rules import BY_LOOK, REQUIRED


@pytest.mark.parametrize(
    ("soil", "run", "degrees"),
    [("stable-rock", 0.0, 90), ("a", 0.75, 53), ("b", 1.0, 45), ("c", 1.5, 34), ("unknown", 1.5, 34)],
)
def test_subpart_p_appendix_b_table_b_1(soil: str, run: float, degrees: float) -> None:
    """Table B-1: stable rock vertical (90), A 3/4:1 (53), B 1:1 (45), C 1-1/2:1 (34); the degrees are rounded there.
    Soil not classified: 1-1/2:1, 1926.652(b)(1)(i)."""
    answer = trench(depth=100, width=20, soil=soil, footing=240)
    assert (answer["top_width"] - 20) / 2 / 100 == pytest.approx(run)
    assert answer["angle"] == pytest.approx(degrees, abs=0.5)


@pytest.mark.parametrize(("depth", "protection"), [(59.9, BY_LOOK), (60, REQUIRED), (120, REQUIRED)])
def test_1926_652_a_1_protection_from_five_feet(depth: float, protection: str) -> None:
    """1926.652(a)(1)(ii): less than 5 ft and no sign of a cave-in, as the competent person finds."""
    assert trench(depth=depth, footing=240)["protection"] == protection


@pytest.mark.parametrize(
    ("depth", "length", "ladders"),
    [(47.9, 100, 0), (48, 25, 1), (48, 50, 1), (48, 51, 2), (96, 100, 2), (96, 120, 3)],
)
def test_1926_651_c_2_ways_out(depth: float, length: float, ladders: int) -> None:
    """1926.651(c)(2): from 4 ft deep, no more than 25 ft of travel along the trench. Lengths in feet."""
    assert trench(depth=depth, length=length * 12, footing=240)["ladders"] == ladders


def test_1926_651_j_2_spoil_two_feet_from_the_edge() -> None:
    """1926.651(j)(2): at least 2 ft (0.61 m). The input takes no less."""
    declared = trench.input("set_back")
    assert declared is not None
    assert (declared.least, declared.default) == (24, 24)
    assert trench(footing=240)["spoil_from_edge"] == 24


@pytest.mark.parametrize("depth", [48.0, 60.0, 120.0])
def test_1926_1053_ladder(depth: float) -> None:
    """1926.1053(b)(1): rails 3 ft above the landing; (b)(5)(i): foot out by a quarter of the working length."""
    ladder = trench(depth=depth, soil="stable-rock", footing=240)["ladder_length"]
    assert ladder**2 == pytest.approx((depth + 36) ** 2 * (1 + 0.25**2))


def test_1926_501_b_7_edge_of_six_feet() -> None:
    """1926.501(b)(7)(i): guardrails, fences or barricades at 6 ft and more."""
    assert not any("guardrail" in caution for caution in trench(depth=71.9, footing=240)["cautions"])
    assert any("guardrail" in caution for caution in trench(depth=72, footing=240)["cautions"])


@pytest.mark.parametrize(
    ("depth", "width", "length", "soil", "run"),
    [
        (60.0, 24.0, 480.0, "c", 1.5),
        (96.0, 36.0, 120.0, "a", 0.75),
        (40.0, 60.0, 60.0, "b", 1.0),
        (90.0, 30.0, 300.0, "stable-rock", 0.0),
    ],
)
def test_scipy_agrees_on_the_volume(depth: float, width: float, length: float, soil: str, run: float) -> None:
    """The general library scipy, by integrating the plan's area over the depth."""
    volume = quad(lambda up: (width + 2 * run * up) * (length + 2 * run * up), 0, depth)[0]
    assert trench(depth=depth, width=width, length=length, soil=soil, footing=2400)["bank"] == pytest.approx(
        volume / 1728
    )


def test_irc_p2604_4_no_trench_below_45_degrees_from_a_footing() -> None:
    """IRC P2604.4: a trench along a footing stays above the 45 degree plane of its bearing."""
    assert trench(depth=60, soil="b", footing=36, footing_depth=24)["beside_footing"].startswith("no slope")
    assert trench(depth=60, soil="b", footing=35.9, footing_depth=24)["beside_footing"].startswith("stop")


def test_appendix_a_soil_that_was_dug_before() -> None:
    """Subpart P, App. A: never type A, and type C where it would be C otherwise. Beside a house nobody knows: as C."""
    assert trench(soil="fill", footing=240)["angle"] == trench(soil="c", footing=240)["angle"]


def test_swell() -> None:
    """Common practice, no source: ordinary earth takes a quarter more room when it is dug."""
    answer = trench(footing=240)
    assert answer["loose"] / answer["bank"] == pytest.approx(1.25)
