"""The policy that each page of the site carries: it comes first, lets nothing run but ours, and fits the page."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from build_tools.browser.policy import digest, site_policy
from build_tools.commands.site import BOOK
from build_tools.pages.frame import frame_context
from build_tools.pages.page import Page, foot_style

POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">')
ELEMENT = re.compile(r"<(script|style)\b([^>]*)>(.*?)</\1>", re.DOTALL)


@pytest.fixture(scope="module")
def texts(site: Path) -> dict[str, str]:
    """Every page as text, that of a server for what it has not too."""
    return {path.relative_to(site).as_posix(): path.read_text(encoding="utf-8") for path in site.rglob("*.html")}


def test_every_page_says_it_before_anything_else(texts: dict[str, str]) -> None:
    """Once, and ahead of whatever could load or run; a browser looks for the letters' encoding in 1,024 bytes."""
    for url, text in texts.items():
        assert len(POLICY.findall(text)) == 1, url
        head = text.partition("<head>")[2]
        assert head.lstrip().startswith("<meta http-equiv="), url
        assert text.encode().index(b'<meta charset="utf-8">') < 1000, url


def test_nothing_but_what_the_site_brings(texts: dict[str, str]) -> None:
    """No other host, nothing inline without its digest, no form, no base; no digest of what does not stand there."""
    for url, text in texts.items():
        policy = POLICY.findall(text)[0]
        parts = {name: values for name, *values in (part.split() for part in policy.split(";"))}
        assert parts.pop("default-src") == parts.pop("form-action") == parts.pop("base-uri") == ["'none'"], url
        assert parts.pop("img-src") == ["'self'", "data:"], url
        inline = {"script": set(parts.pop("script-src")), "style": set(parts.pop("style-src"))}
        assert set(map(tuple, parts.values())) == {("'self'",)}, url
        held: dict[str, set[str]] = {"script": {"'self'"}, "style": {"'self'"}}
        for kind, attributes, inside in ELEMENT.findall(text):
            if "src=" not in attributes and "type=" not in attributes:
                held[kind].add(digest(inside))
        assert inline == held, url


def test_no_style_and_no_event_stands_at_an_element(texts: dict[str, str]) -> None:
    """A policy without 'unsafe-inline' refuses both, so a page that has one would look or work differently."""
    found = {url: re.findall(r"<[a-z]+\s[^>]*?\s(?:style|on[a-z]+)=[^>]*>", text) for url, text in texts.items()}
    assert {url: some for url, some in found.items() if some} == {}


def test_a_preview_may_load_itself_anew() -> None:
    """The engine puts a script into each page of a preview; a digest beside 'unsafe-inline' would switch that off."""
    policy = str(frame_context({}, "", True)["policy"])
    assert "script-src 'self' 'unsafe-inline';" in policy
    assert "unsafe" not in str(frame_context({}, "", False)["policy"])
    assert site_policy("", True).replace("'unsafe-inline'", digest("")) == site_policy("", False)


def test_the_rules_of_a_page_of_its_own() -> None:
    """They stand in the head with their digest; a title cannot end the text that it stands in."""
    page = Page("a.html", "A", "", style=foot_style('"}*{}</style>\\'))
    assert page.style_element == '<style>:root{--foot:"\\22 }*{}\\3c /style\\3e \\5c "}</style>'
    assert page.style_digest == f" {digest(page.style)}"
    assert (Page("a.html", "A", "").style_element, Page("a.html", "A", "").style_digest) == ("", "")


def test_the_book_has_no_drawing_with_a_style_of_another_file() -> None:
    """The crew's own drawings pass the check of drawings, which the build holds each of them against."""
    from build_tools.book.svg import Drawing

    drawings = {path.name: Drawing(path.read_bytes()).wrong for path in BOOK.rglob("*.svg")}
    assert {name: wrong for name, wrong in drawings.items() if wrong} == {}
    assert drawings
