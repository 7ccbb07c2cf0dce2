"""Readings and hold points on a procedure page: at once pass or outside and what to do; who looked and when."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.browser.on_site import HELD, MEASURED, OnSite, forget_all
from tests.browser.window import Window


@pytest.fixture
def page(window: Window) -> Iterator[OnSite]:
    """The toilet page in a browser that has kept nothing."""
    forget_all(window.driver, window.address)
    yield OnSite(window)
    forget_all(window.driver, window.address)


@pytest.mark.parametrize(
    ("text", "verdict", "says"),
    [
        ("12", "pass", "Pass"),
        ("12 15/16", "pass", "Pass"),
        ("13-1/8", "outside", "Outside by 1/8 in, too much."),
        ("11.5", "outside", "Outside by 1/4 in, too little."),
        ("305 mm", "pass", "Pass"),
        ("1' 2\"", "outside", "too much"),
        ("twelve", "unread", "write"),
    ],
)
def test_a_reading_is_judged_at_once(text: str, verdict: str, says: str, page: OnSite) -> None:
    """12 in, an inch more or a quarter less: fractions, decimals, metric."""
    box = page.read(MEASURED, text)
    assert box.get_attribute("data-verdict") == verdict
    said = box.find_element("css selector", ".verdict").text
    assert says in said
    assert ("Take the bowl that the form names" in said) == (verdict == "outside")


def test_a_reading_in_millimetres(page: OnSite) -> None:
    """Who works in metric types bare millimetres; what was kept keeps its unit."""
    page.press("m, mm")
    page.read(MEASURED, "330")
    page.wait_kept(1)
    page.press("ft, in")
    page.reload()
    box = page.window.find(f"#{MEASURED} .measure")
    page.window.until(lambda: box.get_attribute("data-verdict") == "pass", "the same reading")
    assert box.find_element("css selector", ".reading input").get_attribute("value") == "330 mm"


def test_a_reading_is_counted_and_struck_out(page: OnSite) -> None:
    """The box above the steps counts what is outside; an emptied box is no reading."""
    page.read(MEASURED, "14")
    page.wait_kept(1)
    assert "1 reading outside" in page.window.find(".far").text
    typing = page.window.find(f"#{MEASURED} .reading input")
    typing.clear()
    page.window.find("#tick-open-box").send_keys("")
    page.window.until(lambda: "outside" not in page.window.find(".far").text, "no reading outside")


def test_a_hold_point_asks_who_and_when(page: OnSite) -> None:
    """Without a name it stays open; with one it has passed; and it can be taken back."""
    submit = page.window.find(f"#{HELD} .looks [type=submit]")
    page.show(submit)
    submit.click()
    assert page.window.find(f"#{HELD} .looks .wrong").text == "Say who looked."
    page.look(HELD, "Tobin Reyes")
    passed = page.window.until(lambda: page.window.find(f"#{HELD} .looked p"), "passed")
    assert "Tobin Reyes looked" in passed.text
    assert "hold point" not in page.window.find(".far").text
    page.press("Take it back")
    page.window.until(lambda: "1 hold point open" in page.window.find(".far").text, "open again")


def test_a_time_to_come_is_refused(page: OnSite) -> None:
    """Nobody has looked tomorrow."""
    page.window.script("document.querySelector(arguments[0]).value = '2199-01-01T08:00'", f"#hold-{HELD}-when")
    page.look(HELD, "Tobin Reyes")
    assert page.window.find(f"#{HELD} .looks .wrong").text == "That time is still to come."


def test_targets_are_big(page: OnSite) -> None:
    """Everything to be touched is 48 px or more each way."""
    page.window.width(360)
    small = page.window.script(
        "return [...document.querySelectorAll('.on-site button, .on-site a, .tick, .done-line button, .looks button,"
        " .looks input, .reading .puts-in')].filter(one => one.offsetParent).map(one => [one.textContent,"
        " one.offsetWidth, one.offsetHeight]).filter(([, wide, high]) => wide < 48 || high < 48)"
    )
    assert small == []
    assert page.window.sideways() <= 0
