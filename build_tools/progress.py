"""Runs a program that takes a while and shows what it is at, so that nobody waits before a silent screen."""

from __future__ import annotations

import os
import queue
import re
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import PurePath
from typing import TextIO

QUIET_SECONDS = 2.0
"""Where the screen cannot be written over (a log), this long between two lines."""


def doing(line: str) -> str | None:
    """What pip or apt is at, from one line of its output; None when the line says nothing of it.

    >>> doing("Collecting mkdocs==1.6.1 (from crew-methods==0.1.0)")
    'mkdocs==1.6.1'
    >>> doing("  Downloading fonttools-4.68.0-py3-none-any.whl (5.5 MB)")
    'fonttools-4.68.0-py3-none-any.whl (5.5 MB)'
    >>> doing("Installing collected packages: a, b, c")
    'unpacking 3 packages'
    >>> doing("Successfully installed a-1 b-2")
    """
    line = line.strip()
    if line.startswith("Installing collected packages:"):
        return f"unpacking {line.count(',') + 1} packages"
    if found := re.match(r"(?:Collecting|Unpacking|Setting up) (\S+)", line):
        return found[1]
    if found := re.match(r"(?:Downloading|Processing) (\S+)(?: (\([^)]*B\)))?", line):
        return " ".join(part for part in (PurePath(found[1]).name, found[2]) if part)
    if line.startswith(("Installing build dependencies", "Preparing editable metadata", "Building editable")):
        return "the build of this project"
    if line.startswith("Get:"):
        return " ".join(line.split()[4:5])
    return None


class Progress:
    """One line that is written over on a screen; on anything else a line every few seconds."""

    def __init__(self, title: str, stream: TextIO | None = None, clock: Callable[[], float] = time.monotonic) -> None:
        self.title = title
        self._stream = stream or sys.stderr
        self._clock = clock
        self._began = clock()
        self._shown = -QUIET_SECONDS
        self._last = ""

    def show(self, what: str) -> None:
        """Say what is being done, with the seconds since the beginning."""
        passed = self._clock() - self._began
        text = f"[{passed:4.0f} s] {self.title}: {what}"
        if self._stream.isatty():
            self._stream.write(f"\r\x1b[K{text[:100]}")
        elif passed - self._shown >= QUIET_SECONDS and text != self._last:
            self._stream.write(text + "\n")
            self._shown = passed
            self._last = text
        self._stream.flush()

    def end(self, what: str) -> None:
        """The closing line."""
        start = "\r\x1b[K" if self._stream.isatty() else ""
        self._stream.write(f"{start}[{self._clock() - self._began:4.0f} s] {self.title}: {what}\n")
        self._stream.flush()


def run(title: str, command: Sequence[str], environment: Mapping[str, str] | None = None) -> tuple[int, str]:
    """Run the program with its progress shown; its exit code and all that it printed."""
    progress = Progress(title)
    progress.show("starting")
    printed: list[str] = []
    with subprocess.Popen(
        command,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        encoding="utf-8",
        errors="replace",
        env={**os.environ, **(environment or {})},
    ) as process:
        try:
            _follow(process, progress, printed)
        except BaseException:
            process.terminate()
            raise
    progress.end("done" if process.returncode == 0 else "failed")
    return process.returncode, "".join(printed)


def _follow(process: subprocess.Popen[str], progress: Progress, printed: list[str]) -> None:
    """Collect the lines until the program ends, and show each second that it is alive."""
    lines: queue.Queue[str | None] = queue.Queue()
    threading.Thread(target=_read, args=(process, lines), daemon=True).start()
    what = "starting"
    while True:
        try:
            line = lines.get(timeout=1.0)
        except queue.Empty:
            progress.show(what)
            continue
        if line is None:
            return
        printed.append(line)
        what = doing(line) or what
        progress.show(what)


def _read(process: subprocess.Popen[str], lines: queue.Queue[str | None]) -> None:
    assert process.stdout is not None
    for line in process.stdout:
        lines.put(line)
    lines.put(None)
