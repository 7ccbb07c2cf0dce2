"""Files that are wrong as files: in the wrong place, twice the same id, no text, or spoiled."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from build_tools.book.checks import check_book
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.load import DocumentCache, load_book
from build_tools.commands.site import BOOK
from tests.build_tools.book.slips import spoiled

SMALL = Path(__file__).parent / "small"


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A copy of the small book to break."""
    return Path(shutil.copytree(SMALL, tmp_path / "small"))


def reading_diagnostics(folder: Path) -> list[str]:
    """What reading alone finds."""
    return [str(diagnostic) for diagnostic in load_book(folder).diagnostics]


def test_a_procedure_id_in_two_trades_is_named_with_the_first_place(book: Path) -> None:
    """The name of a file is the procedure's id, so it is unique in the whole book."""
    shutil.copy(book / "plumbing/set-bowl.yaml", book / "doors/set-bowl.yaml")
    assert reading_diagnostics(book) == [
        "small/plumbing/set-bowl.yaml:1:1: error: the id 'set-bowl' is taken already by small/doors/set-bowl.yaml:1\n"
        "    give one of them another id"
    ]


def test_an_entry_in_two_files_is_named_with_the_first_place(book: Path) -> None:
    """Each kind of entry may be spread over files, but an id stands once."""
    shutil.copy(book / "reference/terms/terms.yaml", book / "reference/terms/zz.yaml")
    assert reading_diagnostics(book) == [
        "small/reference/terms/zz.yaml:1:1: error: the id 'wax-ring' is taken already by "
        "small/reference/terms/terms.yaml:2\n    give one of them another id"
    ]


@pytest.mark.parametrize("place", ["loose.yaml", "plumbing/deeper/x.yaml", "reference/colours/x.yaml"])
def test_a_file_in_the_wrong_place_is_named(book: Path, place: str) -> None:
    """A file that no page would be made from is a mistake, not silence."""
    (book / place).parent.mkdir(parents=True, exist_ok=True)
    (book / place).write_text("title: x\n", encoding="utf-8")
    (diagnostic,) = reading_diagnostics(book)
    assert diagnostic.startswith(f"small/{place}:1:1: error: stands where the book does not look for it")


def test_a_link_out_of_the_book_is_refused(book: Path, tmp_path: Path) -> None:
    """To a file elsewhere, and to one that is not there; a link within the book is a file."""
    (tmp_path / "secret.yaml").write_text("title: [x\n", encoding="utf-8")
    links = {
        "doors/absent.yaml": tmp_path / "absent.yaml",
        "doors/photo.jpg": tmp_path / "secret.yaml",
        "doors/secret.yaml": Path("../../secret.yaml"),
    }
    for place, target in links.items():
        (book / place).symlink_to(target)
    (book / "reference/terms/more.yml").symlink_to("terms.yaml")
    said = [diagnostic for diagnostic in reading_diagnostics(book) if "taken already" not in diagnostic]
    hint = "put the file itself here"
    assert said == [
        f"small/{place}:1:1: error: is a link out of the book's folder, and is not followed\n    {hint}"
        for place in links
    ]


def test_a_page_written_by_hand_is_named(book: Path) -> None:
    """The book is YAML alone: nothing would lead to a Markdown page."""
    (book / "notes.md").write_text("# Notes\n", encoding="utf-8")
    assert reading_diagnostics(book) == [
        "small/notes.md:1:1: error: nobody can reach this page: the book is YAML alone\n"
        "    write it as a procedure or as an entry of reference, or move it out of this folder"
    ]


def test_text_in_another_encoding_is_named_by_line_and_column(book: Path) -> None:
    """A file saved in another encoding says where the first wrong sign stands."""
    (book / "reference/terms/terms.yaml").write_bytes("wax-ring:\n  title: Größe\n".encode("latin-1"))
    assert reading_diagnostics(book) == [
        "small/reference/terms/terms.yaml:2:12: error: is not UTF-8 text here\n    save the file as UTF-8"
    ]


def test_an_empty_file_says_what_is_wanted(book: Path) -> None:
    """An empty file is no procedure."""
    (book / "plumbing/set-bowl.yaml").write_text("", encoding="utf-8")
    assert reading_diagnostics(book) == [
        "small/plumbing/set-bowl.yaml:1:1: error: holds no fields: the fields of a procedure are wanted, "
        "one 'name: ...' to a line"
    ]


def test_nesting_without_end_is_refused(book: Path) -> None:
    """Depth cannot exhaust the stack."""
    path = book / "plumbing/set-bowl.yaml"
    path.write_text("steps: " + "[" * 200, encoding="utf-8")
    assert reading_diagnostics(book) == ["small/plumbing/set-bowl.yaml:1:47: error: is nested more than 40 deep"]
    path.write_text("steps: " + "[" * 100_000, encoding="utf-8")
    assert reading_diagnostics(book) == ["small/plumbing/set-bowl.yaml:1:1007: error: is nested too deep"]


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    """No book is a mistake with a name."""
    assert reading_diagnostics(tmp_path / "nowhere")[0].endswith("error: there is no such folder")


def test_the_wrong_name_of_a_procedure_file_is_named(book: Path) -> None:
    """The name of a file becomes an address, so its signs are few."""
    (book / "plumbing/set-bowl.yaml").rename(book / "plumbing/Set Bowl.yaml")
    assert reading_diagnostics(book)[0] == (
        "small/plumbing/Set Bowl.yaml:1:1: error: the name of the file, 'Set Bowl.yaml', is not an id: "
        "small letters, digits and single hyphens"
    )


def test_what_is_no_file_of_text_is_refused_by_name_and_never_waited_for(book: Path) -> None:
    """A pipe would be waited for without end, a device read without end, and a loop of links followed without end."""
    trade = book / "plumbing"
    os.mkfifo(trade / "pipe.yaml")
    (trade / "zero.yaml").symlink_to("/dev/zero")
    (trade / "folder.yaml").mkdir()
    (trade / "loop.yaml").symlink_to(trade / "loop.yaml")
    (trade / "nowhere.yaml").symlink_to(trade / "not-there.yaml")
    (book / "around").symlink_to(book)
    no_text = "is no file that can be read, but a folder, a pipe or a device"
    link = "is a link to a folder, and what lies there is not read\n    put the folder itself here"
    assert reading_diagnostics(book) == [
        f"small/around:1:1: error: {link}",
        "small/plumbing/zero.yaml:1:1: error: is a link out of the book's folder, and is not followed\n"
        "    put the file itself here",
        f"small/plumbing/folder.yaml:1:1: error: {no_text}",
        "small/plumbing/loop.yaml:1:1: error: cannot be read: Too many levels of symbolic links",
        "small/plumbing/nowhere.yaml:1:1: error: cannot be read: No such file or directory",
        f"small/plumbing/pipe.yaml:1:1: error: {no_text}",
    ]


def test_a_file_whose_name_is_not_read_is_named(book: Path) -> None:
    """A capital ending was passed over in silence; a name with a line end broke the message in two."""
    trade = book / "plumbing"
    for name in ("SINK.YAML", "tub.Yml", "two\nlines.yaml", "\u202etxt.yaml", f"{'a' * 81}.yaml"):
        (trade / name).write_text("title: x\n", encoding="utf-8")
    Path(os.fsdecode(os.fsencode(trade) + b"/na\xefve.yaml")).write_text("title: x\n", encoding="utf-8")
    (book / "a\x1bb").mkdir()
    (book / "a\x1bb" / "x.yaml").write_text("title: x\n", encoding="utf-8")
    unseen = "the name holds a sign that cannot be seen\n    rename it, with letters, digits and hyphens"
    ending = "is not read\n    rename it: a file of the book ends in '.yaml'"
    found = reading_diagnostics(book)
    assert found[:6] == [
        f"small/a\\u001bb:1:1: error: {unseen}",
        f"small/plumbing/SINK.YAML:1:1: error: ends in '.YAML', and {ending}",
        f"small/plumbing/na\\udcefve.yaml:1:1: error: {unseen}",
        f"small/plumbing/tub.Yml:1:1: error: ends in '.Yml', and {ending}",
        f"small/plumbing/two\\nlines.yaml:1:1: error: {unseen}",
        f"small/plumbing/\\u202etxt.yaml:1:1: error: {unseen}",
    ]
    too_long = f"the name of the file, '{'a' * 81}.yaml', is too long for an id: at most 80 letters"
    assert f"small/plumbing/{'a' * 81}.yaml:1:1: error: {too_long}" in found


def test_a_long_name_of_a_trade_is_refused(book: Path) -> None:
    """The name of a trade becomes that of a folder, and no system makes one of 300 letters."""
    file = book / "reference/trades/trades.yaml"
    name = "a" * 300
    text = f"{name}:\n  title: Long\n  summary: Long.\n  order: 3\n"
    file.write_text(file.read_text(encoding="utf-8") + text, encoding="utf-8")
    assert reading_diagnostics(book) == [
        f"small/reference/trades/trades.yaml:9:1: error: '{name}' is too long for an id: at most 80 letters"
    ]


def test_a_long_name_of_a_picture_is_refused(book: Path) -> None:
    """Asking the system for a file of such a name is an error by itself."""
    file, name = book / "plumbing/set-bowl.yaml", "a" * 300 + ".jpg"
    text = file.read_text(encoding="utf-8")
    photo = f"    materials: [ring]\n    photo: {{file: {name}, alt: The bowl}}\n"
    file.write_text(text.replace("    materials: [ring]\n", photo), encoding="utf-8")
    found = [str(diagnostic) for diagnostic in check_book(load_book(book).book, {})]
    assert "small/plumbing/set-bowl.yaml:57:19: error: the name of this photo is too long: at most 240 letters" in found


def test_a_file_that_is_too_long_is_refused_before_it_is_read(book: Path) -> None:
    """Two megabytes are a hundred times a procedure."""
    (book / "plumbing/set-bowl.yaml").write_text("# " + "x" * 10_000_000, encoding="utf-8")
    assert reading_diagnostics(book) == ["small/plumbing/set-bowl.yaml:1:1: error: is too large: at most 2 MB are read"]


@pytest.mark.parametrize(
    ("old", "new", "place", "field"),
    [
        ("do: Measure the rise.", f"do: {'1,' * 10_001}", "31:9", "steps.1.do"),
        ("hours: 2 h", f"hours: {'½' * 20_001}", "13:10", "labour.hours"),
    ],
)
def test_a_text_of_ten_pages_is_refused(book: Path, old: str, new: str, place: str, field: str) -> None:
    """What reads figures and Markdown takes the square of their length: minutes for a megabyte."""
    file = book / "plumbing/set-bowl.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    assert reading_diagnostics(book) == [
        f"small/plumbing/set-bowl.yaml:{place}: error: '{field}' is too long: at most 20,000 letters"
    ]


def assert_named(diagnostics: list[Diagnostic], file: str, raw: bytes) -> None:
    """Each diagnostic is told on a line of its own and one for its hint, at a place that is there."""
    lines = raw.decode("utf-8-sig", "replace").splitlines()
    for diagnostic in diagnostics:
        assert str(diagnostic).count("\n") == bool(diagnostic.hint)
        assert diagnostic.line >= 1
        assert diagnostic.column >= 1
        if diagnostic.file == file:
            assert diagnostic.line <= len(lines) + 1, diagnostic
            assert diagnostic.line > len(lines) or diagnostic.column <= len(lines[diagnostic.line - 1]) + 2, diagnostic


@pytest.mark.slow
def test_no_spoiled_file_gives_a_traceback(book: Path) -> None:
    """Whatever is cut, doubled, moved or put into a file, the answer is a list of diagnostics with their places."""
    files, cache = sorted(book.rglob("*.yaml")), DocumentCache()
    for number in range(400):
        path = files[number % len(files)]
        good = path.read_bytes()
        raw = spoiled(good, number)
        path.write_bytes(raw)
        loaded = load_book(book, cache)
        assert_named(loaded.diagnostics + check_book(loaded.book), f"small/{path.relative_to(book).as_posix()}", raw)
        path.write_bytes(good)


@pytest.mark.slow
def test_no_file_of_the_book_gives_a_traceback_when_it_is_spoiled(tmp_path: Path) -> None:
    """The same for each file of the real book, as far as reading goes."""
    folder = Path(shutil.copytree(BOOK, tmp_path / "procedures"))
    cache = DocumentCache()
    for number, path in enumerate(sorted(folder.rglob("*.yaml"))):
        good = path.read_bytes()
        for slip in range(4):
            raw = spoiled(good, 1000 + 4 * number + slip)
            path.write_bytes(raw)
            diagnostics = load_book(folder, cache).diagnostics
            assert_named(diagnostics, f"procedures/{path.relative_to(folder).as_posix()}", raw)
        path.write_bytes(good)
