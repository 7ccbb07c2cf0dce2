"""Accessibility: axe-core's rules on each kind of page and in each look, and headings in order."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache, partial
from itertools import pairwise
from typing import Any

import pytest

from build_tools.commands.test import TOOLS
from tests.browser.live_form import LiveForm
from tests.browser.on_site import HELD, MEASURED, OnSite
from tests.browser.test_every_kind_of_page import KINDS
from tests.browser.test_sun import emulate
from tests.browser.test_walk import Walk
from tests.browser.window import LAPTOP, PHONE, Window

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
RUN = """
const [rules, done] = arguments;
axe.run(document, {runOnly: rules}).then(
  (found) => done(found.violations.map((one) => ({rule: one.id, impact: one.impact,
    at: one.nodes.slice(0, 3).map((node) => `${node.target.join(" ")}: ${node.failureSummary.split("\\n")[1]}`)}))));
"""
LEVELS = "return [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((one) => Number(one.tagName[1]))"


LOOKS = ("plain", "sun", "dark")
COLORED = {"type": "rule", "values": ["color-contrast", "link-in-text-block", "target-size"]}
"""The rules of axe-core that a look has a say in: what it colors, and how large it makes it."""
Found = dict[str, list[dict[str, Any]]]


def in_every_look(window: Window) -> Found:
    """What axe-core finds on the page as it stands, by the look that is chosen or that the system asks for."""
    found = {}
    for look in LOOKS:
        scheme = "dark" if look == "dark" else "light"
        emulate(window, prefers_color_scheme=scheme, prefers_reduced_motion="reduce")  # colors change at once
        chosen = "sun" if look == "sun" else "plain"
        window.script("dispatchEvent(new StorageEvent('storage', {key: 'crew-look', newValue: arguments[0]}))", chosen)
        assert window.script("return document.documentElement.dataset.look") == chosen
        found[look] = violations(window, RULES if look == "plain" else COLORED)
    emulate(window, prefers_color_scheme="", prefers_reduced_motion="")
    return found


CLEAN: Found = {look: [] for look in LOOKS}
"""Nothing found."""


def screens_of_the_walk(page: OnSite) -> Iterator[str]:
    """From screen to screen: the first, a step, a danger, a form, and a hold point before and after a try to go on."""
    walk = Walk(page.window)
    yield "start"
    for kind, step in (("step", MEASURED), ("danger", "open-box"), ("step", "choose-ring"), ("hold", HELD)):
        walk.go_to(kind, step)
        if step == "choose-ring":
            LiveForm(page.window, "#choose-ring")
        yield f"{kind} {step}"
    walk.window.find(".walk-bar .go").click()
    assert walk.window.find(".walk-bar .told").text
    yield "stopped"


def panels(page: OnSite) -> Iterator[str]:
    """With each panel open under the box above the steps."""
    for words, inside in (("Job, space, who", ".place-in"), ("The record", ".record-by")):
        page.press(words)
        page.window.until(partial(page.window.find_all, inside), inside)
        yield words


def entries(page: OnSite) -> Iterator[str]:
    """A reading that passes, one outside, one that is no figure, a note, and a hold point that somebody looked at.

    Before that the page asks whose look it takes.
    """
    page.look(HELD, "Wren Okafor")
    assert page.window.find(f"#{HELD} .looks .anyway").is_displayed()
    yield "asked"
    for number, text in enumerate(["12", "3", "a foot or so"]):
        page.read(MEASURED, text, number)
    page.tick(MEASURED)
    page.press("Note")
    page.window.find(f"#note-{MEASURED}").send_keys("Told the lead.")
    page.press("Record it anyway")
    page.window.until(lambda: page.window.find(f"#{HELD} .looked").is_displayed(), "the look")
    yield "put in"


def past_hold(page: OnSite) -> Iterator[str]:
    """A tick past an open hold point, where the name of who looked is none."""
    page.look(HELD, "x")
    page.tick("set-bolts")
    assert page.window.find("#set-bolts .past-hold button").is_displayed()
    yield "past hold"


@cache
def axe() -> str:
    """The script of axe-core."""
    return (TOOLS / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")


def violations(window: Window, rules: object = RULES) -> list[dict[str, Any]]:
    """What axe-core finds on the page from its top, where nothing is scrolled half under the header."""
    window.script("scrollTo(0, 0)")
    if not window.script("return Boolean(window.axe)"):
        window.script(axe())
    found: list[dict[str, Any]] = window.driver.execute_async_script(RUN, rules)
    return found


@pytest.mark.parametrize("url", KINDS)
def test_axe_finds_nothing(url: str, window: Window) -> None:
    """On a phone and a laptop. There is one heading of the first level, and no level is left out on the way down."""
    found = {}
    window.width(PHONE)
    window.open(url)
    for width in (PHONE, LAPTOP):
        window.width(width)
        found[width] = violations(window)
    assert found == {PHONE: [], LAPTOP: []}
    levels: list[int] = window.script(LEVELS)
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


@pytest.mark.parametrize("typed", ["toilet", "toilit"])
def test_axe_finds_nothing_in_the_search(typed: str, window: Window) -> None:
    """With answers, and with what is said of a slip."""
    window.open("index.html")
    window.find(".crew .find").click()
    window.until(lambda: window.find_all(".crew-search input"), "the search")
    window.find(".crew-search input").send_keys(typed)
    window.until(lambda: window.find_all(".crew-search li"), "results")
    assert in_every_look(window) == CLEAN


def test_axe_finds_nothing_in_the_menu(window: Window) -> None:
    """On a phone, where it slides in over the page."""
    window.width(PHONE)
    window.open("index.html")
    window.find(".md-header [for=__drawer]").click()
    window.until(lambda: window.find("label[for=__nav_8]").is_displayed(), "the menu")
    assert in_every_look(window) == CLEAN


@pytest.mark.parametrize("visit", [screens_of_the_walk, panels, entries, past_hold])
def test_axe_finds_nothing_while_work_goes_on(visit: Callable[[OnSite], Iterator[str]], empty: Window) -> None:
    """On the page of a procedure: in the walk, with a panel open, with what somebody put in; each on a laptop too."""
    found = {}
    empty.width(PHONE)
    for state in visit(OnSite(empty)):
        found[state] = in_every_look(empty)
        empty.width(LAPTOP)
        found[state]["wide"] = violations(empty)
        empty.width(PHONE)
    empty.open("index.html")
    empty.script("sessionStorage.clear()")
    assert found
    assert {state: one for state, one in found.items() if any(one.values())} == {}
