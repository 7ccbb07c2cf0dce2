"""The command ``plan`` as a person and a program meet it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from build_tools.commands import plan
from build_tools.commands.cli import main
from tests.builds import change
from tests.jobs import two_rooms

pytestmark = pytest.mark.slow

TODAY = ("--today", "2026-12-01")


@pytest.fixture(scope="module")
def kept_plans(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("plans")


@pytest.fixture(autouse=True)
def _keep_there(monkeypatch: pytest.MonkeyPatch, kept_plans: Path) -> None:
    """Plans of tests are not kept among those of the project."""
    monkeypatch.setattr(plan, "CACHE", kept_plans)


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return two_rooms(tmp_path_factory.mktemp("jobs"))


def test_a_plan_is_printed_day_by_day(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "two-rooms", "--book", str(book), *TODAY]) == 0
    printed = capsys.readouterr()
    lines = printed.out.splitlines()
    assert lines[0] == "Two rooms"
    assert lines[1].split() == "Ends Tue 8 Dec 13:45 (no plan ends sooner: proved)".split()
    assert lines[2].split() == "Deadline Fri 11 Dec: 3 working days to spare".split()
    assert "    Tobin Reyes  7:30 to 8:30  Screen and recoat a floor (Room), with Wren Okafor" in lines
    assert "    Closed: Room, Bath, Flat until Tue 8 Dec 8:30, after Screen and recoat a floor (Room)" in lines
    assert "    11:00 Electrical final comes to look: Place smoke and carbon monoxide alarms (Room)" in lines
    chain = lines.index("What sets the end date:")
    assert lines[chain + 1 : chain + 5] == [
        "    Mon 7 Dec 7:30  Screen and recoat a floor (Room)",
        "        Starts with the job.",
        "    Tue 8 Dec 8:30  Place smoke and carbon monoxide alarms (Room)",
        "        Room is closed until Tue 8 Dec 8:30, after Screen and recoat a floor (Room).",
    ]
    assert "    Install a lockset (Front door, Room)           30 min" in lines
    assert "Proved: no plan that keeps the rules ends sooner." in printed.out
    assert "    floor-last   Coat the floor last" in lines
    assert "dollars" not in printed.out
    assert printed.err.splitlines()[-1].endswith("planning two-rooms: done")


def test_a_variant_is_planned_in_place_of_the_job(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "two-rooms", "--variant", "floor-last", "--book", str(book), *TODAY]) == 0
    out = capsys.readouterr().out
    assert out.splitlines()[0] == "Two rooms: Coat the floor last"
    assert "Tue 8 Dec 10:00" in out.splitlines()[1]
    assert "--variant" not in out


def test_programs_get_data_and_nothing_else(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "two-rooms", "--json", "--book", str(book), *TODAY]) == 0
    made = json.loads(capsys.readouterr().out)
    assert (made["job"], made["variant"], made["end"]) == ("two-rooms", None, "2026-12-08T13:45")
    assert made["variants"] == ["floor-last", "other-hands"]
    assert made["sooner"] == []
    assert made["tasks"]["lock"]["title"] == "Install a lockset"


def test_a_late_job_says_what_would_bring_it_in(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = two_rooms(tmp_path, deadline="2026-12-07")
    assert main(["plan", "two-rooms", "--book", str(book), *TODAY]) == 0
    printed = capsys.readouterr()
    assert "1 working day late" in printed.out
    tries = printed.out.split("What would bring it in:")[1]
    assert "one helper more, trained in what the crew does" in tries
    assert "no sooner" in tries


def test_what_is_done_is_not_planned_again(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = two_rooms(tmp_path)
    file = book / "jobs" / "two-rooms.yaml"
    change(
        file,
        "    serves: {doors: '1'}\n",
        "    serves: {doors: '1'}\n    done: 2026-12-07\n",
    )
    assert main(["plan", "two-rooms", "--json", "--book", str(book), "--today", "2026-12-08"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert made["planned_from"] == "2026-12-08"
    recoat = made["tasks"]["recoat"]
    assert (recoat["done"], recoat["starts"], recoat["slack_hours"]) == ("2026-12-07", None, None)
    assert {line["task"] for day in made["days"] for line in day["work"]} == {"stops", "toilet", "lock", "alarms"}


def test_without_a_name_the_jobs_are_listed(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "--book", str(book)]) == 0
    assert capsys.readouterr().out.split() == ["two-rooms", "Two", "rooms"]


def test_a_mistake_in_the_book_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = two_rooms(tmp_path)
    change(book / "jobs" / "two-rooms.yaml", "space: bath, count: 3", "space: bth, count: 3")
    assert main(["plan", "two-rooms", "--book", str(book), *TODAY]) == 1
    printed = capsys.readouterr()
    assert printed.out == ""
    assert "procedures/jobs/two-rooms.yaml:24:" in printed.err
    assert "there is no space or dwelling 'bth' in this job\n    did you mean 'bath'?" in printed.err


def test_a_job_that_cannot_be_planned_is_a_mistake(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Wren is needed and away for as long as the axis reaches."""
    book = two_rooms(tmp_path)
    file = book / "jobs" / "two-rooms.yaml"
    change(file, "- {person: wren-okafor, rate: 20 dollars}", "- {person: wren-okafor, days: [saturday]}")
    assert main(["plan", "two-rooms", "--book", str(book), *TODAY]) == 1
    printed = capsys.readouterr()
    assert printed.out == ""
    assert "two-rooms.yaml" in printed.err


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["two-rums"], "there is no job 'two-rums'\n    did you mean 'two-rooms'?\n"),
        (["barn"], "there is no job 'barn'\n    'plan' without a name lists the jobs\n"),
        (["two-rooms", "--variant", "flor-last"], "there is no variant 'flor-last'\n    did you mean 'floor-last'?\n"),
        (
            ["two-rooms", "--variant", "x"],
            "there is no variant 'x'\n    the variants of this job: floor-last, other-hands\n",
        ),
        (["two-rooms", "--today", "tomorrow"], "'tomorrow' is not a day: write it like 2026-12-07"),
    ],
)
def test_a_wrong_call_is_told(book: Path, arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    try:
        code = main(["plan", *arguments, "--book", str(book)])
    except SystemExit as left:
        code = int(left.code or 0)
    assert code == 2
    assert said in capsys.readouterr().err
