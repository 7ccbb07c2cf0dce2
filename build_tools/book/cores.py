"""Shares work out among the cores of the machine, in processes forked from this one."""

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
    helpers: list[tuple[ForkProcess, Connection]] = []
    for _ in range(1, cores):
        ours, theirs = fork.Pipe(duplex=False)
        inherited = [*(each for _, each in helpers), ours]
        process = fork.Process(target=_help, args=(work, items, taken, at_once, theirs, inherited), daemon=True)
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
    inherited: Sequence[Connection],
) -> None:
    parent = os.getppid()
    _end_at_once()
    for theirs in inherited:
        theirs.close()  # else this process would be a reader of its own results, and wait for itself without end
    with suppress(Exception):  # what fails is done again in the process that forked this one, and told there
        left = takewhile(lambda _: os.getppid() == parent, _untaken(items, taken, at_once))
        results.send([work(item) for item in left])
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
    _let_go_of_sockets()


def _let_go_of_sockets() -> None:
    """Leave the ports of the preview to the process that forked this one: they are free once that has ended.

    In the place of each stands a file without content, so that what still knows its number closes nothing else.
    """
    nothing = os.open(os.devnull, os.O_RDWR)
    for number in [int(each.name) for each in Path("/proc/self/fd").iterdir()]:
        with suppress(OSError):  # the list itself was one of them
            if number > 2 and stat.S_ISSOCK(os.fstat(number).st_mode):
                os.dup2(nothing, number, inheritable=False)
    os.close(nothing)


def _untaken(items: Sequence[Item], taken: Synchronized[int], at_once: int) -> Iterator[Item]:
    """The items that no other process has taken, a few at a time; ``taken`` counts them over all processes."""
    while True:
        with taken.get_lock():
            first = taken.value
            taken.value += at_once
        if first >= len(items):
            return
        yield from items[first : first + at_once]
