"""Search in a real browser: what people call a thing leads to its procedure."""

from __future__ import annotations

import pytest
from selenium.webdriver.common.keys import Keys

from tests.browser.window import PHONE, Window

RESULT = ".md-search-result__item a.md-search-result__link"


def first_result(window: Window, word: str) -> str:
    """Type a word into the search of the home page, open the first result, and give the page it leads to."""
    window.find(".md-search__input").send_keys(word)
    window.until(lambda: window.find_all(RESULT), f"results for {word}")
    window.find(RESULT).click()
    window.until(lambda: window.script("return location.pathname") not in ("/", "/index.html"), "the result's page")
    path: str = window.script("return location.pathname")
    return path.lstrip("/")


@pytest.mark.parametrize(
    ("word", "page"),
    [
        ("commode", "plumbing/toilet-set.html"),
        ("doorknob", "doors/lockset-install.html"),
        ("apron", "concrete/approach-forming.html"),
    ],
)
def test_another_word_leads_to_the_procedure(word: str, page: str, window: Window) -> None:
    """The first result for what people say in place of the title is the procedure."""
    window.open("index.html")
    assert first_result(window, word) == page
    assert window.console() == []


def test_search_on_a_phone(window: Window) -> None:
    """On a phone the line on the home page opens the search, and a result leads to its page."""
    window.width(PHONE)
    window.open("index.html")
    window.find(".crew .find").click()
    window.until(lambda: window.find(".md-search__input").is_displayed(), "the field of the search")
    assert first_result(window, "commode") == "plumbing/toilet-set.html"


def test_a_word_of_a_step_leads_to_the_step(window: Window) -> None:
    """A word that stands in one step alone leads to that step on its page."""
    window.open("index.html")
    window.find(".md-search__input").send_keys("twisting")
    window.until(lambda: window.find_all(RESULT), "results")
    links = [link.get_attribute("href") or "" for link in window.find_all(RESULT)]
    assert any("toilet-set.html" in link and link.endswith("#settle-bowl") for link in links)


def test_nothing_found_is_said(window: Window) -> None:
    """A word that is nowhere gets an answer as well."""
    window.open("index.html")
    window.find(".md-search__input").send_keys("zzqqxx" + Keys.SPACE)
    said = window.until(
        lambda: "No matching" in (text := window.find(".md-search-result__meta").text) and text, "the answer"
    )
    assert said == "No matching documents"
