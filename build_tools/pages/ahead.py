"""Checks and makes the pages of many procedures ahead, on every core, into the memo that the rest works from.

Nothing depends on it: where processes cannot be forked, or few procedures are new, the same work is done later, one
procedure after another.
"""

from __future__ import annotations

import multiprocessing
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import suppress
from multiprocessing.connection import Connection
from multiprocessing.sharedctypes import Synchronized
from typing import Any

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks import check_procedure
from build_tools.pages.open_data import procedure_json
from build_tools.pages.page import Page
from build_tools.pages.site import Maker, procedure_page

FEW = 40
"""New procedures up to which a second process does not pay."""
AT_ONCE = 5
"""Procedures that a process takes at a time."""

Done = tuple[str, list[Any], Page | None, str]
"""A procedure's id, its problems, and where there are none its page and its open data."""


def work_ahead(maker: Maker, meanwhile: Callable[[], object] = lambda: None) -> None:
    """Fill the memo for the procedures that it does not hold yet.

    ``meanwhile`` is other work: this process does it first, and then takes its part of the procedures that are left.
    """
    memo, around = maker.context.memo, maker.context.fingerprint
    new = [entry for entry in maker.book.procedures.values() if not memo.holds("checks", entry.item, around)]
    cores = len(os.sched_getaffinity(0)) if sys.platform == "linux" else 1
    if cores < 2 or len(new) < FEW:
        return
    fork = multiprocessing.get_context("fork")
    taken = fork.Value("i", 0)
    helpers = []
    for _ in range(1, cores):
        ours, theirs = fork.Pipe(duplex=False)
        process = fork.Process(target=_work, args=(maker, new, taken, theirs), daemon=True)
        process.start()
        theirs.close()
        helpers.append((process, ours))
    meanwhile()
    done = [_prepare(maker, entry) for entry in _untaken(new, taken)]
    for process, ours in helpers:
        with suppress(EOFError):  # where it failed, the same work is done later, here, where it can be seen
            done += ours.recv()
        process.join()
    for id, problems, page, text in done:
        entry = maker.book.procedures[id]
        memo.keep("checks", entry.item, around, problems)
        if page is not None:
            memo.keep("page", entry.item, maker.around(entry), page)
            memo.keep("json", entry.item, around, text)


def _work(maker: Maker, entries: list[ProcedureEntry], taken: Synchronized[int], result: Connection) -> None:
    result.send([_prepare(maker, entry) for entry in _untaken(entries, taken)])
    result.close()


def _untaken(entries: list[ProcedureEntry], taken: Synchronized[int]) -> Iterator[ProcedureEntry]:
    """The entries that no other process has taken, a few at a time; ``taken`` counts them over all processes."""
    while True:
        with taken.get_lock():
            first = taken.value
            taken.value += AT_ONCE
        if first >= len(entries):
            return
        yield from entries[first : first + AT_ONCE]


def _prepare(maker: Maker, entry: ProcedureEntry) -> Done:
    problems = check_procedure(maker.context, entry)
    if any(problem.severity == "error" for problem in problems) or not maker.has_pictures(entry):
        return entry.id, problems, None, ""
    return entry.id, problems, procedure_page(maker, entry), procedure_json(maker.context, entry)
