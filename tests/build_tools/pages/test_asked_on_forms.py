"""A form asks for each fact that can turn its yes into a no: no such fact stands folded at a good value.

A crew standard may be folded, and so may a fact whose starting value is the strict one. The distance to a tub, the
coldest night or the load that hangs on the circuit already are of neither kind: whoever does not see them gets a yes
for a place that nobody looked at.
"""

from __future__ import annotations

import pytest

from build_tools.book.book import Book
from build_tools.book.load import load_book
from build_tools.book.model.table import Form
from build_tools.commands.site import BOOK
from calculators.registry import CALCULATORS

FACTS = {
    "alarm-places": ("attic", "sleeping_rooms", "sleeping_areas", "sleeping_levels"),
    "alarm-spot": ("cooking", "bath", "register", "fan", "door"),
    "box-fill": ("wires_14", "wires_12", "grounds", "yokes", "box", "marked_volume"),
    "closet-light-place": ("kind", "hangs", "from_back", "from_side", "shelf_depth", "rod"),
    "concrete-strength": ("weather", "temperature", "age"),
    "device-for-place": ("device", "room", "sink", "tub", "damp", "breaker"),
    "gas-meter-place": ("inside", "ignition", "opening", "electric", "corner", "vehicles", "ventilated"),
    "lighting-load": ("count", "watts", "other"),
    "pour-weather": ("air", "humidity", "mix", "wind", "coldest", "rain", "frozen"),
    "trench": ("depth", "footing"),
    "water-closet-place": ("left", "right", "front"),
}
"""For a calculator, the facts of the place that decide, and whose starting value is a good one."""


@pytest.fixture(scope="module")
def book() -> Book:
    """The book as it is."""
    return load_book(BOOK).book


@pytest.mark.parametrize("name", FACTS)
def test_the_page_of_the_calculator_asks_for_what_decides(name: str) -> None:
    calculator = CALCULATORS[name]
    assert set(FACTS[name]) <= {each.name for each in calculator.inputs}
    assert [fact for fact in FACTS[name] if fact not in calculator.example] == []


def test_each_form_of_a_procedure_asks_for_what_decides(book: Book) -> None:
    missing, seen = [], set()
    for id, entry in book.procedures.items():
        for step in entry.item.steps:
            if isinstance(form := step.calculator, Form) and form.calculator in FACTS:
                seen.add(form.calculator)
                asked = {*form.inputs, *form.readings}
                if asked:  # a form that gives nothing asks for all that is no crew standard
                    wanting = [fact for fact in FACTS[form.calculator] if fact not in asked]
                    missing += [f"{id}#{step.id}: {form.calculator} does not ask for {fact}" for fact in wanting]
    assert missing == []
    assert len(seen) > 5
