"""Runs a program to its end with its wall time, its processor time and its peak memory."""

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
    """What a run took: seconds by the clock, seconds of processors, its helpers' with its own, and the most memory in
    MB that its largest process held, helpers counted each on its own. The last two are None where the system does not
    tell.

    The clock shows what a person waits for and moves with whatever else the machine does; the processors' seconds
    hardly do, and count a second core as what it costs.
    """

    seconds: float
    processor_seconds: float | None
    peak_mb: float | None


def timed(command: Sequence[str], folder: Path, settings: Mapping[str, str] | None = None) -> TimedRun:
    """TimedRun the program in that folder; :class:`Failed` when it does not end well."""
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
            processor_seconds, peak = wait(process)
        except BaseException:
            process.kill()
            raise
        seconds = time.perf_counter() - began
        if process.returncode != 0:
            output.seek(0)
            raise Failed("\n".join(output.read().decode(errors="replace").splitlines()[-20:]))
    return TimedRun(seconds, processor_seconds, peak)


def wait(process: subprocess.Popen[bytes]) -> tuple[float | None, float | None]:
    """Wait for the process; its processor seconds and its peak memory in MB, where the system tells them."""
    if sys.platform == "win32":
        process.wait()
        return None, None
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    # Linux counts in KiB, macOS in bytes.
    peak = usage.ru_maxrss / (2**20 if sys.platform == "darwin" else 2**10)
    return usage.ru_utime + usage.ru_stime, peak
