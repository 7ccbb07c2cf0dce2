"""Lint and types of the page scripts: what is wrong is named by the piece and the line that an editor opens."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from build_tools.browser.form_script import SCRIPTS
from tests.browser_script import check

FAULTS = {
    "form/2-figures.js": ("crew.unit(1, 2, 3, 4, 5);", "error TS2554"),
    "search/1-words.js": ("const nobodyAsks = unknownName;", "no-unused-vars"),
    "offline/1-state.js": ("if (EDITION.id == null) caches.open(EDITION.bytes);", "eqeqeq"),
    "core.js": ("crew.complete = null;", "error TS2322"),
    "draw.js": ("crew.rad('x');", "error TS2551"),
}
"""By piece: a line at its end, and a rule that refuses it."""


@pytest.mark.slow
def test_a_fault_in_a_piece_is_named_by_its_line(tmp_path: Path) -> None:
    """A fault in each kind of script is found by both tools, and nothing else is found in any."""
    scripts = shutil.copytree(SCRIPTS, tmp_path / "script")
    wanted = set()
    for piece, (line, rule) in FAULTS.items():
        path = scripts / piece
        before = path.read_text(encoding="utf-8")
        path.write_text(f"{before}{line}\n", encoding="utf-8")
        wanted.add((f"script/{piece}:{len(before.splitlines()) + 1}", rule))
    found = check.problems(scripts)
    assert {
        (place, rule) for place, rule in wanted if any(each.startswith(f"{place}:") and rule in each for each in found)
    } == wanted
    assert {each.split(": ")[0].rsplit(":", 1)[0] for each in found} == {place for place, _ in wanted}


def test_a_tool_that_is_missing_is_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Where npm brought nothing the step fails, and says which tool it lacks."""
    monkeypatch.setattr(check, "TOOLS", tmp_path)
    assert check.main() == 1
    assert "'eslint' is missing" in capsys.readouterr().out
