"""Procedure pages on paper, printed by a real browser and read back from the PDF."""

from __future__ import annotations

import base64
import re
from io import BytesIO

import pytest
from pypdf import PdfReader

from build_tools.commands.site import BOOK
from tests.browser.window import Window
from tests.site_pages import SitePage
from tests.tables import procedures

PAGES = {
    "plumbing/toilet-set.html": 4,
    "doors/lockset-install.html": 4,
    "flooring/strip-floor-racking.html": 5,
    "concrete/approach-forming.html": 5,
}
"""The most sheets of letter paper that each may take."""
FRAME = ["Skip to content", "Table of contents", "Words of the trade", "Back to top", "Type to start searching"]
"""Words of the navigation and the search, which have no use on paper."""


def printed(window: Window, url: str) -> PdfReader:
    """The page as the browser prints it on letter paper."""
    window.open(url)
    sheet = {"paperWidth": 8.5, "paperHeight": 11, "preferCSSPageSize": True}
    pdf = window.driver.execute_cdp_cmd("Page.printToPDF", sheet)["data"]
    return PdfReader(BytesIO(base64.b64decode(pdf)))


def letters(text: str) -> str:
    """The text without spaces: lines break elsewhere on paper."""
    return re.sub(r"\s+", "", text)


@pytest.mark.parametrize("url", PAGES)
def test_a_procedure_prints(url: str, window: Window, pages: dict[str, SitePage]) -> None:
    """Few sheets, each step's action and each message on them, the revision at the foot, and no navigation."""
    paper = printed(window, url)
    sheets = [letters(sheet.extract_text()) for sheet in paper.pages]
    assert len(sheets) <= PAGES[url]
    text = "".join(sheets)
    wanted = [element.text for name in ("do", "hazard", "stops") for element in pages[url].by_class(name)]
    assert [words for words in wanted if letters(words) not in text] == []
    assert [words for words in FRAME if letters(words) in text] == []
    revision = procedures(BOOK)[url.rpartition("/")[2].removesuffix(".html")]["revision"]
    foot = letters(f"revision {revision['number']}, {revision['date']}")
    assert [number for number, sheet in enumerate(sheets, 1) if foot not in sheet] == []
