"""A procedure page as whoever does the work uses it: ticks, readings, hold points, and the record as a file."""

from __future__ import annotations

import json
from typing import Any

from selenium.webdriver import Chrome
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.select import Select

from tests.browser.window import Window

PAGE = "plumbing/toilet-set.html"
MEASURED, HELD = "check-place", "dry-set"
"""Steps of the toilet page: one with readings, one with a hold point."""
CATCH = """
    window.handedOut = [];
    const make = URL.createObjectURL;
    URL.createObjectURL = (blob) => { blob.text().then(text => window.handedOut.push(text)); return make(blob) };
"""
"""Catches what the page hands out as a file."""


class OnSite:
    """The page, opened for a job and space."""

    def __init__(self, window: Window, query: str = "", page: str = PAGE) -> None:
        self.window = window
        self.window.open(page + query)
        self.ready()

    def ready(self) -> None:
        """Wait until the page takes entries and has read what was kept."""
        self.window.until(lambda: self.window.find_all(".on-site .far"), "the box above the steps")

    def reload(self) -> None:
        """Load the page again."""
        self.window.reload()
        self.ready()

    def steps(self) -> list[str]:
        """The ids of its steps."""
        return [str(step.get_attribute("id")) for step in self.window.find_all(".step")]

    def tick_box(self, step: str) -> WebElement:
        """The checkbox of a step."""
        return self.window.find(f"#tick-{step}")

    def tick(self, step: str) -> None:
        """Tick a step, or take the tick back."""
        self.show(self.tick_box(step))
        self.tick_box(step).click()

    def is_ticked(self, step: str) -> bool:
        """Whether its tick is set."""
        return self.tick_box(step).is_selected()

    def ticked(self) -> list[str]:
        """The steps that are ticked."""
        return [
            str(box.get_attribute("id")).removeprefix("tick-")
            for box in self.window.find_all(".tick input")
            if box.is_selected()
        ]

    def read(self, step: str, text: str, number: int = 0) -> WebElement:
        """Type a reading of a step over what stood there; gives the measurement's box once it is judged.

        A way at its end is picked.
        """
        box = self.window.find_all(f"#{step} .measure")[number]
        typing = box.find_element("css selector", ".puts-in input")
        self.show(typing)
        ways = box.find_elements("css selector", ".reading .choose label")
        way = next((one for one in ways if text.endswith(one.text)), None)
        typing.send_keys(Keys.CONTROL + "a")
        typing.send_keys((text.removesuffix(way.text).strip() if way else text) + Keys.ENTER)
        if way:
            way.click()
        self.window.until(lambda: box.get_attribute("data-verdict") != "none", "a verdict")
        return box

    def look(self, step: str, who: str) -> None:
        """Say at a hold point who looked, picked or else named; the time is there by itself."""
        box = self.window.find(f"#hold-{step}")
        self.show(box)
        known = {option.text for option in Select(box).options}
        Select(box).select_by_visible_text(who if who in known else "Somebody else")
        if who not in known:
            name = self.window.find(f"#hold-{step}-name")
            name.clear()
            name.send_keys(who)
        self.window.find(f"#{step} .looks [type=submit]").click()

    def choose_elsewhere(self, job: str, space: str = "") -> None:
        """Choose a job and space as another page of the book does."""
        chosen = json.dumps({"job": job, "space": space})
        self.window.script("localStorage.setItem('crew-place', arguments[0])", chosen)
        self.window.script("dispatchEvent(new StorageEvent('storage', {key: 'crew-place'}))")
        self.window.until(lambda: f"job={job}" in self.window.driver.current_url, "the other place")

    def kept(self) -> int:
        """How many entries the browser's database holds."""
        count = """
            const done = arguments[arguments.length - 1];
            indexedDB.databases().then(all => all.length ? all[0].name : null).then(name => {
                if (!name) return done(0);
                indexedDB.open(name).onsuccess = ({target}) => {
                    const base = target.result;
                    if (!base.objectStoreNames.contains('items')) return done(0);
                    const entries = IDBKeyRange.lowerBound(['']);
                    base.transaction('items').objectStore('items').count(entries).onsuccess = ({target}) => {
                        base.close();
                        done(target.result);
                    };
                };
            });
        """
        return int(self.window.driver.execute_async_script(count))

    def wait_written(self) -> None:
        """Wait until nothing is on its way to the database: a person who leaves before is asked by the browser."""
        asks = "return !dispatchEvent(new Event('beforeunload', {cancelable: true}))"
        self.window.until(lambda: not self.window.script(asks), "everything written")

    def wait_kept(self, count: int) -> None:
        """Wait until so many items are kept."""
        self.window.until(lambda: self.kept() == count, f"{count} items kept")

    def press(self, words: str) -> None:
        """Press the button with those words."""
        button = self.window.until(lambda: self._button(words), f"a button '{words}'")
        self.show(button)
        button.click()

    def _button(self, words: str) -> WebElement | None:
        shown = [one for one in self.window.find_all("button") if one.is_displayed()]
        return next((one for one in shown if one.text == words), None)

    def record(self) -> dict[str, Any]:
        """The record, taken out as a file."""
        self.window.script(CATCH)
        if not self.window.find_all(".record-by"):
            self.press("The record")
        self.press("Take the record out")
        text = self.window.until(lambda: self.window.script("return handedOut.at(-1)"), "a file")
        given: dict[str, Any] = json.loads(text)
        return given

    def show(self, element: WebElement) -> None:
        """Bring an element into the middle of the screen."""
        self.window.script("arguments[0].scrollIntoView({block: 'center'})", element)


def forget_all(driver: Chrome, address: str) -> None:
    """Empty every store of the site."""
    driver.get("about:blank")
    driver.execute_cdp_cmd("Storage.clearDataForOrigin", {"origin": address, "storageTypes": "all"})
