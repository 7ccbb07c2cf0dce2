"""A parallel map over the cores of the machine, in processes forked from this one."""

from __future__ import annotations

import multiprocessing
import os
import signal
import stat
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from itertools import takewhile
from multiprocessing.connection import Connection
from multiprocessing.context import ForkProcess
from multiprocessing.sharedctypes import Synchronized
from pathlib import Path
from typing import TypeVar

Item = TypeVar("Item")
Result = TypeVar("Result")

MIN_ITEMS = 40
"""Files or pages from which a second process pays."""
CHUNK_SIZE = 5
"""Files or pages that a process takes at a time."""


def parallel_map(
    work: Callable[[Item], Result],
    items: Sequence[Item],
    meanwhile: Callable[[], object] = lambda: None,
    *,
    min_items: int = MIN_ITEMS,
    chunk_size: int = CHUNK_SIZE,
) -> list[Result]:
    """The results of the work on the items, in no order; none where there are few items or one core.

    ``min_items`` is the number of items from which a second process pays, ``chunk_size`` how many one takes at a time.

    Nothing may depend on it: where a process fails, its results are missing, and their work is done later, here, where
    the failure can be seen. ``meanwhile`` is other work, which this process does before it takes its part.
    """
    cores = _core_count()
    if cores < 2 or len(items) < min_items:
        return []
    fork = multiprocessing.get_context("fork")
    next_index = fork.Value("i", 0)
    helpers: list[tuple[ForkProcess, Connection]] = []
    for _ in range(1, cores):
        ours, theirs = fork.Pipe(duplex=False)
        inherited = [*(each for _, each in helpers), ours]
        process = fork.Process(
            target=_run_worker, args=(work, items, next_index, chunk_size, theirs, inherited), daemon=True
        )
        process.start()
        theirs.close()
        helpers.append((process, ours))
    meanwhile()
    done = [work(item) for item in _next_chunks(items, next_index, chunk_size)]
    for process, ours in helpers:
        with suppress(EOFError):
            done += ours.recv()
        process.join()
    return done


@contextmanager
def in_background(work: Callable[[], object]) -> Iterator[None]:
    """Do some work in a process of its own while this one does what stands inside; its results are files.

    With one core it is done first.
    """
    if _core_count() < 2:
        work()
        yield
        return
    process = multiprocessing.get_context("fork").Process(target=_run_in_background, args=(work,), daemon=True)
    process.start()
    yield
    process.join()


def _core_count() -> int:
    """The cores that this process may fork onto."""
    return len(os.sched_getaffinity(0)) if sys.platform == "linux" else 1


def _run_worker(
    work: Callable[[Item], Result],
    items: Sequence[Item],
    next_index: Synchronized[int],
    chunk_size: int,
    results: Connection,
    inherited: Sequence[Connection],
) -> None:
    parent = os.getppid()
    _leave_signals_to_parent()
    for theirs in inherited:
        theirs.close()  # else this process would be a reader of its own results, and wait for itself without end
    with suppress(Exception):  # what fails is done again in the process that forked this one, and told there
        left = takewhile(lambda _: os.getppid() == parent, _next_chunks(items, next_index, chunk_size))
        results.send([work(item) for item in left])
    results.close()


def _run_in_background(work: Callable[[], object]) -> None:
    _leave_signals_to_parent()
    with suppress(Exception):
        work()


def _leave_signals_to_parent() -> None:
    """Leave Ctrl-C to the process that forked this one, and end without a word when that says so."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    for number in (signal.SIGTERM, signal.SIGHUP):
        signal.signal(number, signal.SIG_DFL)
    _release_sockets()


def _release_sockets() -> None:
    """Leave the ports of the preview to the process that forked this one: they are free once that has ended.

    In the place of each stands a file without content, so that what still knows its number closes nothing else.
    """
    nothing = os.open(os.devnull, os.O_RDWR)
    for number in [int(each.name) for each in Path("/proc/self/fd").iterdir()]:
        with suppress(OSError):  # the list itself was one of them
            if number > 2 and stat.S_ISSOCK(os.fstat(number).st_mode):
                os.dup2(nothing, number, inheritable=False)
    os.close(nothing)


def _next_chunks(items: Sequence[Item], next_index: Synchronized[int], chunk_size: int) -> Iterator[Item]:
    """The items that no other process has taken, a few at a time; ``next_index`` counts them over all processes."""
    while True:
        with next_index.get_lock():
            first = next_index.value
            next_index.value += chunk_size
        if first >= len(items):
            return
        yield from items[first : first + chunk_size]
