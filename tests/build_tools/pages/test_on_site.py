"""What a page hands to the scripts of the work on site: prints, limits, words."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from build_tools.book.model.step import Measurement, Step
from build_tools.browser.form_script import FOLDERS, of_folders
from build_tools.browser.on_site import on_site_script
from build_tools.commands.site import BOOK
from build_tools.pages.on_site import content_hash, lookers, measure_data
from build_tools.pages.words import words
from build_tools.pages.words.on_site import ON_SITE
from tests.builds import context_of
from tests.script_engine import new_engine

CONTEXT = context_of(BOOK)


def measured(**given: str) -> dict[str, Any]:
    """What a measurement with those figures hands over."""
    measurement = Measurement.model_validate({"what": "Gap", "outside": "Stop.", "basis": "common practice", **given})
    data: dict[str, Any] = json.loads(measure_data(measurement, CONTEXT))
    return data


@pytest.mark.parametrize(
    ("given", "quantity", "unit", "low", "high"),
    [
        ({"target": "12 in", "within": "1/4 in"}, "length", "in", 11.75, 12.25),
        ({"target": "12 in", "plus": "1 in", "minus": "1/4 in"}, "length", "in", 11.75, 13),
        ({"least": "36 in"}, "length", "in", 36, None),
        ({"most": "80 psi"}, "number", "psi", None, 80),
        ({"target": "1/4 in/ft", "within": "1/16 in/ft"}, "slope", "in/ft", 0.015625, 0.026041667),
        ({"target": "20 C", "within": "2 C"}, "temperature", "F", 64.4, 71.6),
        ({"least": "35 %", "most": "55 %"}, "percent", "%", 35, 55),
        ({"most": "1:12"}, "slope", "1:n", None, 1 / 12),
    ],
)
def test_limits(given: dict[str, str], quantity: str, unit: str, low: float | None, high: float | None) -> None:
    """The lowest and the highest that passes, and the unit of a bare number."""
    data = measured(**given)
    assert (data["quantity"], data["unit"]) == (quantity, unit)
    assert data.get("low") == (pytest.approx(low) if low is not None else None)
    assert data.get("high") == (pytest.approx(high) if high is not None else None)


def test_every_measurement_of_the_book_has_limits() -> None:
    """Each can be read, and none has the name of another in its step."""
    for entry in CONTEXT.book.procedures.values():
        for step in entry.item.steps:
            names = [json.loads(measure_data(one, CONTEXT))["name"] for one in step.measurements]
            assert len(names) == len(set(names)), f"{entry.id}#{step.id}"


@pytest.mark.parametrize(
    ("inspection", "the", "theirs"),
    [
        ("flange-and-place", "the crew lead", {"Tobin Reyes"}),
        ("lock-schedule-review", "the lead or owner", {"Tobin Reyes", "Ida Marsh"}),
        ("dead-proved", "the crew lead or the electrician", {"Tobin Reyes", "Corin Vale"}),
        ("drain-underground", "the plumbing inspector of the building department", set()),
    ],
)
def test_who_can_be_picked_at_a_hold_point(inspection: str, the: str, theirs: set[str]) -> None:
    """The crew, each with what he is where the look is not his, and below it who comes from outside to this point."""
    item = CONTEXT.book.inspections[inspection].item
    data = json.loads(lookers(item, CONTEXT.book, words("en")))
    crew = {
        "Ansel Brook": "a helper",
        "Corin Vale": "a specialist friend",
        "Ida Marsh": "the owner",
        "Maren Holt": "a specialist friend",
        "Tobin Reyes": "a lead",
        "Wren Okafor": "a helper",
    }
    outside = [[item.who.inside("en"), ""]] if item.by == "outside" else []
    people = [[name, "" if name in theirs else role] for name, role in crew.items()]
    assert data == {"the": the, "people": people + outside}


def test_a_print_follows_what_the_step_says() -> None:
    """Other words or another standard make another print; the place among the steps does not."""
    step = Step.model_validate({"id": "level", "do": "Level it to [](value:bowl-tolerance)."})
    same = step.model_copy()
    other = step.model_copy(update={"id": "level-it"})
    assert content_hash(step, CONTEXT) == content_hash(same, CONTEXT)
    assert content_hash(step, CONTEXT) != content_hash(other, CONTEXT)


@pytest.mark.parametrize("name", FOLDERS)
def test_each_script_is_sound_and_has_its_words(name: str) -> None:
    """A script engine reads it, and it asks for no word that it was not given."""
    assert new_engine().eval(f"(function () {{ {on_site_script(name, words())} }}); 1") == 1
    asked = re.findall(r"\bsay\.(\w+)", of_folders(*FOLDERS[name]))
    assert "undefined" not in {words().get(f"do_{one}", "undefined") for one in asked}


def test_no_word_is_left_over() -> None:
    """Each word of the scripts is used by one of them."""
    scripts = "".join(of_folders(*folders) for folders in FOLDERS.values())
    used = set(re.findall(r"\bsay\.(\w+)", scripts))
    given = {name.removeprefix("do_") for name in ON_SITE if name.startswith("do_")}
    assert {one for one in given - used if not one.startswith("state_")} == set()
