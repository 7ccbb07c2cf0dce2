"""A real browser for the page tests: one Chromium a worker, and the built site served beside it."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

import pytest
from selenium.webdriver import Chrome, ChromeOptions
from selenium.webdriver.chrome.service import Service

from build_tools.commands.test import BROWSERS, DRIVERS, PACKAGES
from tests.browser.live_form import PAGE, RING, LiveForm
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
    """The browser. Without one the page tests fail; they are never left out."""
    options = ChromeOptions()
    options.binary_location = _program(BROWSERS)
    for flag in FLAGS:
        options.add_argument(flag)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    driver = Chrome(options=options, service=Service(_program(DRIVERS)))
    driver.set_page_load_timeout(20)
    yield driver
    driver.quit()


@pytest.fixture
def window(browser: Chrome, address: str) -> Window:
    """The window, emptied of what an earlier test left."""
    browser.execute_cdp_cmd("Storage.clearDataForOrigin", {"origin": address, "storageTypes": "local_storage"})
    return Window(browser, address)


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
