"""One job has one plan: whatever else the machine does, in every run."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

from build_tools.environment import ROOT

PLANS = [sys.executable, "-m", "tests.build_tools.plan.every_plan"]


def started(seed: str, nice: int) -> subprocess.Popen[str]:
    """All plans of the book's jobs, worked out in a run of its own, in which sets of words have another order.

    Every such run has the same one core; with another ``nice`` it has another part of it.
    """

    def on_one_core() -> None:
        os.nice(nice)
        if sys.platform == "linux":
            os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})

    settings = {**os.environ, "PYTHONHASHSEED": seed}
    return subprocess.Popen(PLANS, cwd=ROOT, env=settings, stdout=subprocess.PIPE, text=True, preexec_fn=on_one_core)


@pytest.mark.slow
def test_plans_are_the_same_bytes_however_fast_they_are_made() -> None:
    """Two runs at once: the first is in the way of the second, which has a third of its speed and then the whole."""
    runs = [started("1", 0), started("2", 5)]
    told = [run.communicate()[0] for run in runs]
    assert [run.returncode for run in runs] == [0, 0]
    assert told[0] == told[1]
    assert '"proved": false' in told[0], "no search was cut short: the test tries nothing"
