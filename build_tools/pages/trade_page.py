"""The page of a trade: its procedures and calculators."""

from __future__ import annotations

from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer


def trade_page(renderer: Renderer, id: str) -> Page:
    """What a trade has."""
    url = f"{id}/index.html"
    helpers = renderer.helpers(url)
    trade = renderer.book.trades[id].item
    title, summary = helpers.say(trade.title), helpers.words(trade.summary)
    calculators = [
        {"url": helpers.url("calculator", name), "title": calculator.title, "summary": calculator.summary}
        for name, calculator in renderer.context.calculators.items()
        if calculator.trade == id
    ]
    content = renderer.render(
        "trade.html",
        helpers,
        trade={"id": id, "title": title, "summary": summary},
        procedures=renderer.listed(helpers, renderer.procedures_of(id)),
        calculators=calculators,
    )
    headings = [Heading(renderer.words["procedures"], "procedures")]
    headings += [Heading(renderer.words["calculators"], "calculators")] if calculators else []
    return Page(url, title, content, summary, tuple(headings), (SearchEntry(url, title, summary),))
