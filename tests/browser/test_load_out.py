"""The ticks of a load-out: kept by job, day and line, in every tab, begun afresh; or said not to be."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from selenium.webdriver import Chrome
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.remote.webelement import WebElement

from tests.browser.published import Published, published
from tests.browser.test_access import violations
from tests.browser.test_sheets_on_paper import paper
from tests.browser.window import LAPTOP, PHONE, TABLET, Window
from tests.site_pages import SitePage

JOB, OTHER = "garden-studio", "three-cottages"
PAGE = f"jobs/{JOB}/load.html"
LINE = re.compile(r'<li data-line="([^"]+)">.*?</li>', re.DOTALL)
AMOUNT = re.compile(r'(<b class="amount">)([^<]+)(</b>)')
BLOCKED = "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError') }})"
FULL = "Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError') }"
TOO_SMALL = """
    return [...document.querySelectorAll('.truck label, .afresh button, .load .jump a')]
        .filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 48).map(one => one.textContent)
"""


class LoadOut:
    """The page of a job's load-out; days are counted from the first."""

    def __init__(self, window: Window, page: str = PAGE) -> None:
        self.window = window
        window.open(page)

    def day(self, number: int = 0) -> WebElement:
        """One day."""
        return self.window.find_all(".truck")[number]

    def box(self, line: str, day: int = 0) -> WebElement:
        """The box of a line."""
        return self.day(day).find_element("css selector", f'[data-line="{line}"] input')

    def lines(self, day: int = 0) -> list[str]:
        """The names of a day's lines that go on the truck."""
        found = self.day(day).find_elements("css selector", "section:not(.delivered) > ul > [data-line]")
        return [str(one.get_attribute("data-line")) for one in found]

    def tick(self, line: str, day: int = 0) -> None:
        """Tap a line."""
        self.window.script("arguments[0].scrollIntoView({block: 'center'})", self.box(line, day))
        self.box(line, day).find_element("xpath", "ancestor::label").click()

    def ticked(self, day: int = 0) -> set[str]:
        """The lines whose boxes are ticked."""
        return {line for line in self.lines(day) if self.box(line, day).is_selected()}

    def far(self, day: int = 0) -> str:
        """What the day says of how far it is."""
        return self.day(day).find_element("css selector", ".loaded").text

    def press(self, words: str) -> None:
        """Press the button that is shown with those words."""
        button = next(one for one in self.window.find_all(".afresh button") if one.text == words)
        self.window.script("arguments[0].scrollIntoView({block: 'center'})", button)
        button.click()


@pytest.fixture
def book(site: Path, tmp_path: Path) -> Iterator[Published]:
    """The site published, so that a test can publish another edition."""
    with published(site, tmp_path) as one:
        yield one


def test_each_line_has_a_name_of_its_own_in_its_day(pages: dict[str, SitePage]) -> None:
    """A tick hangs on the name of a tool or a material; two lines of one name would be ticked together."""
    for job in (JOB, OTHER):
        page = pages[f"jobs/{job}/load.html"]
        days = re.split(r'<section class="truck"', page.html)[1:]
        assert days
        for day in days:
            lines = LINE.findall(day)
            assert len(lines) == len(set(lines)) == day.count('type="checkbox"')


def test_ticks_outlive_the_browser_under_their_job_and_day(browsers: Callable[[], Chrome], address: str) -> None:
    """Closed and opened anew, the ticks are there: on their day, and not in another job."""
    page = LoadOut(Window(browsers(), address))
    both = [line for line in page.lines(0) if line in page.lines(1)]
    other, of = page.lines(0)[0], len(page.lines(0))
    assert page.far() == f"0 of {of} on the truck"
    page.tick(both[0])
    page.tick(other)
    page.tick(both[1], day=1)
    assert page.far() == f"2 of {of} on the truck"
    page = LoadOut(Window(browsers(), address))
    assert page.ticked() == {both[0], other}
    assert page.ticked(1) == {both[1]}
    assert page.far() == f"2 of {of} on the truck"
    assert page.day().find_element("css selector", ".last").text.startswith("Last tick ")
    assert page.window.find(".jump a").text.split("\n")[1].startswith("2 of ")
    page.tick(other)
    assert LoadOut(page.window).ticked() == {both[0]}
    assert not LoadOut(page.window, f"jobs/{OTHER}/load.html").ticked()


def test_deliveries_are_counted_apart(empty: Window) -> None:
    """What comes by itself is never on the truck."""
    page = LoadOut(empty)
    days = [one for one in empty.find_all(".truck") if one.find_elements("css selector", ".delivered")]
    box = days[0].find_element("css selector", ".delivered input")
    empty.script("arguments[0].scrollIntoView({block: 'center'})", box)
    box.click()
    number = empty.find_all(".truck").index(days[0])
    assert re.search(r"^0 of \d+ on the truck · 1 of \d+ deliveries taken$", page.far(number))


def test_a_day_that_is_ready_says_so(empty: Window) -> None:
    """The last tick makes it 'All'."""
    page = LoadOut(empty)
    number = min(range(len(empty.find_all(".truck"))), key=lambda one: len(page.lines(one)))
    lines = page.lines(number)
    for line in lines:
        page.tick(line, number)
    assert page.far(number).startswith(f"✓ All {len(lines)} on the truck")


def test_two_tabs_show_each_other_and_the_later_tap_stands(empty: Window) -> None:
    """Neither writes over what the other ticked; what both touched is as the later one left it."""
    first = LoadOut(empty)
    one, two, three = first.lines()[:3]
    driver, left = empty.driver, empty.driver.current_window_handle
    driver.switch_to.new_window("tab")
    right = driver.current_window_handle
    second = LoadOut(empty)
    second.tick(one)
    second.tick(two)
    driver.switch_to.window(left)
    empty.until(lambda: first.ticked() == {one, two}, "the other tab's ticks")
    first.tick(three)
    first.tick(one)
    driver.switch_to.window(right)
    empty.until(lambda: second.ticked() == {two, three}, "what the first tab did")
    second.press("Start this day afresh")
    second.press("Clear them")
    driver.close()
    driver.switch_to.window(left)
    empty.until(lambda: first.ticked() == set(), "the day begun afresh")
    assert LoadOut(empty).ticked() == set()


def test_a_new_edition_with_other_amounts_and_another_order(empty: Window, book: Published) -> None:
    """A tick stays at its line wherever that stands now; one for another amount counts no more, and says so."""
    window = Window(empty.driver, book.address)
    page = LoadOut(window)
    materials = [line for line in page.lines() if line.startswith("material:")]
    same, less = materials[:2]
    tool = next(line for line in page.lines() if line.startswith("tool:"))
    for line in (same, less, tool):
        page.tick(line)
    old = revise(book.site / PAGE, less)
    window.reload()
    assert [line for line in page.lines() if line.startswith("material:")] == materials[::-1]
    assert page.ticked() == {same, tool}
    said = page.box(less).find_element("xpath", "ancestor::li").text
    assert f"was {old}, now 77 boxes" in said
    assert page.far().endswith("on the truck · 1 amount changed")
    page.tick(less)
    page = LoadOut(window)
    assert page.ticked() == {same, less, tool}
    assert "changed" not in page.far()
    assert "was" not in page.box(less).find_element("xpath", "ancestor::li").text


def revise(page: Path, changed: str) -> str:
    """Publish the page with the first day's lists the other way round and another amount; gives the amount before."""
    text = page.read_text(encoding="utf-8")
    start = text.index('<section class="truck"')
    end = text.index('<section class="truck"', start + 1)
    day, old = text[start:end], ""

    def other(found: re.Match[str]) -> str:
        nonlocal old
        old = found[2]
        return f"{found[1]}77 boxes{found[3]}"

    turned = []
    for part in re.split(r"(<ul>.*?</ul>)", day, flags=re.DOTALL):
        lines = [found[0] for found in LINE.finditer(part)]
        lines = [AMOUNT.sub(other, line) if f'"{changed}"' in line else line for line in lines]
        turned.append(f"<ul>{''.join(reversed(lines))}</ul>" if lines else part)
    assert old
    page.write_text(text[:start] + "".join(turned) + text[end:], encoding="utf-8")
    return old


@pytest.mark.parametrize(("lacks", "says"), [(BLOCKED, "refuses to keep"), (FULL, "no room left")])
def test_a_browser_that_keeps_nothing_says_so(lacks: str, says: str, spoiled: Callable[[str], Window]) -> None:
    """Before the first tick; the boxes work all the same, and the count says that they are not kept."""
    page = LoadOut(spoiled(lacks))
    assert says in page.window.find(".alarm").text
    page.tick(page.lines(1)[0], day=1)
    page.tick(page.lines(1)[1], day=1)
    assert page.far(1).startswith("2 of ")
    assert page.far(1).endswith(" · not kept")
    assert "not kept" not in page.far(0)
    assert says in page.day(1).find_element("css selector", ".alarm").text
    assert violations(page.window) == []
    page.tick(page.lines(1)[0], day=1)
    page.press("Start this day afresh")
    page.press("Clear them")
    assert page.ticked(1) == set()


def test_with_room_again_all_is_kept(empty: Window) -> None:
    """What was refused in between is kept with the next tick, and the warning goes."""
    page = LoadOut(empty)
    one, two, three = page.lines()[:3]
    page.tick(three)
    empty.script(f"window.held = Storage.prototype.setItem; {FULL}")
    page.tick(one)
    page.tick(three)
    assert "no room left" in empty.find(".alarm").text
    empty.script("Storage.prototype.setItem = window.held")
    page.tick(two)
    assert empty.find(".alarm").text == ""
    assert "not kept" not in page.far()
    assert LoadOut(empty).ticked() == {one, two}


def test_afresh_asks_first_and_clears_one_day(empty: Window) -> None:
    """By keyboard: the first key asks, with the harmless answer in focus, so a key pressed twice clears nothing."""
    page = LoadOut(empty)
    for line in page.lines()[:2]:
        page.tick(line)
    page.tick(page.lines(1)[0], day=1)
    focused = empty.driver.switch_to
    open_it = page.day().find_element("css selector", ".afresh > button")
    empty.script("arguments[0].focus()", open_it)
    open_it.send_keys(Keys.ENTER)
    assert "Clear all 2 ticks of" in page.day().text
    assert focused.active_element.text == "Leave them"
    focused.active_element.send_keys(Keys.ENTER)
    assert len(page.ticked()) == 2
    assert focused.active_element.text == "Start this day afresh"
    focused.active_element.send_keys(Keys.ENTER)
    focused.active_element.send_keys(Keys.ESCAPE)
    assert len(page.ticked()) == 2
    focused.active_element.send_keys(Keys.ENTER)
    focused.active_element.send_keys(Keys.TAB)
    focused.active_element.send_keys(Keys.ENTER)
    assert page.ticked() == set()
    assert focused.active_element == page.day().find_element("css selector", "input")
    page = LoadOut(empty)
    assert (page.ticked(), len(page.ticked(1))) == (set(), 1)


def test_without_script_it_is_a_list_with_boxes(empty: Window) -> None:
    """No count and no button that would do nothing."""
    empty.driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
    try:
        empty.driver.get(empty.address + PAGE)
        assert len(empty.find_all(".truck input")) == len(empty.find_all(".truck li"))
        assert empty.find_all(".loaded, .afresh, .was, .alarm") == []
    finally:
        empty.driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": False})


def test_opened_from_a_file_it_keeps_as_well(browsers: Callable[[], Chrome], site: Path) -> None:
    """A book in a folder, without a server."""
    page = LoadOut(Window(browsers(), f"{site.as_uri()}/"))
    page.tick(page.lines()[0])
    again = LoadOut(page.window)
    assert again.ticked() == {again.lines()[0]}
    assert again.window.console() == []


@pytest.mark.parametrize("look", ["plain", "sun"])
def test_it_fits_and_axe_finds_nothing(look: str, empty: Window) -> None:
    """With ticks, a changed amount and the question open: nothing sideways, each target 48 px high, no violation."""
    empty.width(PHONE)
    page = LoadOut(empty)
    empty.script("localStorage.setItem('crew-look', arguments[0])", look)
    material = next(line for line in page.lines() if line.startswith("material:"))
    page.tick(material)
    page.tick(next(line for line in page.lines() if line.startswith("tool:")))
    change = """
        const key = Object.keys(localStorage).find(key => key.endsWith(arguments[0]));
        localStorage[key] = JSON.stringify({...JSON.parse(localStorage[key]), amount: '12 boxes of 100'});
    """
    empty.script(change, material)
    page = LoadOut(empty)
    page.press("Start this day afresh")
    assert "1 amount changed" in page.far()
    for width in (PHONE, TABLET, LAPTOP):
        empty.width(width)
        assert (width, empty.sideways(), empty.script(TOO_SMALL), violations(empty)) == (width, 0, [], [])


def test_the_box_in_focus_is_not_under_the_count(empty: Window) -> None:
    """Going up by keyboard, the count that stays under the header hides no box."""
    empty.width(PHONE)
    page = LoadOut(empty)
    boxes = [page.box(line) for line in page.lines()[:30]]
    empty.script("arguments[0].focus()", boxes[-1])
    for _ in boxes[1:]:
        empty.driver.switch_to.active_element.send_keys(Keys.SHIFT + Keys.TAB)
        low, top = empty.script(
            "return [document.querySelector('.loaded').getBoundingClientRect().bottom,"
            " document.activeElement.getBoundingClientRect().top]"
        )
        assert top >= low


def test_a_day_with_ticks_is_still_one_sheet_and_shows_them(empty: Window) -> None:
    """On paper: the count and the ticks, no button; as many sheets as days."""
    page = LoadOut(empty)
    bare = paper(empty)
    days = len(empty.find_all(".truck"))
    assert len(bare) == days
    assert "onthetruck" not in "".join(bare)
    for number in range(days):
        for line in page.lines(number)[:2]:
            page.tick(line, number)
    printed = paper(empty)
    assert len(printed) == days
    assert re.search(r"2of\d+onthetruck", printed[0])
    assert "afresh" not in "".join(printed)
    drawn = "return getComputedStyle(arguments[0], '::after').borderRightWidth"
    empty.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": "print"})
    ticks = [empty.script(drawn, page.box(line)) != "0px" for line in page.lines()[:3]]
    empty.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": ""})
    assert ticks == [True, True, False]
