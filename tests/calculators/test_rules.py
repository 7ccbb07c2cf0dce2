"""Published limits of figures that a crew sets: stricter is followed, looser than a law is refused."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.declaration import Calculator, Input, Refused, Rule
from calculators.registry import CALCULATORS
from calculators.run import read_inputs, run

RULED = [
    (calculator, item, item.rule)
    for calculator in CALCULATORS.values()
    for item in calculator.inputs
    if item.rule is not None
]
BEYOND_GUIDANCE = {("concrete-strength", "car_wait")}
"""Where the crew's own standard is looser than guidance, which every answer says."""

each_rule = pytest.mark.parametrize(
    ("calculator", "item", "rule"), RULED, ids=[f"{calculator.name}.{item.name}" for calculator, item, _ in RULED]
)


def given(calculator: Calculator, name: str, value: float) -> dict[str, Any]:
    """The example of a calculator with one value changed."""
    values, refused = read_inputs(calculator, calculator.example)
    assert not refused
    return {**values, name: value}


def looser(item: Input, rule: Rule) -> float:
    """A value that is looser than the rule, inside the hard limits where they leave room."""
    if rule.side == "least":
        return rule.limit * 0.75 if rule.weight == "law" else (item.least or 0) / 2 + rule.limit / 2
    return rule.limit * 1.25 if rule.weight == "law" else (item.most or rule.limit * 2) / 2 + rule.limit / 2


def test_laws_and_guidance_are_declared() -> None:
    """Fewer than these, and one was typed away."""
    laws = {f"{calculator.name}.{item.name}" for calculator, item, rule in RULED if rule.weight == "law"}
    assert laws >= {
        "gas-meter-place.ignition_least", "trench.protect_from", "trench.set_back", "ground-fall.drop",
        "ground-fall.short_slope", "ground-fall.paved_fall", "pour-weather.hottest_mix", "pour-weather.coldest_mix",
        "pour-weather.coldest_air", "concrete-strength.frost_safe", "floor-heights.upright_most",
        "floor-heights.bevel_most", "joint-spacing.most_ratio",
    }  # fmt: skip
    assert len(RULED) - len(laws) >= 20


@each_rule
def test_what_it_starts_at_keeps_the_rule(calculator: Calculator, item: Input, rule: Rule) -> None:
    assert item.default is not None
    keeps = item.default >= rule.limit if rule.side == "least" else item.default <= rule.limit
    assert keeps != ((calculator.name, item.name) in BEYOND_GUIDANCE)


@each_rule
def test_a_law_is_the_hard_limit_too(calculator: Calculator, item: Input, rule: Rule) -> None:
    if rule.weight == "law":
        assert (item.least if rule.side == "least" else item.most) == rule.limit


@each_rule
def test_looser_is_refused_or_cautioned_by_its_source(calculator: Calculator, item: Input, rule: Rule) -> None:
    values = given(calculator, item.name, looser(item, rule))
    if rule.weight == "law":
        with pytest.raises(Refused) as caught:
            run(calculator, values)
        assert caught.value.input == item.name
        assert f"of {rule.source}; a crew may be stricter than that, never looser" in caught.value.message
    else:
        said = [caution for caution in run(calculator, values)["cautions"] if caution.startswith(f"{item.label}: ")]
        assert len(said) == 1
        assert f"of {rule.source}; keep to it, or ask whoever answers for the work" in said[0]


@each_rule
def test_at_the_rule_nothing_is_said(calculator: Calculator, item: Input, rule: Rule) -> None:
    cautions = run(calculator, given(calculator, item.name, rule.limit))["cautions"]
    assert [caution for caution in cautions if caution.startswith(f"{item.label}: ")] == []
