"""A test that is cut off leaves no process behind."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from build_tools.environment import ROOT

CUT_OFF = """
import os, pathlib, subprocess

def test_it():
    with subprocess.Popen(["sh", "-c", "sleep 600 & echo $! >> {note}; wait"]) as started:
        pathlib.Path("{note}").write_text(f"{{started.pid}}\\n")
        while len(pathlib.Path("{note}").read_text().split()) < 2:
            pass
        os._exit(1)  # as pytest-timeout does
"""


@pytest.mark.slow
def test_what_a_test_that_is_cut_off_has_started_is_ended(tmp_path: Path) -> None:
    """Also what that had started in its turn."""
    note, file = tmp_path / "note", tmp_path / "test_it.py"
    note.touch()
    file.write_text(CUT_OFF.format(note=note), encoding="utf-8")
    command = [sys.executable, "-m", "pytest", "-n", "1", "--max-worker-restart=0", "-p", "tests.left_behind"]
    command += ["-c", os.devnull, "--rootdir", str(tmp_path), str(file)]
    run = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False, timeout=120)
    assert run.returncode == 1, run.stdout + run.stderr
    started = note.read_text().split()
    assert len(started) == 2
    assert [pid for pid in started if Path(f"/proc/{pid}").exists()] == []
