"""A drawing that the page makes is the one that the build makes: the same elements at the same places."""

from __future__ import annotations

from typing import Any
from xml.etree import ElementTree

import pytest

from build_tools.pages.drawings import svg
from calculators.drawing import FILLS, STYLES, dimension, label, leader, rectangle, sheet
from tests.browser_script.engine import ON_SITE, each_in_script
from tests.drawn_inputs import drawn_cases

pytestmark = pytest.mark.slow

DRAWN = [each for each in ON_SITE.values() if each.drawing is not None]

Tree = tuple[str, dict[str, str], str, list[Any]]


def tree(text: str) -> Tree:
    """An SVG as its elements, with their attributes and words."""
    return _tree(ElementTree.fromstring(text))


def _tree(element: ElementTree.Element) -> Tree:
    return (element.tag, dict(element.attrib), (element.text or "").strip(), [_tree(inner) for inner in element])


@pytest.mark.parametrize("calculator", DRAWN, ids=lambda calculator: calculator.name)
def test_the_page_draws_as_the_build_does(calculator: Any) -> None:
    sheets = [calculator.drawing(*case) for case in drawn_cases(calculator, 12)]
    theirs = each_in_script("crew.draw", [[each, f"d{number}"] for number, each in enumerate(sheets)])
    for number, (ours, found) in enumerate(zip(sheets, theirs, strict=True)):
        assert tree(svg(ours, f"d{number}")) == tree(found)


def test_every_fill_line_and_sign_of_xml() -> None:
    shapes = [rectangle(float(place), 0.0, 1.0, 1.0, fill, "cut") for place, fill in enumerate(FILLS)]
    shapes += [rectangle(0.0, float(place), 1.0, 1.0, "none", style) for place, style in enumerate(STYLES)]
    shapes += [label(5.0, 5.0, '<b> & "c"\''), leader(2.0, 2.0, "a < b & c > d", "left")]
    shapes += [dimension(0.0, 0.0, 1.0, 0.0, "5' 0\" ⅞ ±", "above")]
    ours = sheet('Over "all" & <more>', 'It\'s <all> & "every" sign.', shapes)
    (theirs,) = each_in_script("crew.draw", [[ours, "all"]])
    assert tree(svg(ours, "all")) == tree(theirs)


def test_drawings_without_a_key_have_ids_of_their_own() -> None:
    drawn = sheet("One", "One.", [rectangle(0.0, 0.0, 1.0, 1.0, "wood", "cut")])
    first, second = each_in_script("crew.draw", [[drawn], [drawn]])
    assert tree(first)[1]["aria-labelledby"] != tree(second)[1]["aria-labelledby"]
