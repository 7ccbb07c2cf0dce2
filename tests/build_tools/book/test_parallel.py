"""A parallel map over the cores: every item once, nothing lost that cannot be done later."""

from __future__ import annotations

import os
import shutil
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from build_tools.book.load import load_book
from build_tools.book.parallel import MIN_ITEMS, in_background, parallel_map
from build_tools.environment import ROOT
from tests.builds import SMALL

ITEMS = list(range(3 * MIN_ITEMS))


def _squared(number: int) -> int:
    return number * number


def test_every_item_is_worked_once() -> None:
    assert sorted(parallel_map(_squared, ITEMS)) in ([_squared(number) for number in ITEMS], [])


def test_few_items_are_left_to_be_done_later() -> None:
    assert parallel_map(_squared, ITEMS[: MIN_ITEMS - 1]) == []


def test_a_process_that_dies_leaves_its_items_out() -> None:
    """Its results are missing, and those of this process are there."""
    here = os.getpid()

    def works_here_alone(number: int) -> int:
        if os.getpid() != here:
            os._exit(1)
        return number

    assert set(parallel_map(works_here_alone, ITEMS)) <= set(ITEMS)


def test_a_book_read_on_every_core_is_the_book_read_alone(tmp_path: Path) -> None:
    shutil.copytree(SMALL, tmp_path / "small")
    (written,) = (tmp_path / "small/plumbing").glob("set-bowl.yaml")
    for number in range(2 * MIN_ITEMS):
        shutil.copy(written, written.with_name(f"set-bowl-{number}.yaml"))
    wrong = written.with_name("set-bowl-7.yaml")
    wrong.write_text("title: a\ntitle: b\n", encoding="utf-8")
    loaded = load_book(tmp_path / "small")
    alone = load_book(written.parent.parent).book.procedures["set-bowl"]
    assert len(loaded.book.procedures) >= 2 * MIN_ITEMS - 1
    assert all(entry.item == alone.item for id, entry in loaded.book.procedures.items() if id.startswith("set-bowl-"))
    (diagnostic,) = loaded.diagnostics
    assert str(diagnostic).startswith("small/plumbing/set-bowl-7.yaml:2:1: error: 'title' is written twice")


def test_background_work_is_done_when_the_block_ends(tmp_path: Path) -> None:
    """What a background process leaves behind is there afterwards."""
    left = tmp_path / "left.txt"
    with in_background(lambda: left.write_text("done", encoding="utf-8")):
        pass
    assert left.read_text(encoding="utf-8") == "done"


KILLED = """
import os, signal, socket, sys
from build_tools.book import parallel
from build_tools.book.parallel import in_background, parallel_map

parallel._core_count = lambda: 3
here = os.getpid()
held = socket.create_server(("127.0.0.1", 0))
port = held.getsockname()[1]

def work(number):
    if os.getpid() == here:
        signal.pause()
    return b"x" * 100_000

def wait(seconds=60):
    if os.getpid() != here:
        print(port, flush=True)
        signal.alarm(seconds)
        signal.pause()

if sys.argv[1] == "parallel map":
    parallel_map(work, range(200), lambda: (print(port, flush=True), signal.pause()))
else:
    with in_background(wait):
        signal.pause()
"""
"""A process with a port of its own that maps in parallel, whose results are larger than a pipe holds, and waits."""


@pytest.fixture
def killed() -> Iterator[Callable[[str], tuple[int, int]]]:
    """Kills the process outright once it has handed its work out; its group and its port."""
    groups = []

    def start_and_kill(way: str) -> tuple[int, int]:
        command = [sys.executable, "-c", KILLED, way]
        with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, start_new_session=True) as process:
            assert process.stdout
            port = int(process.stdout.readline())
            process.kill()
        groups.append(process.pid)
        return process.pid, port

    yield start_and_kill
    for group in groups:
        with suppress(ProcessLookupError):
            os.killpg(group, signal.SIGKILL)


def _has_ended(group: int) -> bool:
    try:
        os.killpg(group, 0)
    except ProcessLookupError:
        return True
    return False


def test_no_process_outlives_the_one_that_was_killed(killed: Callable[[str], tuple[int, int]]) -> None:
    """One that could not hand its results over to anybody would wait for ever."""
    group, _ = killed("parallel map")
    until = time.monotonic() + 30
    while not _has_ended(group):
        assert time.monotonic() < until
        time.sleep(0.05)


def test_a_port_is_free_when_its_owner_was_killed(killed: Callable[[str], tuple[int, int]]) -> None:
    """Though a process that it forked is still at work."""
    group, port = killed("beside")
    socket.create_server(("127.0.0.1", port)).close()
    assert not _has_ended(group)
