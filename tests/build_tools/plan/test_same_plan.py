"""One job has one plan: on an idle machine and on a busy one, in every run."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from build_tools.environment import ROOT

PLANS = [sys.executable, "-m", "tests.build_tools.plan.every_plan"]
BUSY = [sys.executable, "-c", "while True: pass"]


@contextmanager
def busy_cores() -> Iterator[None]:
    """A process on each core that does nothing, as fast as it can."""
    busy = [subprocess.Popen(BUSY) for _ in range(os.cpu_count() or 1)]
    try:
        yield
    finally:
        for process in busy:
            process.kill()
            process.wait()


def every_plan(seed: str) -> str:
    """All plans of the book's jobs, worked out in a run of its own, in which sets of words have another order."""
    settings = {**os.environ, "PYTHONHASHSEED": seed}
    return subprocess.run(PLANS, cwd=ROOT, env=settings, capture_output=True, text=True, check=True).stdout


def test_plans_are_the_same_bytes_at_rest_and_under_load() -> None:
    at_rest = every_plan("1")
    with busy_cores():
        busy = every_plan("2")
    assert at_rest == busy
    assert '"proved": false' in at_rest, "no search was cut short: the test tries nothing"
