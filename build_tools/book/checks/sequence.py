"""What comes before what makes no circle."""

from __future__ import annotations

from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter

from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.sequence import links


def cycles(context: Context) -> Iterator[Diagnostic]:
    """The first circle of ``before`` links, named at the link that closes it."""
    procedures = context.book.procedures
    sorter = TopologicalSorter(links(context.book))
    try:
        sorter.prepare()
    except CycleError as cycle:
        around: list[str] = list(reversed(cycle.args[1]))
        entry = procedures[around[0]]
        index = next(i for i, line in enumerate(entry.item.before) if line.procedure == around[1])
        yield entry.error(
            ("before", index, "procedure"),
            "these come before each other in a circle: " + " after ".join(f"'{id}'" for id in around),
            "leave out one of these 'before' links",
        )
