"""Two inputs at once at the ends of their limits: the answer comes, or a refusal that names an input; never neither.

A loop whose step two inputs can shrink to nothing would hold the page on a phone forever.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, product
from math import isfinite
from typing import Any

import pytest

from calculators.declaration import Calculator, Input, Refused
from calculators.registry import CALCULATORS
from calculators.run import read_inputs, run

ON_PAGES = [each for each in CALCULATORS.values() if each.on_site]


def choices(item: Input) -> list[Any]:
    """What can be picked for an input that is not measured."""
    return [False, True] if item.quantity == "yes-no" else [choice.name for choice in item.choices]


def cases(calculator: Calculator) -> Iterator[dict[str, Any]]:
    """The example with one other choice, and with any two of its measures at their ends."""
    given, _ = read_inputs(calculator, calculator.example)
    start = {item.name: item.default for item in calculator.inputs} | given
    measures = [(item.name, item.least, item.most) for item in calculator.inputs if None not in (item.least, item.most)]
    changes = [{}, *({item.name: choice} for item in calculator.inputs for choice in choices(item))]
    for change in changes:
        for (one, *ends), (other, *others) in combinations(measures, 2):
            for first, second in product(ends, others):
                yield start | change | {one: first, other: second}


@pytest.mark.timeout(60)
@pytest.mark.parametrize("calculator", ON_PAGES, ids=lambda each: each.name)
def test_any_two_inputs_at_their_ends(calculator: Calculator) -> None:
    for values in cases(calculator):
        try:
            answer = run(calculator, values)
        except Refused as refused:
            assert calculator.input(refused.input) is not None, (refused, values)
            continue
        for output in calculator.outputs:
            value = answer[output.name]
            assert not isinstance(value, float) or isfinite(value), (output.name, values)
