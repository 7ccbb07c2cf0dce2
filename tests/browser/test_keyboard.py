"""By keyboard alone: each stop is seen, no key is lost, and who goes back stands where he left."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.keys import Keys

from tests.browser.on_site import HELD, PAGE, OnSite, forget_all
from tests.browser.test_walk import Walk
from tests.browser.window import LAPTOP, PHONE, Window

STOP = """
    const one = document.activeElement;
    if (!one || one === document.body) return null;
    const name = `${one.tagName} ${one.id} ${one.textContent.trim().slice(0, 30)}`;
    const rings = [one, one.nextElementSibling, one.parentElement, one.closest('label, .puts-in')].filter(Boolean)
        .map(each => getComputedStyle(each));
    const ring = rings.some(style => style.outlineStyle === 'solid' && parseFloat(style.outlineWidth) >= 3);
    const box = one.getBoundingClientRect();
    const hit = document.elementFromPoint(box.left + Math.min(box.width / 2, 20), box.top + box.height / 2);
    const around = one.closest('label') ?? one;
    return {name, ring, seen: Boolean(hit) && (around.contains(hit) || hit.contains(one))};
"""
"""What has the keyboard: its name, whether a ring is drawn around it, and whether nothing lies over it."""


LINK = ".md-nav--primary > .md-nav__list > .md-nav__item > [href='plumbing/index.html']"
"""A page that the menu of the home page leads to."""


def press(window: Window, *keys: str) -> None:
    """Press keys one after another, wherever the keyboard is."""
    for key in keys:
        ActionChains(window.driver).send_keys(key).perform()


def back(window: Window) -> None:
    """One stop back."""
    ActionChains(window.driver).key_down(Keys.SHIFT).send_keys(Keys.TAB).key_up(Keys.SHIFT).perform()


def wrong_stops(window: Window, count: int) -> list[str]:
    """The stops without a ring or under something else, so many on and as many back."""
    wrong = []
    for move in range(2 * count):
        back(window) if move >= count else press(window, Keys.TAB)
        stop = window.script(STOP)
        if stop and not (stop["ring"] and stop["seen"]):
            wrong.append(f"{move}: {stop}")
    return wrong


@pytest.fixture
def clean(window: Window) -> Iterator[Window]:
    """A browser that has kept nothing."""
    forget_all(window.driver, window.address)
    yield window
    window.open("index.html")
    window.script("sessionStorage.clear()")
    forget_all(window.driver, window.address)


@pytest.mark.parametrize("width", [PHONE, LAPTOP])
def test_each_stop_of_a_page_is_seen(width: int, clean: Window) -> None:
    """From the top of the page into its steps: no stop in the menu that is slid away, none under the header."""
    clean.width(width)
    OnSite(clean)
    assert wrong_stops(clean, 45) == []


@pytest.mark.parametrize(
    ("kind", "step"), [("before", ""), ("danger", "open-box"), ("step", "check-place"), ("hold", HELD)]
)
def test_each_stop_of_the_walk_is_seen(kind: str, step: str, clean: Window) -> None:
    """None under the bar at the lower edge or under the tick."""
    walk = Walk(clean)
    if step:
        walk.go_to(kind, step)
    assert wrong_stops(clean, 16) == []


def test_each_stop_of_the_search_is_seen(window: Window) -> None:
    """Opened by its key, with answers; Escape gives the keyboard back to what opened it."""
    window.open("index.html")
    opener = window.find(".find-open")
    opener.send_keys(Keys.ENTER)
    window.until(lambda: window.find_all(".crew-search[open]"), "the search")
    press(window, *"toilit")
    window.until(lambda: window.find_all(".crew-search li"), "answers")
    assert wrong_stops(window, 6) == []
    press(window, Keys.ESCAPE)
    assert window.driver.switch_to.active_element == opener


def test_the_menu_opens_by_key(window: Window) -> None:
    """On a narrow screen the menu, and in it what folds; shut again, none of its links takes a key."""
    window.width(PHONE)
    window.open("index.html")
    opener = window.find(".md-header [for=__drawer]")
    assert not window.find(LINK).is_displayed()
    opener.send_keys(Keys.ENTER)
    window.until(lambda: window.find(LINK).is_displayed(), "the menu")
    assert window.find(".md-sidebar--primary").size["height"] == window.script("return innerHeight")
    inner = "label[tabindex][for=__nav_8]"
    assert not window.find(f"{inner} ~ .md-nav a").is_displayed()
    window.find(inner).send_keys(" ")
    window.until(lambda: window.find(f"{inner} ~ .md-nav a").is_displayed(), "what folds in it")
    opener.send_keys(Keys.ENTER)
    window.until(lambda: not window.find(LINK).is_displayed(), "a shut menu")


@pytest.mark.parametrize(("name", "inside"), [("place", ".place-in"), ("record", ".record-by")])
def test_a_panel_gives_the_keyboard_back(name: str, inside: str, clean: Window) -> None:
    """It takes the keyboard as it opens; Escape shuts it, and the button that opened it has the keyboard again."""
    OnSite(clean)
    opener = clean.find(f"[data-panel={name}]")
    opener.send_keys(Keys.ENTER)
    clean.until(lambda: clean.script("return document.activeElement.closest('.room')"), "the keyboard in the panel")
    assert wrong_stops(clean, 3) == []
    clean.find(f"{inside} button").send_keys(Keys.ESCAPE)
    assert clean.find_all(inside) == []
    assert clean.driver.switch_to.active_element == opener
    assert opener.get_attribute("aria-expanded") == "false"


def test_escape_leaves_a_box_and_then_the_walk(clean: Window) -> None:
    """Out of the box where somebody types, so that the arrows walk again; then out of the walk, at that step."""
    walk = Walk(clean)
    walk.go_to("hold", HELD)
    walk.key(Keys.ARROW_RIGHT)
    assert clean.driver.switch_to.active_element == clean.find(f"#hold-{HELD}")
    walk.key(Keys.ESCAPE)
    walk.key(Keys.ARROW_LEFT)
    assert walk.kind == "step"
    walk.key(Keys.ESCAPE)
    assert walk.kind == ""
    assert clean.driver.current_url.endswith(f"{PAGE}#{HELD}")
    assert clean.script("return document.activeElement.closest('.step').id") == HELD
