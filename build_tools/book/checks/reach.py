"""Every page can be reached from the first one, and none takes the place of another."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.index import PAGE_OF

PAGES = {*PAGE_OF.values(), "sequence", "holds", "labels", "records", "calculators", "jobs", "index", "trades"}
TAKEN = PAGES | {"assets", "search", "pictures", "reference"}
"""Names at the top of the site, or of the book, that no trade can have."""
OWN_PAGE = "index"
"""The page that a trade has in its folder: a procedure of that name would take its place."""


def trades(context: Context) -> Iterator[Diagnostic]:
    """A procedure is found on the page of its trade, so its folder must be a trade of the book."""
    for entry in context.book.procedures.values():
        if entry.trade not in context.book.trades:
            yield entry.error(
                (),
                f"nobody can reach this page: its folder '{entry.trade}' is no trade of reference/trades",
                did_you_mean(entry.trade, context.book.trades)
                or f"'python3 -m build_tools new {entry.trade}/NAME' shows how a trade is added",
            )
        if entry.id == OWN_PAGE:
            yield entry.error(
                (),
                f"a procedure cannot be called '{OWN_PAGE}': it would take the place of the page of its trade",
                "rename the file to what is done, like 'set-faucet.yaml'",
            )
    for id, trade in context.book.trades.items():
        if id in TAKEN:
            yield trade.error(("",), f"a trade cannot be called '{id}': the site has a page of that name")
