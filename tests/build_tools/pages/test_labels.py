"""Labels to print: what each opens, and what the page says while the site has no address."""

from __future__ import annotations

import re
from types import SimpleNamespace
from typing import Any, cast

import pytest

from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.commands.site import BOOK
from build_tools.pages.labels import labels_page
from build_tools.pages.qr import QUIET, qr_svg
from build_tools.pages.renderer import Renderer
from tests.site_pages import SitePage, text_of

ADDRESS = "https://methods.crew.example/book/"


@pytest.fixture(scope="module")
def context() -> Context:
    """The book."""
    return Context.of(load_book(BOOK).book, Memo())


def page(context: Context, site_url: str) -> SitePage:
    """The page of labels, with the jobs of the book."""
    jobs = {id: SimpleNamespace(plan=SimpleNamespace(job=entry.item)) for id, entry in context.book.jobs.items()}
    made = labels_page(Renderer(context, {}, "Crew Methods", cast(Any, jobs), site_url=site_url))
    return SitePage.of(made)


def test_each_label_opens_its_page_directly(context: Context) -> None:
    """A label for each procedure that says where it is stuck, for each job, and for each of its spaces."""
    addresses = [text_of(one).replace(" ", "") for one in page(context, ADDRESS).select(".address")]
    procedures = [e for e in context.book.procedures.values() if e.item.label]
    wanted = {f"{ADDRESS}{entry.trade}/{entry.id}.html" for entry in procedures}
    for id, entry in context.book.jobs.items():
        wanted |= {
            f"{ADDRESS}jobs/{id}/index.html",
            *(f"{ADDRESS}jobs/{id}/index.html#space-{s}" for s in entry.item.spaces),
        }
    assert set(addresses) == wanted
    assert len(addresses) == len(wanted)


def test_the_code_is_that_of_the_printed_address(context: Context) -> None:
    """What a camera reads is what stands beside it in letters, and a screen reader says what it opens."""
    shown = page(context, ADDRESS)
    for address, name in zip(shown.select(".address"), shown.select(".name"), strict=True):
        code = qr_svg(text_of(address).replace(" ", ""), f"Code that opens: {text_of(name)}")
        assert str(code) in shown.html


def test_without_an_address_it_says_what_to_write(context: Context) -> None:
    """The setting is named, one label shows how it would look, and nothing leads anywhere by mistake."""
    shown = page(context, "")
    assert "site_url: https://crew.example/book/" in [text_of(one) for one in shown.select("code")]
    assert len(shown.select(".stick")) == 1
    assert [text_of(one) for one in shown.select(".over-square")] == ["sample"]
    assert all("crew.example" in text_of(one) for one in shown.select(".address"))


def test_a_code_has_its_white_margin() -> None:
    """Four modules on each side, as ISO/IEC 18004 asks, and its three corners."""
    drawn = str(qr_svg("https://crew.example/", "The book"))
    side = int(re.findall(r'viewBox="0 0 (\d+)', drawn)[0])
    rows = {(int(x), int(y), int(width)) for x, y, width in re.findall(r"M(\d+) (\d+)h(\d+)v1", drawn)}
    assert min(x for x, _, _ in rows) == min(y for _, y, _ in rows) == QUIET
    assert max(x + width for x, _, width in rows) == side - QUIET
    assert {(QUIET, QUIET, 7), (side - QUIET - 7, QUIET, 7), (QUIET, side - QUIET - 1, 7)} <= rows
