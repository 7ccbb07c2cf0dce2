"""Runs a program to its end with its wall time and its peak memory."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path


class Failed(Exception):
    """A measured program failed; the text holds its last lines."""


@dataclass(frozen=True, slots=True)
class TimedRun:
    """What a run took: seconds by the clock, and the most memory in MB that its largest process held, helpers counted
    each on its own (None where the system does not tell).
    """

    seconds: float
    peak_mb: float | None


def timed(command: Sequence[str], folder: Path, settings: Mapping[str, str] | None = None) -> TimedRun:
    """Run the program in that folder; :class:`Failed` when it does not end well."""
    with tempfile.TemporaryFile() as output:
        began = time.perf_counter()
        process = subprocess.Popen(
            command,
            cwd=folder,
            env={**os.environ, **(settings or {})},
            stdin=subprocess.DEVNULL,
            stdout=output,
            stderr=subprocess.STDOUT,
        )
        try:
            peak = wait(process)
        except BaseException:
            process.kill()
            raise
        seconds = time.perf_counter() - began
        if process.returncode != 0:
            output.seek(0)
            raise Failed("\n".join(output.read().decode(errors="replace").splitlines()[-20:]))
    return TimedRun(seconds, peak)


def wait(process: subprocess.Popen[bytes]) -> float | None:
    """Wait for the process; its peak memory in MB where the system tells it."""
    if sys.platform == "win32":
        process.wait()
        return None
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    # Linux counts in KiB, macOS in bytes.
    return usage.ru_maxrss / (2**20 if sys.platform == "darwin" else 2**10)
