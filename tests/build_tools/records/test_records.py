"""Records in the terminal: files read, put together, told and written as a table."""

from __future__ import annotations

import json
import os
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from build_tools.commands.cli import main
from build_tools.commands.site import BOOK
from build_tools.records.lines import RecordLine, csv_of, lines_of
from build_tools.records.model import Record
from build_tools.records.reading import LARGEST, merged, read_records, without_future_entries

MORNING, NOON = "2026-11-25T14:00:00.000Z", "2026-11-25T18:00:00.000Z"


def item(kind: str, step: str, at: str = MORNING, **given: Any) -> dict[str, Any]:
    """Something entered at a step."""
    return {"kind": kind, "step": step, "at": at, "by": "Wren Okafor", "revision": 2, "print": "aa", **given}


def reading(at: str, text: str, verdict: str) -> dict[str, Any]:
    """A reading of the one measurement."""
    given = {"name": "m1", "what": "Rough-in", "limits": "12 in", "text": text, "value": 12.0, "verdict": verdict}
    return item("reading", "place", at, **given)


def record(items: list[dict[str, Any]], **changes: Any) -> dict[str, Any]:
    """A record of a procedure of two steps, with its checks at the end."""
    measures = [{"name": "m1", "what": "Rough-in", "limits": "12 in"}]
    steps = [
        {"id": "place", "title": "Measure the place.", "print": "aa", "measures": measures, "hold": None},
        {"id": "set", "title": "Set the bowl.", "print": "bb", "measures": [], "hold": "Lead's look"},
        {"id": "acceptance", "title": "It is done when", "print": "cc", "measures": [], "hold": None},
    ]
    given: dict[str, Any] = {
        "format": "crew-methods-record",
        "version": 1,
        "taken": MORNING,
        "job": {"id": "studio", "title": "Garden studio"},
        "space": {"id": "bath", "title": "Bath"},
        "procedure": {"id": "toilet-set", "title": "Set a toilet", "revision": 2},
        "steps": steps,
        "items": items,
    }
    return given | changes


def read(given: dict[str, Any]) -> Record:
    """The record as the model has it."""
    return Record.model_validate_json(json.dumps(given))


def states(given: Record) -> list[tuple[str, str, str]]:
    """Each line's step, kind and state."""
    return [(line.step, line.kind, line.state) for line in lines_of(given)]


def test_what_is_missing_is_said() -> None:
    """Steps, readings and hold points without an entry stand in the list as well."""
    assert states(read(record([]))) == [
        ("1", "step", "open"),
        ("1", "reading", "missing"),
        ("2", "step", "open"),
        ("2", "hold", "open"),
        ("", "step", "open"),
    ]


def test_a_step_that_changed_and_one_that_is_gone() -> None:
    """A tick with an older print says so; what hangs on a step that is gone is not lost."""
    items = [item("tick", "place", done=True), item("tick", "set", done=True), item("note", "old", text="cracked")]
    found = states(read(record(items)))
    assert ("1", "step", "done") in found
    assert ("2", "step", "changed since") in found
    assert ("", "note", "no longer in the procedure") in found


def test_the_later_entry_counts() -> None:
    """Of two devices the later reading stays, in whichever order the files are read."""
    first = read(record([reading(MORNING, "14", "outside"), item("tick", "place", done=True)]))
    second = read(record([reading(NOON, "12", "pass")], taken=NOON))
    for files in ([first, second], [second, first]):
        (work,) = merged(files)
        assert ("1", "reading", "pass") in states(work)
        assert ("1", "step", "done") in states(work)


def test_other_places_stay_apart() -> None:
    """The same procedure in two spaces is two works."""
    other = record([], space={"id": "guest", "title": "Guest bath"})
    assert [work.space.id for work in merged([read(other), read(record([]))])] == ["bath", "guest"]


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("-1/8 in", "-1/8 in"),
        ("+1/4", "+1/4"),
        ("=1+1", "'=1+1"),
        ("-2+3+cmd|' /C'!A0", "'-2+3+cmd|' /C'!A0"),
        ("@sum", "'@sum"),
        ("5' 3\"", '"5\' 3"""'),
        ("a, b", '"a, b"'),
        ("-2-1/2 in", "'-2-1/2 in"),
        ("-10 °F", "-10 °F"),
        ("\n=1+1", '"\'\n=1+1"'),
        (" \t\u00a0\ufeff@sum", '"\' \t\u00a0\ufeff@sum"'),
        ("\tpipe", '"\'\tpipe"'),
        ("＝1+1", "'＝1+1"),
        ("－1", "'－1"),
        ("rods;=1+1", '"rods;\'=1+1"'),
        ("cut;-1/8 in", '"cut;-1/8 in"'),
        ("see below\n+cmd|' /C'!A0", "\"see below\n'+cmd|' /C'!A0\""),
        ('"=1+1', '"\'""=1+1"'),
        ("-1\n=1", '"-1\n\'=1"'),
    ],
)
def test_a_cell(text: str, cell: str) -> None:
    """Figures stay figures; what a spreadsheet would run is text; commas and quotes are quoted."""
    line = RecordLine("", "", "", "", "", "", "note", entry=text)
    assert csv_of([line]).split("\r\n")[1] == f",,,,,,note,,,{cell},,,"


def test_a_look_of_somebody_else_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Whose look it was not stands behind the name, in the table and in the terminal."""
    look = item("hold", "set", looked="Wren Okafor", role="not the crew lead", when="2026-11-25T08:00", passed=True)
    work = read(record([look]))
    [line] = [line for line in lines_of(work) if line.kind == "hold"]
    assert (line.entry, line.state) == ("Wren Okafor, not the crew lead, 2026-11-25 08:00", "passed by another")
    (tmp_path / "one.json").write_text(json.dumps(record([look])), encoding="utf-8")
    assert main(["records", str(tmp_path)]) == 0
    told = f"    hold after step 2 looked at by somebody else: Lead's look, {line.entry}"
    assert told in capsys.readouterr().out.splitlines()


def test_the_command(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It tells of each job, names what is no record, and writes the table."""
    folder = tmp_path / "from-site"
    (folder / "deep").mkdir(parents=True)
    entries = [reading(NOON, "14", "outside"), item("tick", "place", done=True)]
    (folder / "deep" / "one.json").write_text(json.dumps(record(entries)), encoding="utf-8")
    (folder / "none.json").write_text('{"format": "other"}', encoding="utf-8")
    table = tmp_path / "records.csv"
    assert main(["records", str(folder), "--csv", str(table)]) == 1
    out, err = capsys.readouterr()
    assert out.splitlines() == [
        "Garden studio",
        "  Set a toilet, Bath: 1 of 2 steps done, Wren Okafor, 2026-11-25",
        "    outside: Rough-in: 14 (asked for: 12 in) Wren Okafor",
        "    hold open after step 2: Lead's look",
        f"{table}: 6 lines",
    ]
    assert "none.json: error: is no record of this book, or it is broken: format" in err
    assert table.read_bytes().startswith(b"\xef\xbb\xbfjob,space,procedure,")


@pytest.mark.parametrize(
    ("ticked", "told"),
    [
        (["place"], "1 of 2 steps done"),
        (["place", "set"], "2 of 2 steps done, checks at the end open"),
        (["place", "set", "acceptance"], "2 of 2 steps done"),
        (["place", "acceptance"], "1 of 2 steps done"),
    ],
)
def test_the_checks_at_the_end_are_no_step(
    ticked: list[str], told: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What has a number is counted, as on the page; the checks are said once they are all that is left."""
    given = record([item("tick", step, done=True) for step in ticked])
    (tmp_path / "one.json").write_text(json.dumps(given), encoding="utf-8")
    assert main(["records", str(tmp_path)]) == 0
    out = capsys.readouterr().out
    assert out.splitlines()[1] == f"  Set a toilet, Bath: {told}, Wren Okafor, 2026-11-25"
    assert ("    ticked before it changed: It is done when" in out) == ("acceptance" in ticked)


IN_TWO_DAYS = (datetime.now(UTC) + timedelta(days=2)).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def test_a_time_still_to_come_is_said_and_left_out(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """An entry of tomorrow would count over everything until then: it is taken only where somebody asks for it."""
    ahead = [reading(IN_TWO_DAYS, "14", "outside"), item("tick", "place", done=True)]
    (tmp_path / "a.json").write_text(json.dumps(record(ahead, taken=IN_TWO_DAYS)), encoding="utf-8")
    (tmp_path / "b.json").write_text(json.dumps(record([reading(NOON, "12", "pass")])), encoding="utf-8")
    assert main(["records", str(tmp_path)]) == 0
    out, err = capsys.readouterr()
    assert out.splitlines()[1] == "  Set a toilet, Bath: 1 of 2 steps done, Wren Okafor, 2026-11-25"
    assert f"a.json: warning: 1 entry has a time still to come, up to {IN_TWO_DAYS}" in err
    assert main(["records", str(tmp_path), "--ahead"]) == 0
    out, err = capsys.readouterr()
    assert "outside: Rough-in: 14" in out
    assert err == ""


def test_a_record_that_says_it_is_of_tomorrow_is_of_now() -> None:
    """Its steps do not stand before those of what is handed out later."""
    now = datetime(2026, 11, 25, 15, tzinfo=UTC)
    (made,), ahead = without_future_entries(now, [read(record([], taken=IN_TWO_DAYS))])
    assert (made.taken, ahead) == ("2026-11-25T15:00:00.000Z", [])
    minutes = "2026-11-25T15:10:00.000Z"
    (made,), ahead = without_future_entries(now, [read(record([item("tick", "place", minutes, done=True)]))])
    assert (len(made.items), ahead) == (1, [])
    for when, left in (("2026-11-26T05:00", 1), ("2026-11-26T06:00", 0)):
        (made,), ahead = without_future_entries(
            now, [read(record([item("hold", "set", looked="Wren", when=when, passed=True)]))]
        )
        assert (len(made.items), ahead) == (left, [] if left else [f"{when}:00.000Z"])


def test_a_terminal_obeys_no_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What moves a cursor, sets a window's title or turns the line around is shown, in names of files too."""
    hostile = "\x1b]0;owned\x07\x9b2J\u202e\r\n\u2028"
    entries = [item("tick", "place", done=True) | {"by": hostile}]
    names: dict[str, Any] = {name: {"id": name, "title": name + hostile} for name in ("job", "space", "procedure")}
    names["procedure"]["revision"] = 2
    (tmp_path / "one.json").write_text(json.dumps(record(entries) | names), encoding="utf-8")
    (tmp_path / "no\x1b[2Jne.json").write_text("{}", encoding="utf-8")
    main(["records", str(tmp_path)])
    main(["records", str(tmp_path / "no\x1b[2J")])
    printed = "".join(capsys.readouterr())
    assert "\\u001b]0;owned\\u0007\\u009b2J\\u202e\\r\\n\\u2028" in printed
    assert [one for one in printed if not one.isprintable() and one != "\n"] == []


def test_what_is_no_file_is_refused_and_the_rest_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A pipe, a device, a folder and a file without end are each named, and none is waited for."""
    os.mkfifo(tmp_path / "pipe.json")
    (tmp_path / "device.json").symlink_to("/dev/zero")
    (tmp_path / "folder.json").mkdir()
    with (tmp_path / "huge.json").open("wb") as file:
        file.truncate(LARGEST + 1)
    (tmp_path / "whole.json").write_text(json.dumps(record([item("tick", "place", done=True)])), encoding="utf-8")
    assert main(["records", str(tmp_path)]) == 1
    out, err = capsys.readouterr()
    assert "Set a toilet, Bath: 1 of 2 steps done" in out
    no_file = "is no file that can be read, but a folder, a pipe or a device"
    assert err.splitlines() == [
        f"{tmp_path}/{name}.json: error: {why}"
        for name, why in (
            ("device", no_file),
            ("folder", no_file),
            ("huge", "is too large: at most 30 MB are read"),
            ("pipe", no_file),
        )
    ]


def test_a_table_is_written_beside_what_is_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A full disk is told with the name of the file; no record and no source of the book is written over."""
    one = tmp_path / "one.json"
    one.write_text(json.dumps(record([])), encoding="utf-8")
    before = one.read_bytes()
    for target, said in (
        (Path("/dev/full"), "/dev/full: No space left on device"),
        (one, f"'{one}' is one of the files that are read: name another one for the table"),
        (BOOK / "crew" / "people.csv", "lies in the book, whose sources are kept"),
    ):
        assert main(["records", str(tmp_path), "--csv", str(target)]) == 2
        assert said in capsys.readouterr().err
    assert one.read_bytes() == before
    assert not (BOOK / "crew" / "people.csv").exists()


def test_an_empty_folder(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing there is said; a folder that is not there is a wrong call."""
    assert main(["records", str(tmp_path)]) == 0
    assert "no record in" in capsys.readouterr().out
    assert main(["records", str(tmp_path / "no")]) == 2


@pytest.mark.parametrize("content", [b"", b"\xff\xfe", b"[]", b"null", b'{"format": 1}', b"[" * 5000])
def test_no_file_yields_a_traceback(content: bytes, tmp_path: Path) -> None:
    """However broken a file is, it is named with a reason."""
    (tmp_path / "broken.json").write_bytes(content)
    read_files, refused = read_records(tmp_path)
    assert read_files == []
    assert [path.name for path, _ in refused] == ["broken.json"]
