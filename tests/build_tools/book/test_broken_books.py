"""Every check of the book: one change to a good small book, and the exact lines that must come out of it.

``small/`` is a good book; ``broken_books.yaml`` and, for slips of writing, ``broken_yaml.yaml`` have the changes to it.
The whole text is compared.
"""

from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path

import pytest
import yaml

from build_tools.book.checks import check_book
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.load import load_book
from calculators.registry import CALCULATORS

FEW = {name: CALCULATORS[name] for name in ("wax-ring", "lock-schedule")}
SMALL = Path(__file__).parent / "small"


@dataclass(frozen=True)
class Case:
    """One mistake: in ``file`` the text ``old`` becomes ``new``; ``expected`` are the diagnostics with their hints."""

    name: str
    file: str
    old: str
    new: str
    expected: list[str]


def diagnostics_of(folder: Path) -> list[str]:
    """All that reading and checking finds, as it is shown."""
    loaded = load_book(folder)
    return [str(diagnostic) for diagnostic in sorted(set(loaded.diagnostics + check_book(loaded.book, FEW)))]


def broken(tmp_path: Path, file: str, old: str, new: str) -> list[str]:
    """The diagnostics of the small book with one change; paths are shown without the folder."""
    folder = tmp_path / "small"
    shutil.copytree(SMALL, folder)
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file}"
    path.write_text(text.replace(old, new), encoding="utf-8")
    return [diagnostic.removeprefix("small/") for diagnostic in diagnostics_of(folder)]


def test_the_small_book_is_good() -> None:
    """Without a change there is nothing to say, so that each case shows its own mistake alone."""
    assert diagnostics_of(SMALL) == []


CASES = [
    Case(**case)
    for name in ("broken_books.yaml", "broken_yaml.yaml")
    for case in yaml.safe_load((SMALL.parent / name).read_text(encoding="utf-8"))
]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_mistake_is_named_by_its_line(case: Case, tmp_path: Path) -> None:
    """The diagnostics are these and no others."""
    assert broken(tmp_path, case.file, case.old, case.new) == case.expected


def test_a_procedure_never_takes_the_place_of_the_page_of_its_trade(tmp_path: Path) -> None:
    """Both would be ``plumbing/index.html``."""
    folder = shutil.copytree(SMALL, tmp_path / "small")
    (folder / "plumbing" / "set-bowl.yaml").rename(folder / "plumbing" / "index.yaml")
    assert (
        "small/plumbing/index.yaml:1:1: error: a procedure cannot be called 'index': it would take the place of the "
        "page of its trade\n    rename the file to what is done, like 'set-faucet.yaml'"
    ) in diagnostics_of(folder)


def test_a_mistake_stands_on_its_own_lines() -> None:
    """Nothing of a file gets to forge a line of another one, clear the screen or turn the text around."""
    hostile = "x\x1b[2J\u202e\n\u2066"
    shown = "x\\u001b[2J\\u202e\\n\\u2066"
    assert str(Diagnostic(hostile, 1, 2, "error", hostile, hostile)) == f"{shown}:1:2: error: {shown}\n    {shown}"
