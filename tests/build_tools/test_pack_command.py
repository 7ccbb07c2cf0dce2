"""The command ``pack`` as a person meets it."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.commands import pack
from build_tools.commands.command import Wrong
from build_tools.commands.line import read
from build_tools.commands.site import BOOK
from tests.builds import change, copy_book


def test_it_writes_a_file_and_says_its_size(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The name may come with its folder and ending, as a shell completes it."""
    command, options = read(["pack", "doors/lockset-install.yaml", "--to", str(tmp_path / "lock.html")])
    assert command.run(options) == 0
    text = (tmp_path / "lock.html").read_text(encoding="utf-8")
    size = len(text.encode()) / 1000
    assert capsys.readouterr().out == f"{tmp_path / 'lock.html'}: {size:.0f} KB\n"
    assert "<h1>Install a lockset</h1>" in text
    assert "application/ld+json" not in text


def test_an_unknown_procedure_gets_the_nearest(tmp_path: Path) -> None:
    """The message says what to write instead."""
    with pytest.raises(Wrong, match="there is no procedure 'toilet-st' in the book\n    did you mean 'toilet-set'"):
        pack.packed(BOOK, "toilet-st", tmp_path)


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    """Nothing is written over a folder, or into one that is not there."""
    for place in (tmp_path, tmp_path / "none" / "lock.html"):
        _, options = read(["pack", "lockset-install", "--to", str(place)])
        with pytest.raises(Wrong, match="is no file that could be written"):
            pack.run(options)


def test_a_book_with_mistakes_is_not_packed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each mistake is named by its place, and nothing is written."""
    book = copy_book(tmp_path)
    change(book / "plumbing" / "toilet-set.yaml", "\nwho: helper", "\nwho: helpr")
    _, options = read(["pack", "lockset-install", "--book", str(book), "--to", str(tmp_path / "lock.html")])
    assert pack.run(options) == 1
    assert "plumbing/toilet-set.yaml:" in capsys.readouterr().err
    assert not (tmp_path / "lock.html").exists()
