"""What a run makes once, however many workers it has: the first that asks makes it, the others wait and take it."""

from __future__ import annotations

import fcntl
import hashlib
from collections.abc import Callable
from importlib.metadata import version
from pathlib import Path

import pytest

from build_tools.environment import ROOT


def shared_folder(factory: pytest.TempPathFactory, worker: str) -> Path:
    """The folder of the whole run: that around the folders of its workers, or that of the one process."""
    return factory.getbasetemp() if worker == "master" else factory.getbasetemp().parent


def once(place: Path, make: Callable[[Path], object]) -> Path:
    """What lies at a place of the run's folder, made by the first process that asks.

    A lock is held meanwhile, so that no other sees it before it is whole; where making it fails, the next one tries.
    """
    with place.with_name(f"{place.name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        made = place.with_name(f"{place.name}.made")
        if not made.exists():
            make(place)
            made.touch()
    return place


def solved_plans() -> Path:
    """Where solved plans stay for a later run, each under its problem.

    What else has a say is the planner's code, so the folder has the digest of that for its name.
    """
    made = hashlib.sha256(version("ortools").encode())
    for path in sorted((ROOT / "build_tools" / "plan").rglob("*.py")):
        made.update(path.read_bytes())
    folder = ROOT / ".cache" / "tests" / f"plans-{made.hexdigest()[:16]}"
    folder.mkdir(parents=True, exist_ok=True)
    return folder
