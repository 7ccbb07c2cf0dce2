"""Procedure pages on paper, printed by a real browser and read back from the PDF."""

from __future__ import annotations

import base64
import re
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader
from selenium.webdriver import Chrome

from build_tools.commands.site import BOOK
from tests.browser.window import Window
from tests.site_pages import SitePage, attribute, resolve, text_of
from tests.tables import procedures

PAGES = {
    "plumbing/toilet-set.html": 3,
    "doors/lockset-install.html": 4,
    "flooring/strip-floor-racking.html": 4,
    "concrete/approach-forming.html": 4,
}
"""The most sheets of letter paper that each may take."""
FRAME = ["Skip to content", "Table of contents", "Words of the trade", "Back to top", "Type to start searching"]
"""Words of the navigation and the search, which have no use on paper."""


def letters(text: str) -> str:
    """The text without spaces: lines break elsewhere on paper."""
    return re.sub(r"\s+", "", text)


@dataclass(frozen=True)
class Paper:
    """A page as it is printed: the text of each sheet, without spaces."""

    url: str
    sheets: list[str]

    @property
    def text(self) -> str:
        """The text of all sheets."""
        return "".join(self.sheets)


@pytest.fixture(scope="module", params=PAGES)
def paper(request: pytest.FixtureRequest, browser: Chrome, address: str) -> Paper:
    """The page printed by the browser on letter paper."""
    window = Window(browser, address)
    window.open(request.param)
    sheet = {"paperWidth": 8.5, "paperHeight": 11, "preferCSSPageSize": True}
    pdf = window.driver.execute_cdp_cmd("Page.printToPDF", sheet)["data"]
    reader = PdfReader(BytesIO(base64.b64decode(pdf)))
    return Paper(request.param, [letters(sheet.extract_text()) for sheet in reader.pages])


def test_it_takes_few_sheets(paper: Paper) -> None:
    """A procedure is carried to the site on a few sheets, and none is empty."""
    assert len(paper.sheets) <= PAGES[paper.url]
    assert min(len(sheet) for sheet in paper.sheets) > 100


def test_what_must_be_read_is_on_it(paper: Paper, pages: dict[str, SitePage]) -> None:
    """Each step's action, each hazard and how to avoid it, and what each hold point stops, are on paper."""
    wanted = [text_of(one) for one in pages[paper.url].select(".do, .hazard, .avoid, .stops")]
    assert [words for words in wanted if letters(words) not in paper.text] == []


def test_the_navigation_is_not_on_it(paper: Paper) -> None:
    """Nothing of the frame around the page is printed."""
    assert [words for words in FRAME if letters(words) in paper.text] == []


def test_each_sheet_says_its_revision(paper: Paper) -> None:
    """At the foot of each sheet stand the revision and its date."""
    revision = procedures(BOOK)[paper.url.rpartition("/")[2].removesuffix(".html")]["revision"]
    foot = letters(f"revision {revision['number']}, {revision['date']}")
    assert [number for number, sheet in enumerate(paper.sheets, 1) if foot not in sheet] == []


def test_the_drawings_are_on_it(paper: Paper, pages: dict[str, SitePage], site: Path) -> None:
    """Drawings load late on the screen; on paper each is there with its words."""
    images = [attribute(image, "src") for image in pages[paper.url].select("img")]
    drawings = [source for source in images if "pictures/" in source]
    assert drawings
    for source in drawings:
        drawing = SitePage(source, (site / resolve(paper.url, source)[0]).read_text(encoding="utf-8"))
        assert any(letters(words) in paper.text for words in map(text_of, drawing.select("text")) if len(words) > 5), (
            source
        )
