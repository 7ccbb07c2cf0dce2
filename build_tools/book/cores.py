"""Shares work out among the cores of the machine, in processes forked from this one."""

from __future__ import annotations

import multiprocessing
import os
import signal
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from multiprocessing.connection import Connection
from multiprocessing.sharedctypes import Synchronized
from typing import TypeVar

Item = TypeVar("Item")
Result = TypeVar("Result")

FEW = 40
"""Files or pages from which a second process pays."""
AT_ONCE = 5
"""Files or pages that a process takes at a time."""


def shared_out(
    work: Callable[[Item], Result],
    items: Sequence[Item],
    meanwhile: Callable[[], object] = lambda: None,
    *,
    few: int = FEW,
    at_once: int = AT_ONCE,
) -> list[Result]:
    """The results of the work on the items, in no order; none where there are few items or one core.

    ``few`` is the number of items from which a second process pays, ``at_once`` how many of them one takes at a time.

    Nothing may depend on it: where a process fails, its results are missing, and their work is done later, here, where
    the failure can be seen. ``meanwhile`` is other work, which this process does before it takes its part.
    """
    cores = _cores()
    if cores < 2 or len(items) < few:
        return []
    fork = multiprocessing.get_context("fork")
    taken = fork.Value("i", 0)
    helpers = []
    for _ in range(1, cores):
        ours, theirs = fork.Pipe(duplex=False)
        process = fork.Process(target=_help, args=(work, items, taken, at_once, theirs), daemon=True)
        process.start()
        theirs.close()
        helpers.append((process, ours))
    meanwhile()
    done = [work(item) for item in _untaken(items, taken, at_once)]
    for process, ours in helpers:
        with suppress(EOFError):
            done += ours.recv()
        process.join()
    return done


@contextmanager
def beside(work: Callable[[], object]) -> Iterator[None]:
    """Do a work in a process of its own while this one does what stands inside; what it leaves behind are files.

    With one core it is done first.
    """
    if _cores() < 2:
        work()
        yield
        return
    process = multiprocessing.get_context("fork").Process(target=_quietly, args=(work,), daemon=True)
    process.start()
    yield
    process.join()


def _cores() -> int:
    """The cores that this process may fork onto."""
    return len(os.sched_getaffinity(0)) if sys.platform == "linux" else 1


def _help(
    work: Callable[[Item], Result],
    items: Sequence[Item],
    taken: Synchronized[int],
    at_once: int,
    results: Connection,
) -> None:
    _end_at_once()
    with suppress(Exception):  # what fails is done again in the process that forked this one, and told there
        results.send([work(item) for item in _untaken(items, taken, at_once)])
    results.close()


def _quietly(work: Callable[[], object]) -> None:
    _end_at_once()
    with suppress(Exception):
        work()


def _end_at_once() -> None:
    """Leave Ctrl-C to the process that forked this one, and end without a word when that says so."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    for number in (signal.SIGTERM, signal.SIGHUP):
        signal.signal(number, signal.SIG_DFL)


def _untaken(items: Sequence[Item], taken: Synchronized[int], at_once: int) -> Iterator[Item]:
    """The items that no other process has taken, a few at a time; ``taken`` counts them over all processes."""
    while True:
        with taken.get_lock():
            first = taken.value
            taken.value += at_once
        if first >= len(items):
            return
        yield from items[first : first + at_once]
