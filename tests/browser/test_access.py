"""Accessibility: axe-core's rules on each kind of page and in each look, and headings in order."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from itertools import pairwise
from typing import Any

import pytest

from build_tools.commands.test import TOOLS
from tests.browser.live_form import LiveForm
from tests.browser.on_site import HELD, MEASURED, OnSite, forget_all
from tests.browser.test_every_kind_of_page import KINDS
from tests.browser.test_sun import emulate
from tests.browser.test_walk import Walk
from tests.browser.window import LAPTOP, PHONE, Window

RUN = """
const done = arguments[arguments.length - 1];
axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}).then(
  (found) => done(found.violations.map((one) => ({rule: one.id, impact: one.impact,
    at: one.nodes.slice(0, 3).map((node) => `${node.target.join(" ")}: ${node.failureSummary.split("\\n")[1]}`)}))));
"""
LEVELS = "return [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((one) => Number(one.tagName[1]))"


LOOKS = ("plain", "sun", "dark")


def in_every_look(window: Window) -> dict[str, list[dict[str, Any]]]:
    """What axe-core finds on the page as it stands, by the look that is chosen or that the system asks for."""
    found = {}
    for look in LOOKS:
        scheme = "dark" if look == "dark" else "light"
        emulate(window, prefers_color_scheme=scheme, prefers_reduced_motion="reduce")  # colors change at once
        chosen = "sun" if look == "sun" else "plain"
        window.script("dispatchEvent(new StorageEvent('storage', {key: 'crew-look', newValue: arguments[0]}))", chosen)
        assert window.script("return document.documentElement.dataset.look") == chosen
        found[look] = violations(window)
    emulate(window, prefers_color_scheme="", prefers_reduced_motion="")
    return found


CLEAN: dict[str, list[dict[str, Any]]] = {look: [] for look in LOOKS}
"""Nothing found."""


def start(page: OnSite) -> None:
    """On the first screen of the walk."""
    Walk(page.window)


def walk_to(kind: str, step: str) -> Callable[[OnSite], None]:
    """Into the walk, to a screen of a step."""
    return lambda page: Walk(page.window).go_to(kind, step)


def stopped(page: OnSite) -> None:
    """In the walk at an open hold point, after a try to go on."""
    walk = Walk(page.window)
    walk.go_to("hold", HELD)
    walk.window.find(".walk-bar .go").click()
    assert walk.window.find(".walk-bar .told").text


def with_form(page: OnSite) -> None:
    """In the walk at a step whose calculator is there."""
    Walk(page.window).go_to("step", "choose-ring")
    LiveForm(page.window, "#choose-ring")


def panel(words: str, inside: str) -> Callable[[OnSite], None]:
    """With a panel open under the box above the steps."""

    def opened(page: OnSite) -> None:
        page.press(words)
        page.window.until(lambda: page.window.find_all(inside), inside)

    return opened


def put_in(page: OnSite) -> None:
    """A reading that passes, one outside, one that is no figure, a note, and a hold point that somebody looked at."""
    for number, text in enumerate(["12", "3", "a foot or so"]):
        page.read(MEASURED, text, number)
    page.tick(MEASURED)
    page.press("Note")
    page.window.find(f"#note-{MEASURED}").send_keys("Told the lead.")
    page.look(HELD, "Wren Okafor")
    page.press("Record it anyway")
    page.window.until(lambda: page.window.find(f"#{HELD} .looked").is_displayed(), "the look")


def asked(page: OnSite) -> None:
    """Whose look a hold point takes is said to somebody else."""
    page.look(HELD, "Wren Okafor")
    assert page.window.find(f"#{HELD} .looks .anyway").is_displayed()


def past_hold(page: OnSite) -> None:
    """A tick past an open hold point, where the name of who looked is none."""
    page.look(HELD, "x")
    page.tick("set-bolts")
    assert page.window.find("#set-bolts .past-hold button").is_displayed()


STATES: dict[str, Callable[[OnSite], None]] = {
    "start": start,
    "step": walk_to("step", MEASURED),
    "danger": walk_to("danger", "open-box"),
    "hold": walk_to("hold", HELD),
    "stopped": stopped,
    "asked": asked,
    "form": with_form,
    "place": panel("Job, space, who", ".place-in"),
    "record": panel("The record", ".record-by"),
    "readings": put_in,
    "past hold": past_hold,
}
"""What is done on the page before it is looked at."""


@cache
def axe() -> str:
    """The script of axe-core."""
    return (TOOLS / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")


def violations(window: Window) -> list[dict[str, Any]]:
    """What axe-core finds on the page from its top, where nothing is scrolled half under the header."""
    window.script("scrollTo(0, 0)")
    window.script(axe())
    found: list[dict[str, Any]] = window.driver.execute_async_script(RUN)
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


@pytest.mark.parametrize("state", STATES)
def test_axe_finds_nothing_while_work_goes_on(state: str, window: Window) -> None:
    """On the page of a procedure: in the walk, with a panel open, with what somebody put in; and that on a laptop."""
    forget_all(window.driver, window.address)
    window.width(PHONE)
    STATES[state](OnSite(window))
    found = in_every_look(window)
    window.width(LAPTOP)
    found["wide"] = violations(window)
    window.open("index.html")
    window.script("sessionStorage.clear()")
    forget_all(window.driver, window.address)
    assert found == {**CLEAN, "wide": []}
