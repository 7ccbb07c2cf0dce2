"""Runs MkDocs as a program of its own, with the book's settings."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path

from build_tools.environment import ROOT

SETTINGS = ROOT / "mkdocs.yml"
BOOK = ROOT / "procedures"
QUIET = {"NO_MKDOCS_2_WARNING": "1", "DISABLE_MKDOCS_2_WARNING": "true"}
"""The theme's notice on its own future stays out of the output; DEVELOPERS.md has what it says."""


def mkdocs(arguments: Sequence[str], book: Path) -> int:
    """Run MkDocs with these arguments in the checkout, and wait; its exit code."""
    if book == BOOK:
        return _run([*arguments, "--config-file", str(SETTINGS)])
    with tempfile.TemporaryDirectory() as folder:
        return _run([*arguments, "--config-file", str(settings_for(book, Path(folder)))])


def settings_for(book: Path, folder: Path, **extra: str) -> Path:
    """Write an ``mkdocs.yml`` into the folder that is the project's own, but for a book that lies elsewhere.

    ``extra`` is put into the settings of that name: for whom the site is made, and the day that jobs are planned from.
    """
    lines = {
        "INHERIT": str(SETTINGS),
        "docs_dir": str(book),
        "site_dir": str(folder / "site"),
        "watch": [],
        "extra": extra,
    }
    file = folder / "mkdocs.yml"
    # JSON is YAML, and quotes any path rightly.
    file.write_text("".join(f"{name}: {json.dumps(value)}\n" for name, value in lines.items()), encoding="utf-8")
    return file


def _run(arguments: Sequence[str]) -> int:
    process = subprocess.Popen([sys.executable, "-m", "mkdocs", *arguments], cwd=ROOT, env={**os.environ, **QUIET})
    try:
        return process.wait()
    except KeyboardInterrupt:
        # Ctrl-C reaches MkDocs as well; it is given time to put its things away.
        try:
            process.wait(timeout=5)
        except subprocess.TimeoutExpired:
            process.kill()
        raise
