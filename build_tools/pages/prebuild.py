"""Prebuild: checks and makes the pages of many procedures, on every core, into the memo that the rest works from.

Nothing depends on it: where processes cannot be forked, or few procedures are new, the same work is done later, one
procedure after another.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks import check_procedure
from build_tools.book.diagnostics import stops
from build_tools.book.parallel import parallel_map
from build_tools.pages.open_data import procedure_json
from build_tools.pages.page import Page
from build_tools.pages.procedure_page import procedure_page
from build_tools.pages.renderer import Renderer

Prebuilt = tuple[str, list[Any], Page | None, str]
"""A procedure's id, its diagnostics, and where there are none its page and its open data."""


def prebuild(renderer: Renderer, meanwhile: Callable[[], object] = lambda: None) -> None:
    """Fill the memo for the procedures that it does not hold yet.

    ``meanwhile`` is other work, which this process does before it takes its part of the procedures.
    """
    memo, around = renderer.context.memo, renderer.context.fingerprint
    new = [entry for entry in renderer.book.procedures.values() if not memo.holds("checks", entry.item, around)]
    for id, diagnostics, page, text in parallel_map(partial(_prebuild_procedure, renderer), new, meanwhile):
        entry = renderer.book.procedures[id]
        memo.keep("checks", entry.item, around, diagnostics)
        if page is not None:
            memo.keep("page", entry.item, renderer.around(entry), page)
            memo.keep("json", entry.item, around, text)


def _prebuild_procedure(renderer: Renderer, entry: ProcedureEntry) -> Prebuilt:
    diagnostics = check_procedure(renderer.context, entry)
    # What is unread may be what this page leads to.
    if stops(diagnostics) or renderer.book.unread or not renderer.has_pictures(entry):
        return entry.id, diagnostics, None, ""
    return entry.id, diagnostics, procedure_page(renderer, entry), procedure_json(renderer.context, entry)
