"""A trade of which the law keeps a part for licensed people says on each page who may do what."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic


def says_who_may(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """A procedure of a reserved trade without the field ``reserved``."""
    trade = context.book.trades.get(entry.trade)
    if trade is not None and trade.item.reserved and entry.item.reserved is None:
        yield entry.error(
            (),
            f"does not say who may do it, and the law keeps a part of '{entry.trade}' for licensed people",
            "write in 'reserved' what is kept for whom, and what the crew does",
        )
