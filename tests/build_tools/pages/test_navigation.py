"""The navigation: short, and the same however many procedures the book has."""

from __future__ import annotations

import shutil
from pathlib import Path

from build_tools.book.yaml_reader import read_document
from build_tools.commands.site import BOOK
from tests.builds import build_site, copy_book
from tests.site_pages import SitePage, read_site, text_of

MORE = 12
"""Procedures that are added to one trade."""
MOST = 12
"""Entries at the top of the navigation: taken in at a glance, and within a phone's screen."""


def top_entries(page: SitePage) -> list[str]:
    """The words of the navigation's entries that stand at its top level."""
    entries = page.select(".md-nav--primary .md-nav__item:not(.md-nav__item .md-nav__item)")
    return [text_of(entry.select(".md-nav__link")[0]) for entry in entries]


def frame(page: SitePage) -> str:
    """The page without its content."""
    start, end = page.html.index("<article"), page.html.index("</article>")
    return page.html[:start] + page.html[end:]


def test_the_navigation_is_short(pages: dict[str, SitePage]) -> None:
    """Its top is the same on each page: home, the trades in order, the fit-out, jobs, calculators, the reference."""
    trades = read_document(BOOK / "reference" / "trades" / "trades.yaml", "trades.yaml").data.values()
    in_order = [trade["title"] for trade in sorted(trades, key=lambda trade: int(trade["order"]))]
    wanted = ["Home", *in_order, "The fit-out", "Jobs", "Calculators", "Reference"]
    assert len(wanted) <= MOST
    assert {url: top_entries(page) for url, page in pages.items()} == dict.fromkeys(pages, wanted)


def test_the_navigation_does_not_grow_with_the_book(pages: dict[str, SitePage], tmp_path: Path, kept: Path) -> None:
    """With more procedures in a trade the frame of no page grows by a byte."""
    book = copy_book(tmp_path)
    added = {f"doors/lockset-install-{number}.html" for number in range(1, MORE + 1)}
    for url in added:
        shutil.copy(book / "doors" / "lockset-install.yaml", (book / url).with_suffix(".yaml"))
    larger = read_site(build_site(book, tmp_path / "site", kept))
    assert set(larger) - set(pages) == added
    assert {url: len(frame(page)) for url, page in larger.items() if url in pages} == {
        url: len(frame(page)) for url, page in pages.items()
    }
