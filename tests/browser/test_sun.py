"""The look for the sun, text at twice its size, and colours that the system sets."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from selenium.webdriver import Chrome

from tests.browser.test_every_kind_of_page import KINDS
from tests.browser.window import PHONE, Window

PAGE = "plumbing/toilet-set.html"
MORE = ["labels.html", "sequence.html", "holds.html", "dangers.html", "jobs/garden-studio/index.html"]
Start = Callable[..., Chrome]
INK = "const s = getComputedStyle(document.querySelector('.crew .lead')); return s.color"
PAPER = "return getComputedStyle(document.body).backgroundColor"
CUT_OFF = """
    const own = one => [...one.childNodes].some(node => node.nodeType === 3 && node.data.trim());
    const seen = one => one.checkVisibility({visibilityProperty: true})
        && !one.closest('.unseen, svg, .slide, .find-open, .md-sidebar, .md-skip');
    const out = [...document.querySelectorAll('body *')].filter(one => seen(one) && own(one)).filter(one => {
        const box = one.getBoundingClientRect(), style = getComputedStyle(one);
        const cut = style.overflowX !== 'visible' && style.overflowX !== 'auto' && style.display !== 'inline'
            && (one.scrollWidth > one.clientWidth + 2 || one.scrollHeight > one.clientHeight + 12);
        return box.width && (box.right > innerWidth + 1 || box.left < -1 || cut);
    });
    return out.slice(0, 5).map(one => `${one.tagName}.${one.className} ${one.textContent.trim().slice(0, 40)}`);
"""
"""Words that reach out of the screen or of their box."""


def emulate(window: Window, **features: str) -> None:
    """Set what the system wishes: ``prefers_color_scheme="dark"``."""
    given = [{"name": name.replace("_", "-"), "value": value} for name, value in features.items()]
    window.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": given})


def test_one_tap_gives_black_on_white_and_is_remembered(window: Window) -> None:
    """Also where the system is dark; on the next page it is there before anything is painted."""
    emulate(window, prefers_color_scheme="dark")
    window.open(PAGE)
    assert window.script(PAPER) != "rgb(255, 255, 255)"
    switch = window.find(".sun-switch")
    assert (switch.get_attribute("aria-pressed"), switch.accessible_name) == ("false", "In the sun: high contrast")
    assert min(switch.size["width"], switch.size["height"]) >= 48
    switch.click()
    assert (window.script(INK), window.script(PAPER)) == ("rgb(0, 0, 0)", "rgb(255, 255, 255)")
    early = "new PerformanceObserver(() => window.early ??= document.documentElement.dataset.look)"
    source = f"{early}.observe({{type: 'paint', buffered: true}})"
    held = window.driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": source})
    window.open("index.html")
    window.until(lambda: window.script("return window.early"), "the first paint")
    assert window.script("return window.early") == "sun"
    assert window.script(PAPER) == "rgb(255, 255, 255)"
    assert window.find(".sun-switch").get_attribute("aria-pressed") == "true"
    window.find(".sun-switch").click()
    assert window.script(PAPER) != "rgb(255, 255, 255)"
    window.driver.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", held)
    emulate(window, prefers_color_scheme="")


def test_who_asks_for_more_contrast_has_it(window: Window) -> None:
    """The system's own wish counts until somebody taps."""
    emulate(window, prefers_contrast="more")
    window.open(PAGE)
    assert window.script("return document.documentElement.dataset.look") == "sun"
    emulate(window, prefers_contrast="")


def test_a_browser_that_forbids_to_remember_says_so(window: Window) -> None:
    """The look holds for the page, and the switch says that it is not remembered."""
    source = "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError') }})"
    held = window.driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": source})
    window.open("index.html")
    window.find(".sun-switch").click()
    assert window.script(PAPER) == "rgb(255, 255, 255)"
    assert "does not let a page remember it" in window.find(".sun-switch").accessible_name
    window.driver.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", held)


def test_text_at_twice_its_size_is_not_cut_off(browsers: Start, address: str) -> None:
    """On a phone 360 px wide, with the browser's text set to 200 %, each kind of page can be read."""
    window = Window(browsers(text_size=32), address)
    window.width(PHONE)
    wrong = {}
    for url in [*KINDS, *MORE]:
        window.open(url)
        if url != "404.html":
            assert (
                window.script("return parseFloat(getComputedStyle(document.querySelector('.crew p')).fontSize)") >= 26
            )
        found = window.script(CUT_OFF)
        if found or window.sideways() > 0:
            wrong[url] = (window.sideways(), found)
    assert wrong == {}


@pytest.mark.parametrize("url", ["index.html", PAGE])
def test_where_the_system_sets_the_colours_nothing_is_lost(url: str, window: Window) -> None:
    """With forced colours a filled box has a frame: what is pressed, what stops, what warns."""
    emulate(window, forced_colors="active")
    window.open(url)
    window.find(".sun-switch").click()
    assert window.script("return getComputedStyle(document.querySelector('.sun-switch')).outlineStyle") == "solid"
    edges = window.script(
        "return [...document.querySelectorAll('.message .word, .hold .bar')]"
        ".map(one => getComputedStyle(one).borderBottomStyle)"
    )
    assert set(edges) <= {"solid"}
    emulate(window, forced_colors="")


def test_reduced_motion_moves_nothing(window: Window) -> None:
    """Who asks for less motion has no transition and no animation."""
    emulate(window, prefers_reduced_motion="reduce")
    window.open(PAGE)
    moving = window.script(
        "return [...document.querySelectorAll('*')].filter(one => {"
        "  const style = getComputedStyle(one);"
        "  return parseFloat(style.transitionDuration) > 0 || style.animationName !== 'none' }).length"
    )
    assert moving == 0
    emulate(window, prefers_reduced_motion="")
