"""What is kept of the theme's style sheet, and that no page has a class of the theme whose rules were cut."""

from __future__ import annotations

import re
from importlib.util import find_spec
from pathlib import Path

import pytest

from build_tools.pages.site_files import ASSETS, STYLES, style_sheet
from build_tools.pages.theme_style import CLASSES, frame_style, tight
from tests.site_pages import SitePage

FOUND = find_spec("material")
assert FOUND is not None and FOUND.submodule_search_locations is not None
THEME = Path(FOUND.submodule_search_locations[0]) / "templates" / "assets" / "stylesheets"
UNSTYLED = {"md-dialog", "md-dialog__inner", "danger", "warning", "note", "n"}
"""The theme's box for messages, which its script fills and which stays empty; and names that our own styles use."""


@pytest.fixture(scope="module")
def theme() -> str:
    """The theme's style sheet."""
    (file,) = THEME.glob("main.*.min.css")
    return file.read_text(encoding="utf-8")


def test_no_page_has_a_class_whose_rules_were_cut(pages: dict[str, SitePage], theme: str, site: Path) -> None:
    styled = set(re.findall(r"\.([a-zA-Z_][\w-]*)", re.sub(r'"[^"]*"', "", theme)))
    used: set[str] = set()
    for url in pages:
        for words in re.findall(r'class="([^"]*)"', (site / url).read_text(encoding="utf-8")):
            used.update(words.split())
    assert (used & styled) - UNSTYLED - CLASSES == set()


def test_it_is_whole_and_small(theme: str) -> None:
    kept = frame_style(theme, style_sheet())
    assert kept.count("{") == kept.count("}") > 200
    assert len(kept) < len(theme) / 3
    named = set(re.findall(r"var\(\s*(--md-[\w-]+)", kept))
    declared = set(re.findall(r"(--md-[\w-]+):", kept + style_sheet()))
    assert named - declared <= set(re.findall(r"var\(\s*(--md-[\w-]+)", theme)) - set(
        re.findall(r"(--md-[\w-]+):", theme)
    )


@pytest.mark.parametrize(
    ("style", "kept"),
    [
        (".md-nav{a:b}.md-tabs{a:b}", ".md-nav{a:b}"),
        (".md-nav,.md-tabs{a:b}", ".md-nav{a:b}"),
        (".md-nav:not(.md-tabs){a:b}", ".md-nav:not(.md-tabs){a:b}"),
        ("@media print{.md-tabs{a:b}}p{a:b}", "p{a:b}"),
        ("@media print{p{a:b}.md-tabs{a:b}}", "@media print{p{a:b}}"),
        (':root{--md-x:url("data:;}{");--md-y:1}p{a:var(--md-y)}', ":root{--md-y:1}p{a:var(--md-y)}"),
        (
            "@keyframes one{0%{a:b}}@keyframes two{0%{a:b}}p{animation:two 1s}",
            "@keyframes two{0%{a:b}}p{animation:two 1s}",
        ),
        ('@charset "UTF-8";p{content:"}"}', 'p{content:"}"}'),
    ],
)
def test_what_can_match_stays(style: str, kept: str) -> None:
    assert frame_style(style) == kept


def test_notes_and_indents_go() -> None:
    assert tight("/* a */\np {\n  a: b;\n}\n") == "p {\na: b;\n}\n"


def test_every_style_sheet_has_its_place_in_the_order() -> None:
    """A new file that is not listed would style nothing, without a word."""
    assert sorted(f"{name}.css" for name in STYLES) == sorted(path.name for path in (ASSETS / "css").iterdir())
