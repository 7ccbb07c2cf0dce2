"""A build that would write what lies there already says so and writes nothing; any change builds again."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.commands import unchanged
from build_tools.commands.settings import settings
from build_tools.commands.unchanged import BuildNote

SETTINGS = "docs_dir: my-book\nplugins: [crew-methods]\n"


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with settings, a book, code and a site."""
    files = {
        "mkdocs.yml": SETTINGS,
        "my-book/doors/lock.yaml": "title: Set a lock\n",
        "my-book/doors/lock.svg": "<svg/>",
        "code/calculators/one.py": "ONE = 1\n",
        "code/pyproject.toml": "",
        "code/constraints.txt": "",
        "site/index.html": "<p>Home</p>",
        "site/doors/lock.html": "<p>Lock</p>",
    }
    for name, text in files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(unchanged, "ROOT", tmp_path / "code")
    last_of(tmp_path).keep()
    return tmp_path


def last_of(place: Path, *options: str) -> BuildNote:
    return BuildNote(settings(), place / "site", options)


def test_what_has_not_changed_stands(place: Path) -> None:
    assert last_of(place).stands()
    os.utime(place / "my-book/doors/lock.yaml")
    assert last_of(place).stands()


def test_other_options_and_another_site_do_not(place: Path) -> None:
    assert not last_of(place, "--strict").stands()
    assert not BuildNote(settings(), place / "other-site", []).stands()


EDITS: dict[str, Callable[[Path], object]] = {
    "a word of the book": lambda at: (at / "my-book/doors/lock.yaml").write_text("title: Set the lock\n"),
    "a picture": lambda at: (at / "my-book/doors/lock.svg").write_text("<svg></svg>"),
    "a file more": lambda at: (at / "my-book/doors/more.yaml").write_text(""),
    "a file less": lambda at: (at / "my-book/doors/lock.svg").unlink(),
    "another name": lambda at: (at / "my-book/doors/lock.yaml").rename(at / "my-book/doors/bolt.yaml"),
    "the settings": lambda at: (at / "mkdocs.yml").write_text(f"site_name: Ours\n{SETTINGS}"),
    "the code": lambda at: (at / "code/calculators/one.py").write_text("ONE = 2\n"),
    "the libraries": lambda at: (at / "code/constraints.txt").write_text("pint==1.0\n"),
    "a page of the site": lambda at: (at / "site/index.html").write_text("<p>Hello</p>"),
    "a page that is gone": lambda at: (at / "site/doors/lock.html").unlink(),
    "a page that nobody made": lambda at: (at / "site/doors/more.html").write_text(""),
    "a note that is cut short": lambda at: [note.write_text("[1") for note in at.glob(".cache/sites/*")],
}


@pytest.mark.parametrize("edit", EDITS.values(), ids=EDITS)
def test_any_change_builds_again(place: Path, edit: Callable[[Path], object]) -> None:
    edit(place)
    assert not last_of(place).stands()


def test_what_is_no_file_is_not_opened(place: Path) -> None:
    """A pipe in the book is not waited for."""
    os.mkfifo(place / "my-book/doors/pipe.svg")
    assert not last_of(place).stands()


def test_what_was_edited_while_it_was_built_is_built_again(place: Path) -> None:
    last = last_of(place, "--strict")
    (place / "my-book/doors/lock.yaml").write_text("title: Another\n")
    last.keep()
    assert not last_of(place, "--strict").stands()


@pytest.mark.parametrize(
    "setting",
    [
        "hooks: [mine.py]",
        "extra_css: [mine.css]",
        "theme: {name: material, custom_dir: mine}",
        "site_author: !ENV NAME",
        "extra: {today: !ENV DAY}",
    ],
)
def test_settings_that_bring_in_other_things_always_build(place: Path, setting: str) -> None:
    (place / "mkdocs.yml").write_text(f"{SETTINGS}{setting}\n")
    last_of(place).keep()
    assert not last_of(place).stands()


def test_another_engine_s_plugin_always_builds(place: Path) -> None:
    (place / "mkdocs.yml").write_text("docs_dir: my-book\nplugins: [crew-methods, search]\n")
    last_of(place).keep()
    assert not last_of(place).stands()
