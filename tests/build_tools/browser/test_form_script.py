"""The script of the live forms: its words, its pieces, and what a page hands to it."""

from __future__ import annotations

import json
import re

import pytest

from build_tools.browser.form_script import FOLDERS, FORM, PIECES, joined, of_folders, steps_and_forms
from build_tools.pages.live import live_page, open_inputs
from build_tools.pages.words import words
from calculators.registry import CALCULATORS
from tests.builds import FEW, SMALL, context_of
from tests.script_engine import new_engine

WAX = CALCULATORS["wax-ring"]
SAID = re.compile(r"\bsay\.(\w+)")


def data(*names: str) -> dict[str, object]:
    """What a page with those calculators hands to the script."""
    found: dict[str, object] = json.loads(live_page([CALCULATORS[name] for name in names], words(), "../"))
    return found


def test_every_word_is_there_and_used() -> None:
    """The script asks for no word that the page lacks, and the page brings none that the script does not use."""
    used = set(SAID.findall(of_folders("form")))
    given = data("wax-ring")["words"]
    assert isinstance(given, dict)
    assert used == set(given)


def test_the_pieces_are_joined_in_order() -> None:
    """Every piece is in the script once, by its functions, without the lines that only explain."""
    script = of_folders("form")
    for piece in PIECES.glob("*.js"):
        for function in re.findall(r"^function (\w+)", piece.read_text(encoding="utf-8"), re.MULTILINE):
            assert script.count(f"function {function}(") == 1, piece.name
    assert not re.search(r"^\s*(//|/\*)", joined(*FORM), re.MULTILINE)


def test_what_steps_and_forms_share_stands_in_their_script_once() -> None:
    """A page with both loads less than the two scripts; it is sound, and has the words of the steps."""
    say = {"walk": "Walk through it"}
    apart = joined(*FORM) + joined(*FOLDERS["steps"], say=say)
    both = steps_and_forms(say)
    assert both.count("dataset.come=") < apart.count("dataset.come=")
    assert "Walk through it" in both and "{WORDS}" not in both
    assert new_engine().eval(f"(function () {{ {both} }}); 1") == 1


@pytest.mark.parametrize("page", [["wax-ring"], ["wax-ring", "drain-fall"]])
def test_a_page_names_its_scripts_in_order(page: list[str]) -> None:
    """The shared script comes before the calculators, and the one that draws is named apart."""
    given = data(*page)
    wanted = ["crew", *(f"calculators/{name}" for name in sorted(page))]
    assert given["scripts"] == [f"assets/script/{name}.js" for name in wanted]
    assert (given["draw"], given["top"]) == (["assets/script/draw.js"], "../")


def test_a_page_without_live_forms_has_nothing() -> None:
    """A page whose calculators run at build time alone, or that has none, hands over nothing."""
    heavy = [calculator for calculator in CALCULATORS.values() if not calculator.on_site]
    assert live_page([], words(), "") == live_page(heavy, words(), "") == ""


def test_the_block_cannot_end_early() -> None:
    """A word with the end of a script element in it does not end the block of data."""
    text = live_page([WAX], {**words(), "live_put_in": "</script>"}, "")
    assert "<" not in text
    assert json.loads(text)["words"]["put_in"] == "</script>"


def test_what_is_given_stands_open() -> None:
    """The inputs that a page gives are asked for; without any, those that have no crew standard."""
    called = context_of(SMALL, FEW).call_with("wax-ring", {"rise": "1/2 in floor above flange"})
    assert open_inputs(called, {"rise"}, {"recess", "ring"}) == ["rise"]
    others = open_inputs(called, (), {"recess", "ring"})
    assert "rise" in others and not {"recess", "ring"} & set(others)


def test_it_is_sound_script() -> None:
    """A script engine of its own reads the whole without a complaint."""
    assert new_engine().eval(f"(function () {{ {joined(*FORM)} }}); 1") == 1
