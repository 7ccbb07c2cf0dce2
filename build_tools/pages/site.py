"""Every page of the site, made from the checked book, and the navigation over them.

:func:`make_pages` is the story from top to bottom: home, trades, procedures, calculators, and one page for each kind
of entry.
"""

from __future__ import annotations

from typing import Any

from build_tools.book.checks.context import Context
from build_tools.book.index import PAGE_OF
from build_tools.pages.calculator_page import calculator_page, calculators_page
from build_tools.pages.entries_page import entries_page
from build_tools.pages.fit_out.pages import dangers_page, holds_page, sequence_page
from build_tools.pages.home_page import FIT_OUT, home_page
from build_tools.pages.jobs.pages import job_pages
from build_tools.pages.labels import labels_page
from build_tools.pages.page import Page
from build_tools.pages.procedure_page import procedure_page_remembered
from build_tools.pages.records_page import records_page
from build_tools.pages.renderer import Renderer
from build_tools.pages.trade_page import trade_page
from build_tools.pages.words import words

REFERENCE = {scheme: page for scheme, page in PAGE_OF.items() if page not in FIT_OUT}
"""The schemes whose entries stand on a page of reference."""


def make_pages(renderer: Renderer) -> list[Page]:
    """Every page, the home page first."""
    pages = [home_page(renderer)]
    pages += [trade_page(renderer, trade) for trade in renderer.trades()]
    pages += [procedure_page_remembered(renderer, entry) for entry in renderer.book.procedures.values()]
    pages += [sequence_page(renderer), holds_page(renderer), dangers_page(renderer)]
    pages += job_pages(renderer)
    pages += [labels_page(renderer), records_page(renderer)]
    pages.append(calculators_page(renderer))
    pages += [calculator_page(renderer, calculator) for calculator in renderer.context.calculators.values()]
    pages += [entries_page(renderer, scheme, page) for scheme, page in REFERENCE.items()]
    return pages


def navigation(context: Context, pages: list[Page]) -> list[Any]:
    """The navigation: home, the trades, the fit-out, the calculators, and the reference pages.

    It names pages by their source (``plumbing/index.md``) and stays this small whatever the number of procedures.
    """
    titles = {page.url: page.title for page in pages}

    def line(url: str) -> dict[str, str]:
        return {titles[url]: url.removesuffix(".html") + ".md"}

    trades = sorted(context.book.trades, key=lambda id: (context.book.trades[id].item.order, id))
    say = words(context.book.language)
    return [
        {say["home"]: "index.md"},
        *(line(f"{id}/index.html") for id in trades),
        {say["fit_out"]: [*(line(f"{page}.html") for page in FIT_OUT), line("labels.html"), line("records.html")]},
        *([line("jobs/index.html")] if context.book.jobs else []),
        line("calculators/index.html"),
        {say["reference"]: [line(f"{page}.html") for page in REFERENCE.values()]},
    ]
