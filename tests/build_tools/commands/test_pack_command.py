"""The command ``pack`` as a person meets it."""

from __future__ import annotations

import resource
from pathlib import Path

import pytest

from build_tools import environment
from build_tools.commands import pack
from build_tools.commands.cli import main, read
from build_tools.commands.site import BOOK
from build_tools.commands.usage_error import UsageError
from tests.builds import change, copy_book

pytestmark = pytest.mark.slow


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
    with pytest.raises(
        UsageError, match="there is no procedure 'toilet-st' in the book\n    did you mean 'toilet-set'"
    ):
        pack.packed(BOOK, "toilet-st", tmp_path)


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    """Nothing is written over a folder, or into one that is not there."""
    for place in (tmp_path, tmp_path / "none" / "lock.html"):
        _, options = read(["pack", "lockset-install", "--to", str(place)])
        with pytest.raises(UsageError, match="is no file that could be written"):
            pack.run(options)


def test_a_book_with_mistakes_is_not_packed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each mistake is named by its place, and nothing is written."""
    book = copy_book(tmp_path)
    change(book / "plumbing" / "toilet-set.yaml", "\nwho: helper", "\nwho: helpr")
    _, options = read(["pack", "lockset-install", "--book", str(book), "--to", str(tmp_path / "lock.html")])
    assert pack.run(options) == 1
    assert "plumbing/toilet-set.yaml:" in capsys.readouterr().err
    assert not (tmp_path / "lock.html").exists()


def test_no_source_of_the_book_is_written_over(tmp_path: Path) -> None:
    """Neither a file of it, nor by a link, nor with a new name."""
    book = copy_book(tmp_path)
    source = book / "plumbing" / "toilet-set.yaml"
    before = source.read_bytes()
    (tmp_path / "linked.html").symlink_to(source)
    for target in (source, book / "new.html", tmp_path / "linked.html"):
        _, options = read(["pack", "toilet-set", "--book", str(book), "--to", str(target)])
        with pytest.raises(UsageError, match="lies in the book, whose sources are kept"):
            pack.run(options)
    assert source.read_bytes() == before
    assert not (book / "new.html").exists()


def test_a_full_disk_is_told_and_leaves_the_file_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The file is named, a device stays a device, and what lay there lies there still."""
    monkeypatch.setattr(environment, "enter", lambda *_: None)
    monkeypatch.setattr(pack, "packed", lambda *_: "x" * 100_000)
    assert main(["pack", "toilet-set", "--to", "/dev/full"]) == 2
    assert capsys.readouterr().err == "/dev/full: No space left on device\n"
    assert Path("/dev/full").is_char_device()
    target = tmp_path / "toilet.html"
    target.write_text("before", encoding="utf-8")
    limit = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (50_000, limit[1]))
    try:
        assert main(["pack", "toilet-set", "--to", str(target)]) == 2
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limit)
    assert capsys.readouterr().err == f"{target}: File too large\n"
    assert [(path.name, path.read_text()) for path in tmp_path.iterdir()] == [("toilet.html", "before")]
