"""The toilet page in a real browser: its table, large text, touch targets and the keyboard."""

from __future__ import annotations

from pathlib import Path

import pytest
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.keys import Keys

from build_tools.commands.site import BOOK
from tests.browser.window import LAPTOP, PHONE, TABLET, Window
from tests.tables import cells, tables

PAGE = "plumbing/toilet-set.html"
TOUCH = 48
"""The least height of what a finger meets, in px (Material Design, accessibility: touch targets of 48 by 48 dp)."""
TABLE = """
    return [...document.querySelectorAll('#choose-ring table.sums tbody tr')].map(row =>
        [...row.querySelectorAll('td')].map(cell =>
            [...cell.querySelectorAll('.line')].map(line => line.textContent.replace(/\\s+/g, ' ').trim())))
"""
HEIGHTS = """
    return [...document.querySelectorAll(arguments[0])]
        .filter(e => e.checkVisibility({visibilityProperty: true}) && e.getBoundingClientRect().height)
        .map(e => [e.innerText.trim(), e.getBoundingClientRect().height])
"""


def test_the_table_shows_what_the_calculator_says(window: Window) -> None:
    """Cell by cell the table of the rings shows what the calculator answers for that rise and that ring."""
    window.open(PAGE)
    assert window.script(TABLE) == cells(tables(BOOK)["toilet-set", "choose-ring"], BOOK)


@pytest.mark.parametrize("width", [PHONE, TABLET, LAPTOP])
def test_text_at_twice_its_size_fits(width: int, window: Window) -> None:
    """With the text twice as large the page still does not scroll sideways (WCAG 2.2, 1.4.4 and 1.4.10)."""
    window.width(width)
    window.open(PAGE)
    size = "parseFloat(getComputedStyle(document.documentElement).fontSize)"
    before = window.script(f"return {size}")
    window.script(f"document.documentElement.style.fontSize = 2 * {size} + 'px'")
    assert window.script(f"return {size}") == 2 * before
    assert window.sideways() <= 0, window.widest()


@pytest.mark.parametrize("selector", [".crew .jump a", ".md-nav--primary .md-nav__link", ".crew summary"])
def test_a_finger_meets_its_target(selector: str, window: Window) -> None:
    """On a phone each link of the navigation, each jump and each fold is high enough for a finger."""
    window.width(PHONE)
    window.open(PAGE)
    if "md-nav" in selector:
        window.find(".md-header__button[for=__drawer]").click()
    found = window.until(lambda: window.script(HEIGHTS, selector), selector)
    assert [(text, height) for text, height in found if height < TOUCH] == []


def test_tab_reaches_skip_link_and_search(window: Window) -> None:
    """The first key shows the way past the header, and a few more reach the search."""
    window.open(PAGE)
    focused = []
    for _ in range(6):
        ActionChains(window.driver).send_keys(Keys.TAB).perform()
        focused.append(window.script("return document.activeElement.className.split(' ')[0]"))
    assert focused[0] == "md-skip"
    assert "find-open" in focused


def test_the_skip_link_leads_to_the_content(window: Window) -> None:
    """Enter on the skip link goes to a place in the content."""
    window.open(PAGE)
    ActionChains(window.driver).send_keys(Keys.TAB, Keys.ENTER).perform()
    anchor = window.until(lambda: window.script("return location.hash"), "the anchor")
    assert window.script("return Boolean(document.querySelector(`article ${arguments[0]}`))", anchor)


def test_a_fold_opens_with_enter(window: Window) -> None:
    """A question is reached and opened by the keyboard alone, and then shows its answer."""
    window.open(PAGE)
    fold = window.find(".crew details.ask")
    window.script("arguments[0].querySelector('summary').focus()", fold)
    answer = fold.find_element("css selector", "div")
    assert not answer.is_displayed()
    ActionChains(window.driver).send_keys(Keys.ENTER).perform()
    window.until(answer.is_displayed, "the answer")
    assert answer.text


def test_the_focus_is_seen(window: Window) -> None:
    """A link of the content that the keyboard reaches carries an outline (WCAG 2.2, 2.4.7)."""
    window.open(PAGE)
    ActionChains(window.driver).send_keys(Keys.TAB, Keys.ENTER, Keys.TAB).perform()
    assert window.script("return Boolean(document.activeElement.closest('article'))")
    outline = "const s = getComputedStyle(document.activeElement); return [s.outlineStyle, parseFloat(s.outlineWidth)]"
    style, width = window.script(outline)
    assert style == "solid" and width >= 2


def test_the_page_opens_from_a_folder(site: Path, window: Window) -> None:
    """Opened by double click, without a server, the page has its words, its styles and its own fonts."""
    window.open((site / PAGE).as_uri())
    assert window.find("h1").text == "Set a toilet"
    assert window.script("return document.fonts.check('16px Crew')")
    loaded = window.script(
        "return [...document.fonts].filter(f => f.family === 'Crew' && f.status === 'loaded').length"
    )
    assert loaded >= 1
    assert window.script("return parseFloat(getComputedStyle(document.querySelector('.crew h2')).borderTopWidth)") >= 2
    assert window.script("return [...document.images].every(i => i.loading === 'lazy' || i.naturalWidth > 0)")
    window.find(".crew .over a").click()
    window.until(lambda: window.script("return location.pathname").endswith("/plumbing/index.html"), "the trade's page")
