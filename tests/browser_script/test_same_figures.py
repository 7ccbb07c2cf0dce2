"""Figures are read and written alike in Python and in the page's script."""

from __future__ import annotations

from random import Random
from typing import Any

from calculators.attempts import read_or_why
from calculators.declaration import Input
from calculators.unit_words import EXAMPLES
from calculators.units import UNITS
from calculators.writing_units import exactly, write
from tests.browser_script.drawn import JUNK, figure_text, plan_text
from tests.browser_script.engine import difference, each_in_script

TEXTS = 5000
SIGNS = list("0123456789 ./-–'\"′″½⅞:%,ftinmxlbs\u00a0°CF+")


def test_texts_are_read_alike() -> None:
    """Sound figures of every quantity, damaged ones, rubbish, and plans."""
    random = Random(1)
    cases = [list(_text(random)) for _ in range(TEXTS)]
    theirs = each_in_script(
        "((text, quantity, unit) => [crew.read(text, quantity, unit), crew.why(text, quantity, unit)])", cases
    )
    read = 0
    for given, found in zip(cases, theirs, strict=True):
        ours = read_or_why(*given)
        read += ours[1] == ""
        assert not difference(ours, found), f"{given}: {difference(ours, found)}"
    assert TEXTS * 0.3 < read < TEXTS * 0.9


def _text(random: Random) -> tuple[str, str, str]:
    quantity = random.choice(list(EXAMPLES))
    unit = random.choice(list(UNITS.get(quantity, {"": []})))
    item = Input("x", "X", quantity, unit)  # type: ignore[arg-type]
    at = random.random()
    if at < 0.1:
        return (plan_text(random), "plan", "")
    if at < 0.2:
        return (random.choice(JUNK), quantity, unit)
    text = random.choice(list(EXAMPLES.values())).split(" or ")[0].split(", ")[0]
    if at < 0.7:
        size = 10 ** random.uniform(-3, 4)
        text = figure_text(random, item, size if quantity != "slope" else random.uniform(0.001, 0.5))
    if random.random() < 0.3:
        place = random.randint(0, len(text))
        text = text[:place] + random.choice(SIGNS) + text[place + random.randint(0, 1) :]
    return (text, quantity, unit)


def test_figures_are_written_alike() -> None:
    """Values of every quantity and unit, in steps of the tape and decimal ones, all three directions, and as given."""
    random = Random(2)
    cases: list[list[Any]] = []
    for _ in range(TEXTS):
        quantity = random.choice([*UNITS, "count", "number"])
        unit = random.choice(list(UNITS.get(quantity, {"": [], "bundles": [], "boxes": []})))
        value = random.choice([-1, 1, 1, 1]) * 10 ** random.uniform(-6, 16)
        value = random.choice([value, round(value * 64) / 64, round(value), 0, 1])
        if quantity == "slope":
            value = random.uniform(-1, 1)
        step = random.choice([0, 1 / 64, 1 / 16, 1 / 8, 0.25, 0.5, 1, 0.1, 0.01, 0.001, 5, 10])
        cases.append([value, quantity, unit, step, random.choice(["nearest", "up", "down"])])
    theirs = each_in_script("(crew.write)", cases)
    exact = each_in_script("(crew.exactly)", [each[:3] for each in cases])
    for given, found, given_back in zip(cases, theirs, exact, strict=True):
        assert write(*given) == found, given
        assert exactly(*given[:3]) == given_back, given
