"""Measures a rebuild as its author meets it: ``mkdocs serve`` runs, one file is saved, the page comes up anew."""

from __future__ import annotations

import os
import queue
import re
import subprocess
import sys
import threading
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from urllib.request import urlopen

from build_tools.bench.measure import Failed, wait

FIRST_BUILD_SECONDS = 600.0
REBUILD_SECONDS = 120.0


@dataclass(slots=True)
class Rebuilds:
    """Seconds of each rebuild, from the server's notice of the change to the order to reload, and the peak memory."""

    seconds: list[float] = field(default_factory=list)
    peak_mb: float | None = None


class Preview:
    """A preview server at work, with its log lines stamped as they come."""

    def __init__(self, settings: Path, port: int, more: Mapping[str, str]) -> None:
        command = [sys.executable, "-m", "mkdocs", "serve", "--dirty", "--config-file", str(settings)]
        self.address = f"http://127.0.0.1:{port}/"
        self._process = subprocess.Popen(
            [*command, "--dev-addr", f"127.0.0.1:{port}"],
            cwd=settings.parent,
            env={**os.environ, **more, "PYTHONUNBUFFERED": "1", "TMPDIR": str(settings.parent)},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
        )
        self._lines: queue.Queue[tuple[float, str]] = queue.Queue()
        self._seen: list[str] = []
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()

    def _read(self) -> None:
        assert self._process.stdout is not None
        with self._process.stdout as log:
            for line in log:
                self._lines.put((time.perf_counter(), line.decode(errors="replace")))
        self._lines.put((time.perf_counter(), ""))

    def wait_for(self, words: str, seconds: float) -> float:
        """When the log says these words; :class:`Failed` when it does not within that time."""
        until = time.perf_counter() + seconds
        while True:
            try:
                at, line = self._lines.get(timeout=max(0.0, until - time.perf_counter()))
            except queue.Empty:
                raise Failed(f"the preview did not say '{words}' in {seconds:.0f} s") from None
            self._seen.append(line)
            if words in line:
                return at
            if not line or "ERROR" in line:
                raise Failed("".join(self._seen[-20:]))

    def page(self, url: str) -> str:
        """A page as the preview serves it."""
        with urlopen(self.address + url, timeout=REBUILD_SECONDS) as answer:
            return str(answer.read().decode())

    def stop(self) -> float | None:
        """End it; its peak memory. A program that a shell started in the background does not hear Ctrl-C."""
        self._process.terminate()
        _, peak = wait(self._process)
        self._reader.join()
        return peak


def measure_rebuilds(settings: Path, port: int, files: Sequence[Path], more: Mapping[str, str]) -> Rebuilds:
    """Serve the book of those settings, and save each of these procedures with a changed summary.

    After each rebuild the page is fetched and must show the change.
    """
    rebuilds = Rebuilds()
    preview = Preview(settings, port, more)
    try:
        preview.wait_for("Serving on", FIRST_BUILD_SECONDS)
        for number, file in enumerate(files):
            mark = f"Saved anew, take {number}."
            text = file.read_text(encoding="utf-8")
            file.write_text(re.sub(r"(?m)^summary: ", f"summary: {mark} ", text, count=1), encoding="utf-8")
            began = preview.wait_for("Detected file changes", REBUILD_SECONDS)
            rebuilds.seconds.append(preview.wait_for("Reloading browsers", REBUILD_SECONDS) - began)
            if mark not in preview.page(f"{file.parent.name}/{file.stem}.html"):
                raise Failed(f"the page of '{file.stem}' does not show what was saved")
    finally:
        rebuilds.peak_mb = preview.stop()
    return rebuilds
