"""The walk: one step filling the screen, the danger before it, and no way past an open hold point."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from selenium.webdriver.common.keys import Keys

from tests.browser.live_form import LiveForm
from tests.browser.on_site import HELD, PAGE, OnSite, forget_all
from tests.browser.window import PHONE, Window

LOCKS = """
    window.locks = 0;
    const release = async () => { locks -= 1 };
    const request = async () => { locks += 1; return {release} };
    Object.defineProperty(navigator, 'wakeLock', {value: {request}});
"""
NO_LOCK = "Object.defineProperty(navigator, 'wakeLock', {value: undefined})"
SEEN = """
    const boxes = document.querySelectorAll('.procedure :is(.message, .step h3, .hold, h2)');
    const seen = [...boxes].filter(one => one.offsetParent);
    return seen.map(one => one.className.split(' ')[0] || one.tagName);
"""
"""What can be seen of a procedure."""


class Walk:
    """A walk through the toilet page, by keys and taps."""

    def __init__(self, window: Window) -> None:
        self.window = window
        window.width(PHONE)
        self.page = OnSite(window)
        self.open()

    def open(self) -> None:
        """Step into it from the box above the steps."""
        go = self.window.find(".on-site .go")
        self.page.show(go)
        go.click()
        self.wait()

    def wait(self) -> None:
        """Until the bar at the lower edge is there."""
        self.window.until(lambda: self.window.find_all(".walk-bar"), "the walk")

    @property
    def kind(self) -> str:
        """Which kind of screen is shown."""
        return str(self.window.script("return document.documentElement.dataset.walk ?? ''"))

    @property
    def where(self) -> str:
        """What the bar says."""
        return self.window.find(".walk-bar .far").text

    def key(self, key: str) -> None:
        """Press a key."""
        self.window.driver.switch_to.active_element.send_keys(key)

    def go_to(self, kind: str, step: str) -> None:
        """On by arrow key to that screen of a step."""
        shown = "return document.documentElement.dataset.walk + ' ' + document.querySelector('.step.walk-on')?.id"
        for _ in range(60):
            if self.window.script(shown) == f"{kind} {step}":
                return
            self.key(Keys.ARROW_RIGHT)
        pytest.fail(f"no screen {kind} {step}")


@pytest.fixture
def walk(window: Window) -> Iterator[Walk]:
    """A walk in a browser that has kept nothing."""
    forget_all(window.driver, window.address)
    yield Walk(window)
    window.open("index.html")
    window.script("sessionStorage.clear()")
    forget_all(window.driver, window.address)


def test_one_thing_at_a_time(walk: Walk) -> None:
    """Before, then each danger ahead of its step, by arrow keys and by tap, to and fro; nothing scrolls sideways."""
    assert walk.kind == "before"
    walk.go_to("danger", "open-box")
    assert set(walk.window.script(SEEN)) >= {"message"}
    assert walk.window.find("#open-box .avoid").is_displayed()
    assert not walk.window.find("#open-box .body").is_displayed()
    assert "Before step 3" in walk.where
    walk.window.find(".walk-bar .go").click()
    assert walk.kind == "step"
    assert walk.window.find("#open-box .body").is_displayed()
    assert [one.get_attribute("id") for one in walk.window.find_all(".step") if one.is_displayed()] == ["open-box"]
    walk.key(Keys.ARROW_LEFT)
    assert walk.kind == "danger"
    assert walk.window.sideways() <= 0


def test_a_danger_stands_before_the_step_that_it_guards(walk: Walk) -> None:
    """What is said earlier on the page comes again right before its step."""
    guarded = walk.window.script(
        "return [...document.querySelectorAll('.message:not(.copied) .guards a')].map(one =>"
        " [one.hash.slice(1), one.closest('.message').querySelector('.hazard').textContent])"
    )
    assert guarded
    for step, hazard in guarded:
        texts = [one.get_attribute("textContent") for one in walk.window.find_all(f"#{step} > .message .hazard")]
        assert hazard in texts


def test_nobody_goes_past_an_open_hold_point(walk: Walk) -> None:
    """Next says what is missing; with who and when it goes on, and a reload comes back to the same screen."""
    walk.go_to("hold", HELD)
    walk.key(Keys.ARROW_RIGHT)
    assert walk.kind == "hold"
    assert "Work stops here" in walk.window.find(".walk-bar .told").text
    walk.window.reload()
    walk.wait()
    assert walk.kind == "hold"
    walk.page.look(HELD, "Tobin Reyes")
    walk.window.until(lambda: walk.window.find(".walk-bar .go").get_attribute("aria-disabled") == "false", "free")
    walk.window.find(".walk-bar .go").click()
    assert walk.kind in ("danger", "step")


def test_the_form_works_in_it(walk: Walk) -> None:
    """The calculator answers at the step that needs it, and arrow keys in a box stay in the box."""
    walk.go_to("step", "choose-ring")
    form = LiveForm(walk.window, "#choose-ring")
    before = form.read()["answer"]
    form.type("rise", "1 floor above flange")
    walk.window.until(lambda: form.read()["answer"] != before, "another answer")
    form.box("rise").send_keys(Keys.ARROW_LEFT)
    assert walk.kind == "step"
    assert walk.window.find("#choose-ring").is_displayed()


def test_it_leaves_at_the_same_step(walk: Walk) -> None:
    """Back on the full page the step stands at the top, and a tick set in the walk is there."""
    walk.go_to("step", "check-flange")
    walk.page.tick("check-flange")
    walk.window.find(".walk-bar .leave").click()
    walk.window.until(lambda: walk.kind == "", "the full page")
    assert walk.window.driver.current_url.endswith("#check-flange")
    top = "return document.querySelector('#check-flange').getBoundingClientRect().top"
    walk.window.until(lambda: 0 <= walk.window.script(top) < 200, "the step at the top")
    assert walk.page.ticked() == ["check-flange"]


def test_every_way_out_leads_to_a_place_on_the_page(walk: Walk) -> None:
    """A link to a step, to its form, by script or to where the address is already: the place stands at the top."""

    def leads(place: str) -> None:
        """Out of the walk, to that place, which the heading of it tells by taking the focus."""
        walk.window.until(lambda: walk.kind == "", "the full page")
        top = f"return document.getElementById('{place}').getBoundingClientRect().top"
        walk.window.until(lambda: 0 <= walk.window.script(top) < 200, f"{place} at the top")
        assert walk.window.script(f"return document.getElementById('{place}').contains(document.activeElement)")
        assert walk.window.script("return location.hash.split('?')[0]") == f"#{place}"

    walk.go_to("step", "open-box")
    link = walk.window.find("#open-box a[href*='#choose-ring']")
    walk.page.show(link)
    link.click()
    leads("choose-ring")
    for place in ("seal-floor", "choose-ring?rise=1/2+in", "tools", "acceptance"):
        walk.open()
        walk.window.script("location.hash = arguments[0]", place)
        leads(place.partition("?")[0])
    walk.open()
    walk.window.script("history.replaceState(null, '', '#choose-ring')")
    walk.window.script("document.querySelector('#open-box a[href*=choose-ring]').click()")
    leads("choose-ring")


def test_the_way_back_leads_to_the_step_on_the_screen(walk: Walk) -> None:
    """The browser's back button is one more way out of the walk, and forward leads into it again."""
    walk.window.script("location.hash = '_walk'")
    walk.go_to("step", "check-flange")
    walk.window.driver.back()
    walk.window.until(lambda: walk.kind == "", "the full page")
    top = "return document.querySelector('#check-flange').getBoundingClientRect().top"
    walk.window.until(lambda: 0 <= walk.window.script(top) < 200, "the step at the top")
    walk.window.driver.forward()
    walk.wait()
    assert (walk.kind, walk.window.find(".step.walk-on").get_attribute("id")) == ("step", "check-flange")


def test_a_link_to_a_step_leads_past_a_walk_that_was_left_open(walk: Walk) -> None:
    """Who opens a link to a step sees that step, and so does a reload; a walk from there begins with its dangers."""
    walk.go_to("step", "check-supply")
    walk.window.open("about:blank")
    walk.window.open(f"{PAGE}#choose-ring")
    walk.page.ready()
    top = "return document.querySelector('#choose-ring').getBoundingClientRect().top"
    walk.window.until(lambda: 0 <= walk.window.script(top) < 200, "the step at the top")
    assert (walk.kind, walk.window.find_all(".walk-bar")) == ("", [])
    walk.window.reload()
    walk.page.ready()
    assert walk.kind == ""
    walk.window.open("about:blank")
    walk.window.open(f"{PAGE}#open-box")
    walk.page.ready()
    walk.open()
    assert (walk.kind, walk.window.find(".step.walk-on").get_attribute("id")) == ("danger", "open-box")


def test_each_job_has_its_own_place_in_the_walk(walk: Walk) -> None:
    """In a job that is chosen elsewhere nobody stands behind its open hold point; the walk of the first waits."""
    walk.page.choose_elsewhere("garden-studio", "bath")
    walk.go_to("hold", HELD)
    walk.page.look(HELD, "Tobin Reyes")
    walk.key(Keys.ARROW_RIGHT)
    behind = (walk.kind, walk.where)
    walk.page.choose_elsewhere("three-cottages", "north-bath")
    walk.window.until(lambda: walk.kind == "before", "the start")
    walk.page.choose_elsewhere("garden-studio", "bath")
    walk.window.until(lambda: (walk.kind, walk.where) == behind, "where the first was left")


def test_its_controls_are_at_the_lower_edge(walk: Walk) -> None:
    """Back and next lie under a thumb, and the tick above them."""
    walk.go_to("step", "check-supply")
    tops = walk.window.script(
        "return ['.walk-by button', '.walk-by .go', '.step.walk-on .tick'].map(one =>"
        " document.querySelector(one).getBoundingClientRect()).map(one =>"
        " [one.bottom <= innerHeight, one.top > innerHeight / 2, one.height >= 48])"
    )
    assert tops == [[True, True, True]] * 3


@pytest.mark.parametrize("source", [LOCKS, NO_LOCK])
def test_the_screen_stays_on_or_it_is_said(source: str, window: Window) -> None:
    """Where the browser can, the screen is kept on until the walk is left; where not, the bar says so."""
    given = window.driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": source})
    window.open(f"{PAGE}#_walk")
    window.until(lambda: window.find_all(".walk-bar"), "the walk by its address")
    if source == NO_LOCK:
        window.until(lambda: "may go dark" in window.find(".walk-bar .told").text, "the warning")
    else:
        window.until(lambda: window.script("return locks") == 1, "a screen that stays on")
    window.find(".walk-bar .leave").click()
    if source == LOCKS:
        window.until(lambda: window.script("return locks") == 0, "a screen that may sleep")
    window.driver.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", {"identifier": given["identifier"]})
