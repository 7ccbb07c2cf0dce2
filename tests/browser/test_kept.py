"""What is ticked and read stays: over reloads, closed browsers, other tabs, and a revised procedure; or it is said."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from selenium.webdriver import Chrome

from tests.browser.on_site import HELD, MEASURED, PAGE, OnSite
from tests.browser.published import Published
from tests.browser.window import Window

JOB = "?job=garden-studio&space=bath"
STEP = re.compile(r'<li class="step" id="([a-z-]+)" data-print="(\w+)">')
NO_DATABASE = "Object.defineProperty(window, 'indexedDB', {value: undefined})"
REFUSES = "IDBFactory.prototype.open = () => { throw new DOMException('not here', 'SecurityError') }"


def test_a_closed_browser_forgets_nothing(browsers: Callable[[], Chrome], address: str) -> None:
    """Ticks, readings, holds and notes are there again, for their job and space alone."""
    page = OnSite(Window(browsers(), address), JOB)
    page.tick("open-box")
    page.read(MEASURED, "12 1/8")
    page.look(HELD, "Tobin Reyes")
    page.show(page.window.find("#open-box .note-by"))
    page.window.find("#open-box .note-by").click()
    page.window.find("#note-open-box").send_keys("chip under the rim")
    page.wait_kept(4)
    page = OnSite(Window(browsers(), address), JOB)
    page.window.until(lambda: page.ticked() == ["open-box"], "the tick")
    assert page.window.find(f"#{MEASURED} .reading input").get_attribute("value") == "12 1/8"
    assert "Tobin Reyes looked" in page.window.find(f"#{HELD} .looked").text
    assert page.window.find("#note-open-box").get_attribute("value") == "chip under the rim"
    elsewhere = OnSite(page.window, "?job=garden-studio&space=kitchen")
    assert elsewhere.ticked() == []
    back = OnSite(page.window, JOB)
    back.window.until(lambda: back.ticked() == ["open-box"], "the tick of the first space")


def test_a_tick_taken_back_stays_so(empty: Window) -> None:
    """What was taken back does not come again."""
    page = OnSite(empty)
    page.tick("open-box")
    page.wait_kept(1)
    page.tick("open-box")
    page.wait_written()
    page.reload()
    empty.until(lambda: page.ticked() == [], "no tick")
    page.reload()
    assert page.ticked() == []


def test_two_tabs_show_and_keep_both(empty: Window) -> None:
    """What one tab enters the other shows at once; neither writes over the other."""
    first = OnSite(empty, JOB)
    driver, one = empty.driver, empty.driver.current_window_handle
    driver.switch_to.new_window("tab")
    two = driver.current_window_handle
    second = OnSite(empty, JOB)
    second.tick("open-box")
    second.wait_kept(1)
    driver.switch_to.window(one)
    empty.until(lambda: first.ticked() == ["open-box"], "the other tab's tick")
    first.tick("check-supply")
    first.wait_kept(2)
    first.tick("open-box")
    driver.switch_to.window(two)
    empty.until(lambda: second.ticked() == ["check-supply"], "what the first tab did")
    driver.close()
    driver.switch_to.window(one)
    first.reload()
    empty.until(lambda: first.ticked() == ["check-supply"], "what both did")


STUDIO, COTTAGE = ("garden-studio", "bath"), ("three-cottages", "north-bath")


def told(window: Window) -> str:
    """What is said of entries that were made before the place was chosen."""
    return window.find(".before-place").text


def test_what_was_entered_before_a_job_was_chosen_moves_to_it(empty: Window) -> None:
    """Chosen late, the job has the ticks and readings that were made before, and they stand nowhere twice."""
    page = OnSite(empty)
    page.tick("open-box")
    page.read(MEASURED, "12 1/8")
    page.wait_kept(2)
    page.reload()
    assert told(empty) == ""
    OnSite(empty, JOB)
    said = "2 entries that were made before a job was chosen now stand in Garden studio · Bath."
    empty.until(lambda: said in told(empty), "what was moved")
    assert page.ticked() == ["open-box"]
    assert empty.find(f"#{MEASURED} .reading input").get_attribute("value") == "12 1/8"
    page.wait_written()
    page.reload()
    empty.until(lambda: page.ticked() == ["open-box"], "the tick of the job")
    assert told(empty) == ""
    empty.open("records.html")
    here = empty.until(lambda: empty.find_all("[data-device] h3"), "what lies here")
    assert [head.text for head in here] == ["Garden studio"]
    assert OnSite(empty, "?job=").ticked() == []


def test_entries_go_to_the_job_that_was_meant(empty: Window) -> None:
    """Moved back from a job that was chosen by mistake, they are asked about at the next; what came since stays."""
    page = OnSite(empty)
    page.tick("open-box")
    page.tick("check-supply")
    page.wait_kept(2)
    page.choose_elsewhere(*COTTAGE)
    empty.until(lambda: "2 entries that were made before" in told(empty), "what was moved")
    page.tick("check-supply")
    page.tick("check-supply")
    page.press("Not of this job: move back")
    empty.until(lambda: page.ticked() == ["check-supply"], "what came since")
    assert told(empty) == ""
    page.choose_elsewhere(*STUDIO)
    empty.until(lambda: "1 entry was made here before Garden studio · Bath was chosen" in told(empty), "the question")
    assert page.ticked() == []
    page.press("Move")
    empty.until(lambda: page.ticked() == ["open-box"] and not told(empty), "the tick")
    page.choose_elsewhere(*COTTAGE)
    empty.until(lambda: page.ticked() == ["check-supply"] and not told(empty), "the ticks of the first")


def test_a_job_with_entries_of_its_own_is_asked_about(empty: Window) -> None:
    """Nothing is mixed in without a word, and what was left is not asked about again until something is new."""
    page = OnSite(empty, JOB)
    page.tick("check-supply")
    page.wait_kept(1)
    OnSite(empty, "?job=").tick("open-box")
    page.wait_kept(2)
    OnSite(empty, JOB)
    empty.until(lambda: "1 entry was made here before Garden studio · Bath was chosen" in told(empty), "the question")
    assert page.ticked() == ["check-supply"]
    page.press("Leave")
    page.reload()
    empty.until(lambda: page.ticked() == ["check-supply"], "its own tick")
    assert told(empty) == ""
    OnSite(empty, "?job=garden-studio").tick("check-flange")
    page.wait_kept(3)
    OnSite(empty, JOB)
    empty.until(lambda: told(empty).startswith("1 entry was made here"), "the question about the job's own")
    page.press("Move")
    empty.until(lambda: page.ticked() == ["check-supply", "check-flange"], "both")


def test_an_open_tab_goes_along_to_another_place(empty: Window) -> None:
    """A job that is chosen in one tab is that of the other: its ticks go there, and a reload stays there."""
    first = OnSite(empty, JOB)
    first.tick("open-box")
    first.wait_kept(1)
    driver, one = empty.driver, empty.driver.current_window_handle
    driver.switch_to.new_window("tab")
    two = driver.current_window_handle
    second = OnSite(empty, "?job=three-cottages&space=north-bath")
    empty.until(lambda: second.ticked() == [], "another place")
    driver.switch_to.window(one)
    empty.until(lambda: "job=three-cottages&space=north-bath" in driver.current_url, "the same place")
    empty.until(lambda: first.ticked() == [] and "Three cottages" in empty.find(".where").text, "its title and ticks")
    first.tick("check-supply")
    first.wait_kept(2)
    first.reload()
    empty.until(lambda: first.ticked() == ["check-supply"], "the tick of that place")
    driver.switch_to.window(two)
    empty.until(lambda: second.ticked() == ["check-supply"], "the same in the other tab")
    driver.close()
    driver.switch_to.window(one)


def test_what_is_being_typed_stays_with_its_job(empty: Window) -> None:
    """A reading, a note or a look that is half put in is not carried into the job that is chosen meanwhile."""
    page = OnSite(empty, JOB)
    page.press("The record")
    empty.until(lambda: empty.find_all(".record-by"), "the panel")
    typing = empty.find(f"#{MEASURED} .reading input")
    page.show(typing)
    typing.send_keys("12")
    page.wait_kept(1)
    page.look(HELD, "x")
    page.show(typing)
    typing.click()
    page.choose_elsewhere(*COTTAGE)
    empty.until(lambda: typing.get_attribute("value") == "", "an empty box")
    assert empty.driver.switch_to.active_element != typing
    assert not empty.find_all(".record-by")
    assert empty.find(f"#hold-{HELD}").get_attribute("value") == ""
    assert empty.find(f"#{HELD} .looks .wrong").text == ""
    typing.click()
    page.tick("open-box")
    page.wait_kept(2)
    page.choose_elsewhere(*STUDIO)
    empty.until(lambda: typing.get_attribute("value") == "12", "the reading of the first job")


def test_a_page_that_is_loaded_again_stays_with_what_was_chosen(empty: Window) -> None:
    """A phone drops a page that lies open and loads it again later, with the address of then."""
    page = OnSite(empty, JOB)
    held = json.dumps({"job": "three-cottages", "space": "north-bath"})
    empty.script("localStorage.setItem('crew-place', arguments[0])", held)
    page.reload()
    empty.until(lambda: "Three cottages" in empty.find(".where").text, "what was chosen since")
    assert "job=three-cottages&space=north-bath" in empty.driver.current_url


NO_ROOM = "Storage.prototype.setItem = () => { throw new DOMException('', 'QuotaExceededError') }"


def test_a_choice_that_cannot_be_remembered_holds_on_the_page(spoiled: Callable[[str], Window]) -> None:
    """Without room or a database the page stays with the job that was chosen on it, and shows its ticks again."""
    page = OnSite(spoiled(f"{NO_ROOM}; {NO_DATABASE}"), JOB)
    window = page.window
    page.tick("open-box")
    choose(page, "No job chosen")
    window.script("document.dispatchEvent(new Event('visibilitychange'))")
    window.until(lambda: "No job chosen" in window.find(".where").text and page.ticked() == [], "no job")
    choose(page, "Garden studio", "Bath")
    window.until(lambda: page.ticked() == ["open-box"], "what the browser refused to keep")


def choose(page: OnSite, job: str, space: str = "") -> None:
    """Choose a job and space in the panel of the page."""
    window = page.window
    page.press("Job, space, who")
    window.until(lambda: window.find_all("#place-job"), "the panel")[0].send_keys(job)
    if space:
        window.until(lambda: window.find_all("select#place-space"), "the spaces")[0].send_keys(space)
    page.press("Use these")
    window.until(lambda: not window.find_all("#place-job"), "the panel shut")


def test_steps_that_moved_and_one_that_changed(empty: Window, site: Path, tmp_path: Path) -> None:
    """In a new edition a tick is at its step, wherever that stands now, and a changed step says so."""
    published = Published(site, tmp_path)
    window = Window(empty.driver, published.address)
    page = OnSite(window)
    for step in ("open-box", "check-flange"):
        page.tick(step)
    page.wait_kept(2)
    revise(published.site / PAGE, "open-box", "check-flange")
    page.reload()
    window.until(lambda: set(page.ticked()) == {"open-box", "check-flange"}, "both ticks")
    changed = [one for one in window.find_all(".changed-since") if one.is_displayed()]
    assert [one.find_element("xpath", "ancestor::li").get_attribute("id") for one in changed] == ["check-flange"]
    assert "changed since you ticked it" in changed[0].text
    page.show(changed[0])
    changed[0].find_element("css selector", "button").click()
    window.until(lambda: not changed[0].is_displayed(), "ticked for this revision")
    published.disconnect()


def revise(page: Path, moved: str, changed: str) -> None:
    """Publish the page with one step behind the next one, and another with other words."""
    text = page.read_text(encoding="utf-8")
    starts = {found[1]: found.start() for found in STEP.finditer(text)}
    order = list(starts)
    first, second, third = (starts[order[order.index(moved) + by]] for by in range(3))
    text = text[:first] + text[second:third] + text[first:second] + text[third:]
    old = re.search(rf'id="{changed}" data-print="(\w+)"', text)
    assert old
    page.write_text(text.replace(old[0], f'id="{changed}" data-print="00000000"'), encoding="utf-8")


@pytest.mark.parametrize(("lacks", "says"), [(NO_DATABASE, "no store"), (REFUSES, "refuses to keep")])
def test_a_browser_that_keeps_nothing_says_so(lacks: str, says: str, spoiled: Callable[[str], Window]) -> None:
    """Without the database the page works, says what is at stake, and hands the record out."""
    page = OnSite(spoiled(lacks), JOB)
    page.window.until(lambda: says in page.window.find(".alarm").text, "the warning")
    page.tick("open-box")
    page.read(MEASURED, "12")
    items = page.record()["items"]
    assert [(item["kind"], item["step"]) for item in items] == [("tick", "open-box"), ("reading", MEASURED)]


def test_a_full_disk(empty: Window) -> None:
    """Storage that is full is said plainly; the record can be taken out; with room again all is kept."""
    page = OnSite(empty, JOB)
    quota = {"origin": empty.address.rstrip("/")}
    empty.driver.execute_cdp_cmd("Storage.overrideQuotaForOrigin", {**quota, "quotaSize": 1})
    page.tick("open-box")
    empty.until(lambda: "no room left" in empty.find(".alarm").text, "the warning")
    assert page.is_ticked("open-box")
    assert [item["step"] for item in page.record()["items"]] == ["open-box"]
    empty.driver.execute_cdp_cmd("Storage.overrideQuotaForOrigin", quota)
    page.tick("check-supply")
    page.wait_kept(2)
    empty.until(lambda: not empty.find(".alarm").text, "no warning")


def test_without_a_channel_a_tab_looks_again(spoiled: Callable[[str], Window]) -> None:
    """A browser without messages between tabs reads anew when the tab is seen again."""
    window = spoiled("delete window.BroadcastChannel")
    page = OnSite(window)
    one = window.driver.current_window_handle
    window.driver.switch_to.new_window("tab")
    other = OnSite(window)
    other.tick("open-box")
    other.wait_kept(1)
    window.driver.close()
    window.driver.switch_to.window(one)
    window.script("document.dispatchEvent(new Event('visibilitychange'))")
    window.until(lambda: page.ticked() == ["open-box"], "the other tab's tick")
