"""What the page tests do with the browser: open pages at a width, wait for conditions, and read what happened."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any
from urllib.parse import urldefrag, urlsplit

from selenium.webdriver import Chrome
from selenium.webdriver.common.by import By
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.wait import WebDriverWait

PATIENCE = 10.0
"""Seconds until a condition counts as never met."""
PHONE, TABLET, LAPTOP = 360, 768, 1440
"""The widths of the layout, in px."""
BEGUN = "return performance.timeOrigin"
"""When a page began to load: the mark of one load."""
READY = "return document.readyState === 'complete' && document.fonts.status === 'loaded'"


class Window:
    """The browser's one window at work on the site."""

    def __init__(self, driver: Chrome, address: str) -> None:
        self.driver = driver
        self.address = address
        self.said: list[str] = []
        driver.get("about:blank")  # first, since what an earlier test left would be laid out anew
        self.width(LAPTOP)
        self.console()
        self.requests()
        self.said.clear()

    def width(self, pixels: int) -> None:
        """Make the window that wide, and wait until the page is."""
        size = {"width": pixels, "height": 800, "deviceScaleFactor": 1, "mobile": False}
        self.driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", size)
        self.until(lambda: self.script("return innerWidth") == pixels, f"{pixels} px wide")

    def open(self, url: str) -> None:
        """Open a page of the site, ready with its fonts."""
        target = url if urlsplit(url).scheme else self.address + url
        same = "#" in target and urldefrag(target).url == urldefrag(self.driver.current_url).url
        self._load(lambda: self.driver.get(target), url, "" if same else self.script(BEGUN))

    def reload(self) -> None:
        """Load the page again, ready with its fonts."""
        self._load(self.driver.refresh, "the page again", self.script(BEGUN))

    def _load(self, load: Callable[[], None], name: str, before: object) -> None:
        """Load a page. On a busy machine the driver may come back while the page that is left still stands."""
        load()
        self.until(lambda: self.script(BEGUN) != before and self.script(READY), f"{name} is ready")

    def until(self, condition: Callable[[], Any], what: str) -> Any:
        """Wait until a condition holds, and give what it gives."""
        return WebDriverWait(self.driver, PATIENCE, 0.05).until(lambda _: condition(), f"waited for: {what}")

    def script(self, source: str, *given: object) -> Any:
        """What a script on the page returns."""
        return self.driver.execute_script(source, *given)

    def find(self, selector: str) -> WebElement:
        """The first element of a selector."""
        return self.driver.find_element(By.CSS_SELECTOR, selector)

    def find_all(self, selector: str) -> list[WebElement]:
        """All elements of a selector."""
        return self.driver.find_elements(By.CSS_SELECTOR, selector)

    def sideways(self) -> int:
        """By how many px the page scrolls sideways."""
        return int(self.script("return document.documentElement.scrollWidth - window.innerWidth"))

    def widest(self) -> list[str]:
        """What reaches out of the page at the right, for the message of a test."""
        found: list[str] = self.script(
            "const out = [...document.querySelectorAll('.md-content *')].filter(e => {"
            "  const box = e.getBoundingClientRect();"
            "  return box.width && box.right > innerWidth + 0.5 && !e.closest('.slide') });"
            "return out.slice(0, 5).map(e => `${e.tagName}.${e.className} ${e.textContent.trim().slice(0, 40)}`)"
        )
        return found

    def console(self) -> list[str]:
        """The errors and warnings since the last look."""
        said = self.driver.get_log("browser")  # type: ignore[no-untyped-call]  # selenium's own
        found = [entry["message"] for entry in said if entry["level"] in ("WARNING", "SEVERE")]
        self.said += found
        return found

    def refused(self) -> list[str]:
        """What the policy of a page kept from loading or running, since the window was opened."""
        self.console()
        return [message for message in self.said if "Content Security Policy" in message]

    @contextmanager
    def cut_off(self) -> Iterator[None]:
        """The browser without signal, and with it again at the end, however that comes."""
        self._signal(False)
        try:
            yield
        finally:
            self._signal(True)

    def _signal(self, there: bool) -> None:
        self.driver.execute_cdp_cmd("Network.enable", {})
        given = {"offline": not there, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1}
        self.driver.execute_cdp_cmd("Network.emulateNetworkConditions", given)

    @contextmanager
    def without(self, address: str) -> Iterator[None]:
        """Nothing comes from addresses of that pattern, such as `*/form.js`, also where the browser has it already."""
        self.driver.execute_cdp_cmd("Network.enable", {})
        self.driver.execute_cdp_cmd("Network.setBlockedURLs", {"urls": [address]})
        try:
            yield
        finally:
            self.driver.execute_cdp_cmd("Network.setBlockedURLs", {"urls": []})

    def requests(self) -> list[str]:
        """The addresses that were asked for since the last look."""
        entries = self.driver.get_log("performance")  # type: ignore[no-untyped-call]  # selenium's own
        messages = [json.loads(entry["message"])["message"] for entry in entries]
        sent = [one["params"]["request"]["url"] for one in messages if one["method"] == "Network.requestWillBeSent"]
        return [url for url in sent if not url.startswith(("data:", "blob:", "about:"))]
