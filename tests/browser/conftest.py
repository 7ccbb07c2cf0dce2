"""A real browser for the page tests: one Chromium a worker, and the built site served beside it."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

import pytest
from selenium.webdriver import Chrome, ChromeOptions
from selenium.webdriver.chrome.service import Service

from build_tools.commands.test import BROWSERS, DRIVERS, PACKAGES
from tests.browser.live_form import PAGE, RING, LiveForm
from tests.browser.on_site import forget_all
from tests.browser.window import Window

FLAGS = (
    "--headless=new --no-sandbox --disable-gpu --disable-background-networking --no-first-run "
    "--disable-component-update --disable-sync --disable-dev-shm-usage --hide-scrollbars --force-color-profile=srgb"
).split()


class Quiet(SimpleHTTPRequestHandler):
    """Serves files and keeps no log."""

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="session")
def address(site: Path) -> Iterator[str]:
    """The address at which the built site is served."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(site)))
    thread = Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()
    thread.join()


@pytest.fixture(scope="session")
def browser() -> Iterator[Chrome]:
    """The browser. Without one the page tests fail; they are never left out.

    It has no service worker, so that no test reads a page that an earlier one kept: what is kept has tests of its own.
    """
    driver = start_browser()
    without = {"source": "delete Navigator.prototype.serviceWorker"}
    driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", without)
    yield driver
    driver.quit()


@pytest.fixture
def browsers(tmp_path: Path) -> Iterator[Callable[..., Chrome]]:
    """Starts a browser that has the test's own folder of a person's data; given again after it was closed, it has it
    still. ``text_size`` is the size of ordinary text that the person has set, in px."""
    started: list[Chrome] = []

    def start(text_size: int = 16) -> Chrome:
        for one in started:
            one.quit()
        started[:] = [start_browser(tmp_path / "person", text_size)]
        return started[0]

    yield start
    for one in started:
        one.quit()


def start_browser(profile: Path | None = None, text_size: int = 16) -> Chrome:
    """A browser of its own, with a folder of data where one is given."""
    options = ChromeOptions()
    options.binary_location = _program(BROWSERS)
    for flag in FLAGS:
        options.add_argument(flag)
    if profile:
        options.add_argument(f"--user-data-dir={profile}")
    options.add_experimental_option("prefs", {"webkit": {"webprefs": {"default_font_size": text_size}}})
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    driver = Chrome(options=options, service=Service(_program(DRIVERS)))
    driver.set_page_load_timeout(20)
    return driver


@pytest.fixture
def window(browser: Chrome, address: str) -> Iterator[Window]:
    """The window, emptied of what an earlier test left. Whatever a test does, no policy refuses anything.

    It stays the browser's one tab: another would have service workers, and keep pages for the tests that follow.
    """
    browser.execute_cdp_cmd("Storage.clearDataForOrigin", {"origin": address, "storageTypes": "local_storage"})
    window, tab = Window(browser, address), browser.current_window_handle
    yield window
    assert window.refused() == []
    assert browser.window_handles == [tab], "a test closes the tabs that it opens, and no other"


@pytest.fixture
def empty(window: Window) -> Iterator[Window]:
    """The window of a browser that has kept nothing."""
    forget_all(window.driver, window.address)
    yield window
    forget_all(window.driver, window.address)


@pytest.fixture
def spoiled(empty: Window) -> Iterator[Callable[[str], Window]]:
    """Runs a script before those of each page: a browser that lacks or refuses something."""
    added: list[str] = []

    def spoil(source: str) -> Window:
        given = empty.driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": source})
        added.append(given["identifier"])
        return empty

    yield spoil
    for one in added:
        empty.driver.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", {"identifier": one})


@pytest.fixture
def ring(window: Window) -> LiveForm:
    """The form of the wax ring on the toilet page."""
    window.open(PAGE)
    return LiveForm(window, RING)


def _program(names: tuple[str, ...]) -> str:
    found = next((path for path in map(shutil.which, names) if path), None)
    if found is None:
        pytest.fail(f"none of {', '.join(names)} is here, and the page tests need it: install {' and '.join(PACKAGES)}")
    return found
