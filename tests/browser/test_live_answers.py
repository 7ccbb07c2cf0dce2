"""Every on-site calculator through its own form: what the page says is what the calculator says in Python."""

from __future__ import annotations

from random import Random
from typing import Any

import pytest

from calculators.declaration import Calculator, Input, Refused
from calculators.limits import as_given
from calculators.registry import CALCULATORS
from calculators.run import read_inputs, run, shown
from tests.browser.live_form import LiveForm
from tests.browser.window import Window

DRAWS = 10
ON_SITE = sorted(name for name, calculator in CALCULATORS.items() if calculator.on_site)
NOTHING = "–"
"""What the page shows for an empty text."""


def is_drawn(item: Input) -> bool:
    """Rows and texts stay as the page starts them."""
    return item.quantity not in ("rows", "text")


def draw(item: Input, start: dict[str, str], random: Random) -> str:
    """An input as somebody might type it, often as the page starts it, now and then beyond its limits."""
    if item.quantity == "choice":
        return random.choice(item.choices).name
    if item.quantity == "yes-no":
        return random.choice(["yes", "no"])
    if item.quantity == "plan":
        return f"{random.randint(5, 20)}' x {random.randint(5, 20)}'; less 2' x 1'"
    if item.name in start and random.random() < 0.4:
        return start[item.name]
    low, high = item.usual or around(item)
    value = random.uniform(low, high)
    if random.random() < 0.02:
        value = high * 4 + 5
    if item.quantity == "count":
        return str(round(value))
    return as_given(item, round(value * 16) / 16 if item.quantity == "length" else value, False)


def around(item: Input) -> tuple[float, float]:
    """A range about the default, within the limits."""
    middle = item.default if item.default is not None else item.least or 0.0
    low, high = middle - abs(middle) / 2, middle + abs(middle) / 2 + (item.quantity == "count")
    return max(low, item.least if item.least is not None else low), min(high, item.most or high)


def expected(calculator: Calculator, texts: dict[str, str]) -> tuple[dict[str, Any], str]:
    """The figures, tables, cautions and working that the page is to show, or the message."""
    values, refused = read_inputs(calculator, texts)
    try:
        if refused:
            raise refused[0]
        answer = run(calculator, values)
    except Refused as refusal:
        return {}, refusal.message
    lines = shown(calculator, answer)
    flat = {output.name for output in calculator.outputs if output.quantity != "rows" or not lines[output.name]}
    said: dict[str, Any] = {
        "answer": {name: lines[name] if isinstance(lines[name], str) and lines[name] else NOTHING for name in flat},
        "tables": [
            [[str(row[column.name]) or NOTHING for column in output.columns] for row in lines[output.name]]
            for output in calculator.outputs
            if output.name not in flat
        ],
    }
    return said | {"cautions": answer["cautions"], "working": answer["working"]}, ""


@pytest.mark.parametrize("name", ON_SITE)
def test_the_form_says_what_the_calculator_says(name: str, window: Window) -> None:
    """Drawn inputs put into the form give the same figures, tables, cautions, working and messages."""
    calculator = CALCULATORS[name]
    window.open(f"calculators/{name}.html")
    form = LiveForm(window, ".crew")
    random = Random(name)
    start: dict[str, str] = window.script("return JSON.parse(arguments[0].dataset.start).given", form.root)
    kept = {item.name: start[item.name] for item in calculator.inputs if item.name in start and not is_drawn(item)}
    assert (form.read()["stale"], form.read()["wrong"]) == (False, [])
    answered = 0
    for _ in range(DRAWS):
        drawn = {item.name: draw(item, start, random) for item in calculator.inputs if is_drawn(item)}
        form.write(drawn)
        wanted, message = expected(calculator, kept | drawn)
        if message:
            window.until(lambda: form.read()["wrong"], "the message")
        said = form.read()
        assert (said["stale"], said["wrong"][:1]) == (bool(message), [message] if message else []), drawn
        assert {part: said[part] for part in wanted} == wanted, drawn
        answered += not message
    assert answered
    assert window.console() == []
