"""Ends what a run leaves behind: a worker that is cut off has no time to end its browsers, servers and commands."""

from __future__ import annotations

import ctypes
import os
import signal
import sys
from pathlib import Path

import pytest

PR_SET_CHILD_SUBREAPER = 36
"""Of Linux's ``prctl``: a process whose parent has ended becomes a child of this one."""


def pytest_configure(config: pytest.Config) -> None:
    """Take in what loses its parent during the run, in the process that starts the workers."""
    if _has_workers(config) and sys.platform == "linux":
        ctypes.CDLL(None).prctl(PR_SET_CHILD_SUBREAPER, 1, 0, 0, 0)


def pytest_unconfigure(config: pytest.Config) -> None:
    """End it, once the workers are gone."""
    if not _has_workers(config) or sys.platform != "linux":
        return
    while left := children(os.getpid()):
        for pid in left:
            os.kill(pid, signal.SIGKILL)
            os.waitpid(pid, 0)  # what it had started is ours after that


def _has_workers(config: pytest.Config) -> bool:
    return not hasattr(config, "workerinput") and bool(config.getoption("numprocesses", None))


def children(pid: int) -> list[int]:
    """The processes that a process has for children."""
    return [int(child) for file in Path(f"/proc/{pid}/task").glob("*/children") for child in file.read_text().split()]
