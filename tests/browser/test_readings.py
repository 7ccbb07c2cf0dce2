"""Readings and hold points on a procedure page: at once pass or outside and what to do; who looked and when."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.select import Select

from build_tools.records.lines import lines_of
from build_tools.records.model import Record
from tests.browser.live_form import RING, LiveForm
from tests.browser.on_site import HELD, MEASURED, PAGE, OnSite, forget_all
from tests.browser.window import Window


@pytest.fixture
def page(window: Window) -> Iterator[OnSite]:
    """The toilet page in a browser that has kept nothing."""
    forget_all(window.driver, window.address)
    yield OnSite(window)
    forget_all(window.driver, window.address)


def judged(window: Window, box: WebElement, verdict: str) -> None:
    """Wait until a reading has that verdict."""
    window.until(lambda: box.get_attribute("data-verdict") == verdict, verdict)


def test_a_reading_is_judged_at_once(page: OnSite) -> None:
    """12 in, an inch more or a quarter less: fractions, decimals, metric."""
    for text, verdict, says in (
        ("12", "pass", "Pass"),
        ("12 15/16", "pass", "Pass"),
        ("13-1/8", "outside", "Outside by 1/8 in, too much."),
        ("11.5", "outside", "Outside by 1/4 in, too little."),
        ("305 mm", "pass", "Pass"),
        ("1' 2\"", "outside", "too much"),
        ("twelve", "unread", "write"),
    ):
        box = page.read(MEASURED, text)
        judged(page.window, box, verdict)
        said = box.find_element("css selector", ".verdict").text
        assert says in said, text
        assert ("Take the bowl that the form names" in said) == (verdict == "outside"), text


def test_a_reading_that_goes_two_ways_is_judged_by_its_way(window: Window) -> None:
    """The way is picked in words, and nobody has to know which one is minus."""
    for text, verdict, says in (
        ("5/8 floor above flange", "pass", "Pass"),
        ("1/2 floor above flange", "pass", "Pass"),
        ("1/2 flange above floor", "pass", "Pass"),
        ("3/4 flange above floor", "outside", "Outside by 1/4 in, too much."),
        ("11/16 floor above flange", "outside", "Outside by 1/16 in, too much."),
        ("5/8", "unread", "Say which way: floor above flange / flange above floor."),
        ("-5/8", "unread", "Say which way: floor above flange / flange above floor."),
        ("0", "pass", "Pass"),
    ):
        forget_all(window.driver, window.address)  # no way is picked yet
        box = OnSite(window).read("measure-rise", text)
        judged(window, box, verdict)
        assert says in box.find_element("css selector", ".verdict").text, text
    forget_all(window.driver, window.address)


def test_a_way_that_never_passes(page: OnSite) -> None:
    """A stop as far to the right as it belongs to the left is not where it belongs."""
    box = page.read("check-supply", "6 right of the centre line", 1)
    page.window.until(lambda: box.get_attribute("data-verdict") == "outside", "outside")
    assert "Outside: never right of the centre line." in box.find_element("css selector", ".verdict").text
    box = page.read("check-supply", "6 left of the centre line", 1)
    page.window.until(lambda: box.get_attribute("data-verdict") == "pass", "a pass")


def test_a_way_is_kept_with_its_reading(page: OnSite) -> None:
    """After a reload figure and way stand there, and the record says both."""
    page.read("measure-rise", "1/2 floor above flange")
    page.wait_written()
    page.reload()
    box = page.window.find("#measure-rise .measure")
    page.window.until(lambda: box.get_attribute("data-verdict") == "pass", "the reading")
    assert box.find_element("css selector", ".puts-in input").get_attribute("value") == "1/2"
    assert box.find_element("css selector", ".choose input:checked").get_attribute("value") == "floor above flange"
    reading = next(one for one in page.record()["items"] if one["kind"] == "reading")
    assert (reading["text"], reading["limits"]) == (
        "1/2 in floor above flange",
        "at most 5/8 in floor above flange or at most 1/2 in flange above floor",
    )


def test_a_form_starts_from_the_readings_before_it(page: OnSite) -> None:
    """The form of the ring takes what was read at the bowl and at the flange, says so, and follows; a link takes it."""
    page.read("open-box", "3/4")
    page.read("measure-rise", "1/2 floor above flange")
    ring = LiveForm(page.window, RING)
    page.window.until(lambda: ring.says("gap") == "1-1/4 in", "the gap of the readings")
    said = ring.field("rise").find_element("css selector", ".read-at")
    assert said.text.split("\n") == ["Your reading, step 6", "1/2 in floor above flange"]
    assert "rise" not in page.window.driver.current_url
    ring.type("rise", "1/4 flange above floor")
    page.window.until(lambda: ring.says("gap") == "1/2 in", "another figure")
    ring.press("Back to your reading", ring.field("rise"))
    page.window.until(lambda: ring.says("gap") == "1-1/4 in", "the reading again")
    page.wait_written()
    page.reload()
    ring = LiveForm(page.window, RING)
    page.window.until(lambda: ring.says("gap") == "1-1/4 in", "the readings after a reload")
    page.read("measure-rise", "0")
    page.window.until(lambda: ring.says("gap") == "3/4 in", "the form follows")


def test_a_form_of_another_place_has_not_its_readings(page: OnSite) -> None:
    """In another space the form starts again from the page's own figures."""
    page = OnSite(page.window, "?job=garden-studio&space=bath")
    page.read("measure-rise", "1/2 floor above flange")
    ring = LiveForm(page.window, RING)
    page.window.until(lambda: ring.says("gap") == "1-1/8 in", "the gap of the reading")
    page.wait_kept(1)
    page.window.open("index.html")
    page.window.open(f"{PAGE}?job=three-cottages&space=north-bath")
    ring = LiveForm(page.window, RING)
    assert ring.says("gap") == "3/8 in"


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


def test_who_looked_is_named_in_full(page: OnSite) -> None:
    """A letter, a sign or one word is nobody: the point stays open."""
    for who in ("x", "me", "Tobin", "T T", "x 1", "?? ??"):
        page.look(HELD, who)
        said = page.window.find(f"#{HELD} .looks .wrong").text
        assert (who, said) == (who, "Write the first and the last name of who looked.")
        assert not page.window.find(f"#{HELD} .looked").is_displayed()
        assert "1 hold point open" in page.window.find(".far").text


@pytest.mark.parametrize(
    ("who", "role", "recorded"),
    [
        ("Wren Okafor", "a helper", "Wren Okafor, not the crew lead"),
        ("Dana Q. Ortiz-Vale", "not on the list of the crew", "Dana Q. Ortiz-Vale, not known as the crew lead"),
    ],
)
def test_a_look_of_somebody_else_is_asked_about_and_recorded_as_such(
    who: str, role: str, recorded: str, page: OnSite
) -> None:
    """It is said whose look it is. Recorded anyway, page, file, table and owner's page say that it was not his."""
    known = [option.text for option in Select(page.window.find(f"#hold-{HELD}")).options]
    assert (who in known) == (who == "Wren Okafor")
    asked = f"Who looks at this point: Crew lead. {who} is {role}. Record it anyway?"
    for _ in range(2):
        page.look(HELD, who)
        assert page.window.find(f"#{HELD} .looks .wrong span").text == asked
        assert "1 hold point open" in page.window.find(".far").text
    page.press("Record it anyway")
    page.window.until(lambda: f"{recorded}, looked" in page.window.find(f"#{HELD} .looked").text, "passed")
    page.wait_written()
    [line] = [one for one in lines_of(Record.model_validate(page.record())) if one.kind == "hold"]
    assert line.state == "passed by another" and line.entry.startswith(f"{recorded}, ")
    page.window.open("records.html")
    page.window.until(lambda: f"Looked: {recorded}, " in page.window.find("[data-device]").text, "whose look it was")


def test_a_typed_name_of_who_looks_there_is_his(page: OnSite) -> None:
    """The lead named by hand is the lead, in whatever letters; another choice takes the question away."""
    page.look(HELD, "Wren Okafor")
    page.look(HELD, "tobin reyes")
    page.window.until(lambda: "✓ tobin reyes looked" in page.window.find(f"#{HELD} .looked").text, "passed")


def test_a_tick_past_an_open_hold_point_asks_first(page: OnSite) -> None:
    """On the full page as in the walk work stops there: it is said which point is open and who has to look."""
    page.tick("check-flange")
    page.tick("set-bolts")
    asks = page.window.find("#set-bolts .past-hold")
    said = "Work stops before this step: 'Flange and place of the toilet' is open. Who has to look: Crew lead."
    assert asks.find_element("css selector", "p").text == said
    assert page.ticked() == ["check-flange"]
    page.press("Go to the hold point")
    assert page.window.driver.switch_to.active_element == page.window.find(f"#hold-{HELD}")
    page.look(HELD, "Tobin Reyes")
    page.window.until(lambda: asks.text == "", "nothing to ask")
    page.tick("set-bolts")
    page.window.until(lambda: page.ticked() == ["check-flange", "set-bolts"], "both ticks")
    page.tick("set-bolts")
    page.press("Take it back")
    page.tick("acceptance")
    assert page.ticked() == ["check-flange"]
    page.press("Done without the look")
    page.window.until(lambda: page.ticked() == ["check-flange", "acceptance"], "the tick")
    assert "1 hold point open" in page.window.find(".far").text


def test_steps_are_counted_alike_everywhere(page: OnSite) -> None:
    """The box above the steps counts what has a number; the checks at the end are said by themselves."""
    steps = page.steps()
    far = page.window.find(".on-site .far")
    assert f"0 of {len(steps)} steps done" in far.text
    page.look(HELD, "Tobin Reyes")
    for step in steps:
        page.tick(step)
    assert far.text == f"{len(steps)} of {len(steps)} steps done · checks at the end open"
    page.tick("acceptance")
    assert far.text == f"{len(steps)} of {len(steps)} steps done"


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
