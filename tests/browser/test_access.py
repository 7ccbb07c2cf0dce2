"""Accessibility: axe-core's rules on each kind of page, on a phone and a laptop, and headings in order."""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from typing import Any

import pytest

from build_tools.commands.test import TOOLS
from tests.browser.test_every_kind_of_page import KINDS
from tests.browser.window import LAPTOP, PHONE, Window

RUN = """
const done = arguments[arguments.length - 1];
axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}).then(
  (found) => done(found.violations.map((one) => ({rule: one.id, impact: one.impact,
    at: one.nodes.slice(0, 3).map((node) => `${node.target.join(" ")}: ${node.failureSummary.split("\\n")[1]}`)}))));
"""
LAID = ".crew * { content-visibility: visible !important }"
"""Steps that are far away are not laid out yet, and would be measured in the wrong place."""
LEVELS = "return [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((one) => Number(one.tagName[1]))"


@cache
def axe() -> str:
    """The script of axe-core."""
    return (TOOLS / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")


def violations(window: Window) -> list[dict[str, Any]]:
    """What axe-core finds on the page as it stands, with all of it laid out."""
    window.script(
        "document.head.append(Object.assign(document.createElement('style'), {textContent: arguments[0]}))", LAID
    )
    window.script(axe())
    found: list[dict[str, Any]] = window.driver.execute_async_script(RUN)
    return found


@pytest.mark.parametrize("url", KINDS)
@pytest.mark.parametrize("width", [PHONE, LAPTOP])
def test_axe_finds_nothing(url: str, width: int, window: Window) -> None:
    window.width(width)
    window.open(url)
    assert violations(window) == []


def test_axe_finds_nothing_in_the_search(window: Window) -> None:
    window.open("index.html")
    window.find(".crew .find").click()
    window.until(lambda: window.find_all(".crew-search input"), "the search")
    window.find(".crew-search input").send_keys("toilet")
    window.until(lambda: window.find_all(".crew-search li"), "results")
    assert violations(window) == []


@pytest.mark.parametrize("url", KINDS)
def test_headings_are_in_order(url: str, window: Window) -> None:
    """One heading of the first level, and no level is left out on the way down."""
    window.open(url)
    levels: list[int] = window.script(LEVELS)
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
