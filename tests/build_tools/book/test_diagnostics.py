"""How mistakes are listed: the first of each file, the rest counted, and no dearer for being many."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path
from types import FrameType
from typing import Any

from build_tools.book.checks import check_book
from build_tools.book.diagnostics import Diagnostic, count_line, listed
from build_tools.book.load import load_book
from build_tools.book.suggestions import did_you_mean

SMALL = Path(__file__).parent / "small"


def many(file: str, count: int) -> list[Diagnostic]:
    """So many errors, one to a line."""
    return [Diagnostic(file, line, 1, "error", "is wrong") for line in range(1, count + 1)]


def test_past_fifty_the_rest_of_a_file_is_counted() -> None:
    """Each file shows its own first mistakes, so that a bad one does not hide those of another."""
    found = [*many("a.yaml", 1051), *many("b.yaml", 51), *many("c.yaml", 50)]
    shown = [str(diagnostic) for diagnostic in listed(reversed(found))]
    assert [line for line in shown if line.startswith("a.yaml")][-2:] == [
        "a.yaml:50:1: error: is wrong",
        "a.yaml:51:1: error: and 1,001 more mistakes from here on",
    ]
    assert [line for line in shown if line.startswith("b.yaml")][50:] == [
        "b.yaml:51:1: error: and 1 more mistake from here on"
    ]
    assert len([line for line in shown if line.startswith("c.yaml")]) == 50
    assert count_line(found) == "1152 errors"


def test_a_warning_in_the_rest_does_not_make_an_error_of_it() -> None:
    """A rest of warnings is one; where an error is among them it counts."""
    warnings = [Diagnostic("a.yaml", line, 1, "warning", "is odd") for line in range(1, 60)]
    assert listed(warnings)[-1].severity == "warning"
    assert listed([*warnings, Diagnostic("a.yaml", 70, 1, "error", "is wrong")])[-1].severity == "error"


def test_the_nearest_name_is_one_that_was_meant() -> None:
    """One letter wrong, two in a long name, words in another order; not whatever shares some letters."""
    names = ["form-stakes", "tape-measure", "toilet-set", "wax-ring", "approved_by", "hang"]
    wanted = {
        "foil-tape": "",
        "tape-mesure": "tape-measure",
        "taep-measrue": "tape-measure",
        "set-toilet": "toilet-set",
        "toilet": "toilet-set",
        "Wax ring": "wax-ring",
        "approved-by": "approved_by",
        "hanging": "hang",
        "ring-of-wax": "",
        "": "",
        "x" * 100_000: "",
    }
    assert {given: did_you_mean(given, names) for given in wanted} == {
        given: f"did you mean '{name}'?" if name else "" for given, name in wanted.items()
    }


def work_for(folder: Path, count: int) -> int:
    """The lines of code that run for a book with so many new terms, each with two references that lead nowhere.

    Lines and not seconds: the same on a busy machine as on one at rest.
    """
    lines = (
        f"new-term-{n}:\n  title: Term {n}\n  means: See [](term:new-turm-{n}) and [](tool:none-{n}).\n"
        for n in range(count)
    )
    (folder / "reference/terms/more.yaml").write_text("".join(lines), encoding="utf-8")
    run = 0

    def look(_frame: FrameType, event: str, _given: object) -> Any:
        nonlocal run
        run += event == "line"
        return look

    before = sys.gettrace()
    sys.settrace(look)
    try:
        loaded = load_book(folder)
        found = loaded.diagnostics + check_book(loaded.book, {})
    finally:
        sys.settrace(before)
    assert len(found) >= 2 * count
    return run


def test_many_mistakes_cost_no_more_than_each_by_itself(tmp_path: Path) -> None:
    """Four times as many take some four times the work, where comparing each with every other takes sixteen times."""
    folder = Path(shutil.copytree(SMALL, tmp_path / "small"))
    none, few, many = (work_for(folder, count) for count in (1, 100, 400))
    assert few - none < many - none < 6 * (few - none)
