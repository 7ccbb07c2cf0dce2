"""The day sheets on paper, printed by a real browser: at most two sheets of paper a day, black on white."""

from __future__ import annotations

import base64
import re
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader
from selenium.webdriver import Chrome

from build_tools.commands.site import BOOK
from tests.browser.window import Window
from tests.site_pages import SitePage, text_of

MOST = 3
JOBS = sorted(path.stem for path in (BOOK / "jobs").glob("*.yaml"))


def letters(text: str) -> str:
    """The text without spaces: lines break elsewhere on paper."""
    return re.sub(r"\s+", "", text)


def paper(window: Window) -> list[str]:
    """The page that is open, printed on letter paper: the text of each sheet, without spaces."""
    sheet = {"paperWidth": 8.5, "paperHeight": 11, "preferCSSPageSize": True}
    pdf = window.driver.execute_cdp_cmd("Page.printToPDF", sheet)["data"]
    return [letters(one.extract_text()) for one in PdfReader(BytesIO(base64.b64decode(pdf))).pages]


def of_job(site: Path, job: str) -> list[str]:
    """The addresses of a job's pages of sheets."""
    return [f"jobs/{job}/{path.name}" for path in sorted((site / "jobs" / job).glob("sheets-*.html"))]


@pytest.mark.parametrize("job", JOBS)
def test_no_day_takes_more_than_three_sheets(job: str, site: Path, pages: dict[str, SitePage], window: Window) -> None:
    """Each day begins a sheet of its own, and the next one no more than three sheets later."""
    addresses = of_job(site, job)
    assert addresses
    for url in addresses:
        heads = [letters(text_of(one.select("h2")[0])) for one in pages[url].select(".sheet")]
        window.open(url)
        printed = paper(window)
        begins = [number for number, text in enumerate(printed) if any(head in text[:200] for head in heads)]
        assert len(begins) == len(heads), url
        taken = [after - first for first, after in zip(begins, [*begins[1:], len(printed)], strict=True)]
        assert max(taken) <= MOST, {head: count for head, count in zip(heads, taken, strict=True) if count > MOST}


def test_a_day_that_was_picked_is_printed_alone(site: Path, pages: dict[str, SitePage], window: Window) -> None:
    url = of_job(site, JOBS[0])[0]
    first, second = pages[url].select(".sheet")[:2]
    window.open(f"{url}#{second['id']}")
    text = "".join(paper(window))
    shown = [letters(text_of(one.select("h2")[0])) in text for one in (first, second)]
    assert shown == [False, True]


def test_it_is_black_on_white_also_where_the_screen_is_dark(site: Path, window: Window) -> None:
    url = of_job(site, JOBS[0])[0]
    driver: Chrome = window.driver
    features = {"prefers-color-scheme": "dark", "prefers-reduced-motion": "reduce"}
    look = {"media": "print", "features": [{"name": name, "value": value} for name, value in features.items()]}
    window.open(url)
    driver.execute_cdp_cmd("Emulation.setEmulatedMedia", look)
    script = """
        const colours = new Set();
        for (const one of document.querySelectorAll('.sheet, .sheet *:not(svg *)'))
          colours.add(getComputedStyle(one).color);
        return [[...colours], getComputedStyle(document.documentElement).backgroundColor];
    """
    try:
        inks, ground = driver.execute_script(script)
    finally:
        driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": "", "features": []})
    assert (inks, ground) == (["rgb(0, 0, 0)"], "rgb(255, 255, 255)")
