"""Search in a real browser: what people call a thing leads to its procedure."""

from __future__ import annotations

import pytest
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.keys import Keys

from tests.browser.window import PHONE, Window

FIELD = ".crew-search input"
RESULT = ".crew-search li a"


def search(window: Window, word: str) -> None:
    """Open the search from the home page and type a word."""
    window.open("index.html")
    window.find(".crew .find").click()
    window.until(lambda: window.find_all(FIELD) and window.find(FIELD).is_displayed(), "the field of the search")
    window.find(FIELD).send_keys(word)


def first_result(window: Window, word: str) -> str:
    """Search for a word, open the first result by the keyboard, and give the page it leads to."""
    search(window, word)
    window.until(lambda: window.find_all(RESULT), f"results for {word}")
    window.find(FIELD).send_keys(Keys.ENTER)
    window.until(lambda: window.script("return location.pathname") not in ("/", "/index.html"), "the result's page")
    path: str = window.script("return location.pathname")
    return path.lstrip("/")


@pytest.mark.parametrize(
    ("word", "page"),
    [
        ("commode", "plumbing/toilet-set.html"),
        ("doorknob", "doors/lockset-install.html"),
        ("apron", "concrete/approach-forming.html"),
        ("tolet", "plumbing/toilet-set.html"),
        ("vanty fauset", "plumbing/vanity-faucet.html"),
        ("bleeding", "dangers.html"),
    ],
)
def test_another_word_leads_to_the_procedure(word: str, page: str, window: Window) -> None:
    """The first result for what people say in place of the title, with a slip too, is the procedure."""
    assert first_result(window, word) == page
    assert window.console() == []


def test_search_on_a_phone(window: Window) -> None:
    """On a phone the search fills the screen, and a tap on a result leads to its page."""
    window.width(PHONE)
    search(window, "commode")
    window.until(lambda: window.find_all(RESULT), "results")
    window.find(RESULT).click()
    window.until(lambda: "toilet-set" in window.script("return location.pathname"), "the procedure")


def test_a_word_of_a_step_leads_to_the_step(window: Window) -> None:
    """A word that stands in one step alone leads to that step on its page."""
    search(window, "twisting")
    window.until(lambda: window.find_all(RESULT), "results")
    links = [link.get_attribute("href") or "" for link in window.find_all(RESULT)]
    assert any("toilet-set.html" in link and link.endswith("#settle-bowl") for link in links)


def test_nothing_found_is_said(window: Window) -> None:
    """A word that is nowhere gets an answer as well."""
    search(window, "zzqqxx" + Keys.SPACE)
    window.until(lambda: "Nothing found" in window.find(".crew-search .said").text, "the answer")
    assert window.find_all(RESULT) == []


def test_the_keyboard_opens_walks_and_leaves(window: Window) -> None:
    """A stroke opens it, arrows walk the results, Escape gives the page back."""
    window.open("plumbing/index.html")
    ActionChains(window.driver).send_keys("/").perform()
    window.until(lambda: window.find_all(FIELD) and window.find(FIELD).is_displayed(), "the field of the search")
    window.find(FIELD).send_keys("toilet")
    window.until(lambda: window.find_all(RESULT), "results")
    keys = [Keys.ARROW_DOWN, Keys.ARROW_DOWN, Keys.ARROW_UP]
    ActionChains(window.driver).send_keys(*keys).perform()
    assert window.script("return document.activeElement.closest('li') === document.querySelector('.crew-search li')")
    ActionChains(window.driver).send_keys(Keys.ARROW_UP).perform()
    assert window.script("return document.activeElement === document.querySelector('.crew-search input')")
    ActionChains(window.driver).send_keys(Keys.ESCAPE).perform()
    assert not window.find(".crew-search").is_displayed()


def test_search_that_did_not_come_is_asked_for_again(window: Window) -> None:
    """What the search needs cannot come; with the next tap, once it can, it does."""
    with window.without("*/search.js"):
        window.open("plumbing/index.html")
        window.find(".find-open").click()
        window.until(lambda: any("/search.js" in url for url in window.requests()), "the search that is asked for")
    window.find(".find-open").click()
    window.until(lambda: window.find_all(FIELD) and window.find(FIELD).is_displayed(), "the field of the search")
