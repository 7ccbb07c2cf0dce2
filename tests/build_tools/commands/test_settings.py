"""Every command takes the book that ``mkdocs.yml`` names, in the project or in the folder where it is called."""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.commands import settings as module
from build_tools.commands.command import book_folder
from build_tools.commands.settings import OWN, settings
from build_tools.commands.usage_error import UsageError
from build_tools.environment import ROOT
from tests.builds import SMALL

WITH_PLUGIN = "plugins: [crew-methods]\n"
NOT_GIVEN = argparse.Namespace(book=None)

Write = Callable[[str], Path]


@pytest.fixture
def written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Write:
    """Writes an ``mkdocs.yml`` into a folder of its own, which becomes the present one, beside a folder 'my-book'."""

    def write(text: str) -> Path:
        (tmp_path / "my-book").mkdir(exist_ok=True)
        (tmp_path / "mkdocs.yml").write_text(text, encoding="utf-8")
        monkeypatch.chdir(tmp_path)
        return tmp_path

    return write


def test_the_project_has_its_own_book(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Elsewhere, where no book has its settings, the project's own hold."""
    monkeypatch.chdir(tmp_path)
    found = settings()
    assert (found.file, found.book, found.site) == (OWN, ROOT / "procedures", ROOT / "site")
    assert book_folder(NOT_GIVEN) == ROOT / "procedures"


def test_the_project_s_own_settings_may_name_another_folder(written: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who changes ``docs_dir`` in the project gets that book from each command."""
    folder = written(f"docs_dir: my-book\nsite_dir: out\nsite_url: https://book.example\n{WITH_PLUGIN}")
    monkeypatch.setattr(module, "OWN", folder / "mkdocs.yml")
    found = settings()
    assert (found.book, found.site, found.site_url) == (folder / "my-book", folder / "out", "https://book.example/")
    assert book_folder(NOT_GIVEN) == folder / "my-book"


def test_settings_that_are_no_file_are_not_waited_for(written: Write) -> None:
    """A pipe or a device that they inherit from is named."""
    folder = written(f"INHERIT: above.yml\ndocs_dir: my-book\n{WITH_PLUGIN}")
    for make in (os.mkfifo, lambda path: path.symlink_to("/dev/zero")):
        make(folder / "above.yml")
        with pytest.raises(
            UsageError, match=r"above\.yml: is no file that can be read, but a folder, a pipe or a device"
        ):
            settings()
        (folder / "above.yml").unlink()


def test_settings_of_another_site_are_not_those_of_a_book(written: Write) -> None:
    """The present folder may be that of any other site."""
    written("docs_dir: my-book\nplugins: [search]\n")
    assert settings().file == OWN


def test_settings_are_inherited_and_may_hold_the_engine_s_own_tags(written: Write) -> None:
    """What stands in the file above counts where the file itself says nothing."""
    folder = written(f"INHERIT: base.yml\nextra: !ENV [NOT_SET, none]\n{WITH_PLUGIN}")
    (folder / "base.yml").write_text("docs_dir: my-book\nsite_name: !!python/name:os.name\n", encoding="utf-8")
    found = settings()
    assert (found.book, found.site_name) == (folder / "my-book", "Crew Methods")


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("docs_dir: [my-book\n", "mkdocs.yml: cannot be read: while parsing a flow sequence"),
        (f"docs_dir: !ENV BOOK\n{WITH_PLUGIN}", "'docs_dir' of mkdocs.yml cannot be read here: name the folder, with "),
        ("- a list\n", "mkdocs.yml: holds no settings"),
    ],
)
def test_settings_that_cannot_be_read_are_told(written: Write, text: str, message: str) -> None:
    """No slip in the settings ends in a traceback."""
    written(text)
    with pytest.raises(UsageError) as told:
        settings()
    assert message in str(told.value)


@pytest.mark.slow
def test_a_book_of_its_own_is_checked_and_written_to_where_it_lies(written: Write) -> None:
    """A new procedure goes into the book of the present folder, and nothing into the project's."""
    folder = written(f"docs_dir: my-book\n{WITH_PLUGIN}")
    shutil.copytree(SMALL, folder / "my-book", dirs_exist_ok=True)

    def run(*words: str) -> tuple[int, str]:
        command = [sys.executable, "-m", "build_tools", *words]
        environment = {**os.environ, "PYTHONPATH": str(ROOT)}
        ran = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False)
        return ran.returncode, ran.stdout + ran.stderr

    code, said = run("new", "plumbing/set-tub")
    assert (code, said.partition(" is written: ")[0]) == (0, "my-book/plumbing/set-tub.yaml")
    assert (folder / "my-book/plumbing/set-tub.yaml").is_file()
    assert not (ROOT / "procedures/plumbing/set-tub.yaml").exists()
    code, said = run("check")
    assert code == 1
    assert "my-book/plumbing/set-tub.yaml:8:10: error: 'FILL IN' still stands here\n" in said
