"""Drawings in the pages: whole SVG with words of their own, nothing from elsewhere, ids that do not meet."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from build_tools.book.calls import CallResult
from build_tools.pages.drawings import drawn, svg
from build_tools.pages.site_files import style_sheet
from calculators.drawing import FILLS, STYLES, circle, rectangle, sheet
from calculators.drawing_text import SIZE
from calculators.registry import CALCULATORS
from calculators.run import read_inputs, run
from tests.called import called
from tests.site_pages import SitePage

DRAWN = [each for each in CALCULATORS.values() if each.drawing is not None]
NAMESPACE = "{http://www.w3.org/2000/svg}"


def example_of(name: str) -> CallResult:
    calculator = CALCULATORS[name]
    given, _ = read_inputs(calculator, calculator.example)
    values = {each.name: given.get(each.name, each.default) for each in calculator.inputs}
    return called(calculator, values, run(calculator, values))


@pytest.mark.parametrize("name", [each.name for each in DRAWN])
def test_a_drawing_is_whole_and_takes_nothing_from_elsewhere(name: str) -> None:
    made = drawn(example_of(name), "here")
    assert made is not None
    root = ElementTree.fromstring(made["svg"])
    assert root.attrib["role"] == "img"
    title, words = root.find(f"{NAMESPACE}title"), root.find(f"{NAMESPACE}desc")
    assert title is not None and words is not None
    assert root.attrib["aria-labelledby"].split() == [title.attrib["id"], words.attrib["id"]]
    assert title.text == made["title"]
    assert words.text and len(words.text) > len(str(title.text))
    without_namespaces = re.sub(r'xmlns(:xlink)?="[^"]*"', "", made["svg"])
    assert "http" not in without_namespaces
    assert not re.search(r"<(script|image|style|foreignObject)\b|href=", without_namespaces)
    assert "#" not in re.sub(r"url\(#here-[a-z]+\)|&#x?[0-9a-f]+;", "", without_namespaces), "a colour of its own"


@pytest.mark.parametrize("name", [each.name for each in DRAWN])
def test_every_hatch_that_is_used_is_there(name: str) -> None:
    made = drawn(example_of(name), "here")
    assert made is not None
    used = set(re.findall(r"url\(#([\w-]+)\)", made["svg"]))
    assert used == {each.attrib["id"] for each in ElementTree.fromstring(made["svg"]).iter(f"{NAMESPACE}pattern")}


def test_no_drawing_without_an_answer_or_without_one_declared() -> None:
    refused = example_of("wax-ring")
    refused.answer = None
    assert drawn(refused, "here") is None
    plain = next(each for each in CALCULATORS.values() if each.drawing is None and each.on_site)
    assert drawn(CallResult(plain, {}, {}), "here") is None


def test_every_look_has_its_line_in_the_style_sheet() -> None:
    styles = style_sheet()
    for style in STYLES:
        assert style == "outline" or f".on-{style}" in styles, style
    tones = [fill for fill in FILLS if f'"in-{fill}' in svg(sheet("x", "x.", [circle(0.0, 0.0, 1.0, fill)]), "x")]
    assert all(f".in-{tone}" in styles for tone in tones)


def test_letters_are_as_large_in_the_style_sheet_as_in_the_layout() -> None:
    assert ":is(.drawing, .plot) text {" in style_sheet()
    rule = re.search(r":is\(\.drawing, \.plot\) text \{[^}]*font-size: (\d+)px", style_sheet())
    assert rule is not None
    assert float(rule.group(1)) == SIZE


def test_words_of_a_drawing_are_escaped() -> None:
    made = svg(sheet("A & B", 'x < y "z"', [rectangle(0.0, 0.0, 1.0, 1.0)]), "k")
    root = ElementTree.fromstring(made)
    assert root.findtext(f"{NAMESPACE}title") == "A & B"
    assert root.findtext(f"{NAMESPACE}desc") == 'x < y "z"'


def test_pages_show_drawings_and_no_id_is_there_twice(pages: dict[str, SitePage]) -> None:
    shown = 0
    for url, page in pages.items():
        found = [id for id in page.ids() if "drawing" in id or "plot" in id]
        assert len(found) == len(set(found)), url
        shown += sum(id.endswith("-drawing-title") for id in found)
    assert shown >= len(DRAWN)
