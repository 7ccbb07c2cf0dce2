"""Builds for the tests: a whole site as the crew builds it, or the pages alone without the engine."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

from build_tools.book.checks import check
from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.commands.site import BOOK, QUIET, settings_for
from build_tools.environment import ROOT
from build_tools.pages.page import Page
from build_tools.pages.pictures import make_pictures
from build_tools.pages.renderer import Renderer
from build_tools.pages.site import make_pages
from calculators.declaration import Calculator
from calculators.registry import CALCULATORS

SMALL = ROOT / "tests" / "build_tools" / "book" / "small"
FEW = {name: CALCULATORS[name] for name in ("wax-ring", "lock-schedule")}
"""The calculators whose sources the small book has."""


def build_site(book: Path, site: Path, kept: Path, *, strict: bool = True) -> Path:
    """Build the site of a book as a program of its own, warnings as errors; ``kept`` is for what takes long to make."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(site)]
    command += ["--strict"] if strict else []
    folder = site.with_name(f"{site.name}-settings")
    folder.mkdir()
    command += ["--config-file", str(settings_for(book, folder, cache=str(kept)))]
    env = {**os.environ, **QUIET}
    run = subprocess.run(command, cwd=ROOT, env=env, capture_output=True, text=True, check=False)
    assert (run.returncode, (run.stdout + run.stderr) if strict or run.returncode else "") == (0, "")
    return site


def copy_book(folder: Path, book: Path = BOOK, *, without: str = "") -> Path:
    """A copy of the book that a test may change, ``without`` the files of that name.

    Its files are as new, so that a preview reads again what is copied over what a test has edited.
    """
    leave_out = shutil.ignore_patterns(without)
    return Path(shutil.copytree(book, folder / "procedures", ignore=leave_out, copy_function=shutil.copy))


def change(file: Path, old: str, new: str) -> None:
    """Change the one place of a file that holds ``old``."""
    text = file.read_text(encoding="utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file.name}"
    file.write_text(text.replace(old, new), encoding="utf-8")


def context_of(book: Path, calculators: dict[str, Calculator] = CALCULATORS) -> Context:
    """A book read, checked and found without errors."""
    loaded = load_book(book)
    context = Context.of(loaded.book, Memo(), calculators)
    diagnostics = loaded.diagnostics + check(context)
    assert [str(diagnostic) for diagnostic in diagnostics if diagnostic.severity == "error"] == []
    return context


def pages_of(book: Path, kept: Path, calculators: dict[str, Calculator] = CALCULATORS) -> dict[str, Page]:
    """The pages of a good book by address, without the engine's frame; ``kept`` is for compressed photos."""
    context = context_of(book, calculators)
    pictures, unreadable = make_pictures(context.book, kept)
    assert unreadable == []
    return {page.url: page for page in make_pages(Renderer(context, pictures, "Crew Methods"))}
