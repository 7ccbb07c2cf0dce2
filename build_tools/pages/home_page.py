"""The home page: the procedures by trade and by tool, and the ways to the rest."""

from __future__ import annotations

from build_tools.pages.page import Heading, Page
from build_tools.pages.renderer import Renderer

FIT_OUT = ("sequence", "holds", "dangers")
"""The pages about the whole fit-out."""


def home_page(renderer: Renderer) -> Page:
    """The page that a site opens with."""
    helpers = renderer.helpers("index.html")
    book, index = renderer.book, renderer.context.index
    trades = [
        {
            "id": id,
            "title": helpers.title("trade", id),
            "summary": helpers.words(book.trades[id].item.summary),
            "procedures": renderer.listed(helpers, renderer.procedures_of(id)),
        }
        for id in renderer.trades()
    ]
    tools = []
    for id, tool in sorted(book.tools.items(), key=lambda item: index.targets["tool", item[0]].title):
        users = [key[1] for key in index.used_in.get(("tool", id), []) if key[0] == "procedure"]
        if users and not tool.item.protects:
            pages = renderer.linked(helpers, sorted(users))
            tools.append({"title": helpers.title("tool", id), "url": helpers.url("tool", id), "procedures": pages})
    fit_out = [
        {"url": f"{page}.html", "title": renderer.words[f"{page}_title"], "summary": renderer.words[f"{page}_lead"]}
        for page in FIT_OUT
    ]
    fit_out += [
        {"url": f"{page}.html", "title": renderer.words[f"{page}_title"], "summary": renderer.words[f"{page}_lead"]}
        for page in ("labels", "records")
    ]
    counts = {
        "procedures": len(book.procedures),
        "calculators": len(renderer.context.calculators),
        "sources": len(book.sources),
    }
    content = renderer.render(
        "home.html",
        helpers,
        site_name=renderer.site_name,
        trades=trades,
        tools=tools,
        fit_out=fit_out,
        counts=counts,
    )
    headings = [Heading(renderer.words["by_trade"], "by-trade"), Heading(renderer.words["by_tool"], "by-tool")]
    headings.append(Heading(renderer.words["whole_house"], "whole"))
    return Page("index.html", renderer.words["home"], content, renderer.words["home_lead"], tuple(headings))
