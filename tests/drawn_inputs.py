"""Inputs drawn for a calculator within its limits, for tests that look at many drawings."""

from __future__ import annotations

import random
from collections.abc import Iterator
from typing import Any

from calculators.declaration import Answer, Calculator, Input, Refused
from calculators.run import read_inputs, run

Case = tuple[dict[str, Any], Answer]


def drawn_cases(calculator: Calculator, count: int) -> Iterator[Case]:
    """The example, then ``count`` drawn inputs that the calculator answers, each with its answer.

    Each figure is drawn from the usual range, or now and then from the whole of its limits, in sixteenths.
    """
    source = random.Random(calculator.name)
    example, _ = read_inputs(calculator, calculator.example)
    filled = {each.name: example.get(each.name, each.default) for each in calculator.inputs}
    yield filled, run(calculator, filled)
    found = 0
    for _ in range(count * 20):
        if found == count:
            return
        values = {each.name: _drawn(source, each, filled[each.name]) for each in calculator.inputs}
        try:
            answer = run(calculator, values)
        except Refused:
            continue
        found += 1
        yield values, answer


def _drawn(source: random.Random, item: Input, start: Any) -> Any:
    if item.quantity == "choice":
        return source.choice(item.choices).name
    if item.quantity == "yes-no":
        return source.random() < 0.5
    if item.least is None or item.most is None or item.quantity in ("text", "plan", "rows") or source.random() < 0.3:
        return start
    low, high = item.usual if item.usual and source.random() < 0.7 else (item.least, item.most)
    if item.quantity == "count":
        return source.randint(int(low), int(high))
    value = source.uniform(low, high)
    return min(max(round(value * 16) / 16, low), high) if item.quantity == "length" else value
