"""README.md and DEVELOPERS.md say what is so: each command in them runs, and each path that they name exists."""

from __future__ import annotations

import re
import shlex
from fnmatch import fnmatch
from functools import cache
from pathlib import Path

import pytest

from build_tools.commands import plan
from build_tools.commands.cli import COMMANDS, main, read
from build_tools.commands.usage_error import UsageError
from build_tools.environment import ROOT
from tests.jobs import two_rooms

pytestmark = pytest.mark.slow

GUIDES = [ROOT / "README.md", ROOT / "DEVELOPERS.md"]
STANDS_FOR = {
    "JOB": "two-rooms",
    "my-job": "two-rooms",
    "PROCEDURE": "toilet-set",
    "FOLDER": ".",
    "wall-paint": "slab-concrete",
    "wall=300 sq ft": "width=12'",
}
"""What the guides write for something of the reader's own, and what is put in its place."""
RUN_BY = {
    "": "test_the_preview_shows_what_is_saved_and_ends_quietly",
    "build": "test_the_book_builds_without_a_warning",
    "build --for crew": "test_the_crew_has_the_rest_of_the_job",
    "test": "test_every_part_runs_and_one_failure_fails_the_run",
    "test --quick": "test_the_quick_run_leaves_out_what_is_slow",
    "test --quick -k wall-paint": "test_the_quick_run_leaves_out_what_is_slow",
    "test --update-golden": "test_a_computed_table",
    "bench --part pages": "test_the_whole_run_measures_each_way_to_build",
}
"""The commands that take long, or this very one, each with the test that runs it or the most of it."""
PREFIX = "python3 -m build_tools"
PLACE = re.compile(r"[\w.<>*-]*(?:/[\w.<>*-]*)+|[\w.<>*-]+\.(?:py|js|css|html|json|jinja|md|txt|toml|yaml|yml)")
"""A word that names a file or a folder."""
NO_PLACE = {"", "/crew/book", "plumbing/my-procedure", "jobs/my-job"}
"""An address of a server, and what the guides make."""
MADE = (".site-new", ".cache")


def code(guide: Path) -> list[str]:
    """Everything that a guide marks as code: between backquotes, or a line of a block; not a program in a fence."""
    text = re.sub(r"(?ms)^ *```.*?^ *```$", "", guide.read_text(encoding="utf-8"))
    blocks = re.findall(r"(?m)^    (\S.*)$", text)
    return [" ".join(one.split()) for one in re.findall(r"`([^`]+)`", text)] + blocks


def commands(guide: Path) -> list[str]:
    """The command lines of a guide, without what stands before the command's name; a bare name is none."""
    found = []
    for text in code(guide):
        words = text.split("#")[0].split("  ")[0].strip()
        if words.startswith((PREFIX, "... ")):
            found.append(words.removeprefix(PREFIX).removeprefix("...").strip())
        elif words.split(" ")[0] in COMMANDS and " " in words:
            found.append(words)
    return [one for one in dict.fromkeys(found) if not one.startswith(".book.")]


COMMAND_LINES = sorted({line for guide in GUIDES for line in commands(guide)})


@pytest.mark.parametrize("line", COMMAND_LINES)
def test_a_command_of_the_guides_runs(
    line: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """In a book with one job, on what is put in place of the reader's own; it does not fail, and says something."""
    if line in RUN_BY:
        read(shlex.split(line))
        assert any(f"def {RUN_BY[line]}(" in path.read_text(encoding="utf-8") for path in files_of_tests())
        return
    words = shlex.split(line)
    if words[0] != "new":
        words = [STANDS_FOR.get(word, word) for word in words]
    if words[0] in ("check", "new", "pack", "plan"):
        words += ["--book", str(two_rooms(tmp_path))]
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(plan, "CACHE", tmp_path)
    try:
        code = main(words)
    except SystemExit as ended:  # --help
        code = int(str(ended.code))
    assert code == 0
    assert "".join(capsys.readouterr())


def test_a_command_that_is_not_there_is_seen() -> None:
    """Reading a line of a guide is a test: what nobody can run does not pass."""
    for line in ("plan --variation late", "build --for nobody", "weave"):
        with pytest.raises((UsageError, SystemExit)):
            read(shlex.split(line))


@cache
def files_of_tests() -> list[Path]:
    """The files of tests, but for this one."""
    return [path for path in (ROOT / "tests").rglob("test_*.py") if path != Path(__file__)]


@cache
def files() -> list[str]:
    """Every file of the project, and every folder with a slash at its end, from the top."""
    found = []
    for top in ROOT.iterdir():
        if top.name in ("build_tools", "calculators", "procedures", "tests", ".ci"):
            inside = [path for path in top.rglob("*") if "node_modules" not in path.parts]
            found += [f"{path.relative_to(ROOT).as_posix()}{'/' * path.is_dir()}" for path in (top, *inside)]
        elif top.is_file():
            found.append(top.name)
    return found


def places(guide: Path) -> list[str]:
    """The files and folders that a guide names."""
    words = [text for text in code(guide) if PLACE.fullmatch(text) and text not in NO_PLACE]
    links = re.findall(r"\]\(([^)#:]+)\)", guide.read_text(encoding="utf-8"))
    return [one for one in dict.fromkeys([*words, *links]) if not one.startswith(MADE)]


def lies(place: str, among: list[str]) -> bool:
    """Whether a file or folder is there, by its path from the top or the end of it."""
    pattern = re.sub(r"<\w+>", "*", place)
    return any(fnmatch(f"/{path}", f"*/{pattern}") or fnmatch(f"/{path}", f"*/{pattern}/") for path in among)


@pytest.mark.parametrize("guide", GUIDES, ids=lambda guide: guide.name)
def test_every_path_of_a_guide_exists(guide: Path, site: Path) -> None:
    """In the project, or in the site that is built from it."""
    built = [path.relative_to(site.parent).as_posix() + "/" * path.is_dir() for path in (site, *site.rglob("*"))]
    found = places(guide)
    assert len(found) > 3
    assert [place for place in found if not lies(place, files()) and not lies(place, built)] == []
