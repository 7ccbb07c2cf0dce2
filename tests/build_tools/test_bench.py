"""The benchmark: the invented book is a good one, the Markdown says the same, and a budget that is not kept fails."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from build_tools.bench import run as bench_run
from build_tools.bench.invent import STEPS, write_book
from build_tools.bench.markdown import write_pages
from build_tools.bench.measure import Failed, timed
from build_tools.bench.planning import Planning, measure_planning
from build_tools.bench.racking import Racking
from build_tools.bench.run import Line
from build_tools.bench.script import ScriptWeight, weigh
from build_tools.book.book import Book
from build_tools.book.checks import check_book
from build_tools.book.load import load_book
from build_tools.book.yaml_reader import read_text
from build_tools.commands.bench import table
from build_tools.commands.line import main
from build_tools.environment import ROOT

NUMBER = 60


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An invented book in ``procedures``, and its Markdown in ``bare``."""
    folder = tmp_path_factory.mktemp("bench")
    write_book(ROOT / "procedures", folder / "procedures", NUMBER)
    return folder


@pytest.fixture(scope="module")
def book(folder: Path) -> Book:
    """The invented book, read."""
    loaded = load_book(folder / "procedures")
    assert loaded.problems == []
    return loaded.book


def test_the_invented_book_has_no_mistakes(book: Book) -> None:
    assert [str(problem) for problem in check_book(book) if problem.severity == "error"] == []


def test_it_has_the_procedures_that_were_asked_for(book: Book) -> None:
    assert len(book.procedures) == NUMBER
    invented = [entry.item for name, entry in book.procedures.items() if name.startswith("work-")]
    assert {len(item.steps) for item in invented} == {STEPS}
    assert all(any(step.table for step in item.steps) for item in invented)
    assert {entry.trade for name, entry in book.procedures.items() if name.startswith("work-")} == set(book.trades)


def test_the_same_seed_writes_the_same_book(folder: Path, tmp_path: Path) -> None:
    write_book(ROOT / "procedures", tmp_path / "again", NUMBER)
    for file in (folder / "procedures").rglob("*.yaml"):
        assert (tmp_path / "again" / file.relative_to(folder / "procedures")).read_bytes() == file.read_bytes()


def test_the_markdown_says_all_that_a_procedure_says(book: Book, tmp_path: Path) -> None:
    pages = write_pages(book, tmp_path)
    assert pages == len(list((tmp_path / "docs").rglob("*.md")))
    for name, entry in book.procedures.items():
        text = (tmp_path / "docs" / entry.trade / f"{name}.md").read_text(encoding="utf-8")
        squeezed = " ".join(text.split())
        for words in _words(read_text(entry.document.text, name).data):
            for piece in _without_links(words):
                assert piece in squeezed, (name, words)
        for step in entry.item.steps:
            assert f"{{ #{step.id} }}" in text


WORDS = """alone answer ask avoid caption changed check clause detail do harm hazard outside passes point reserved state
stops summary title what why""".split()


def _words(part: Any) -> Iterator[str]:
    """The texts of a procedure that a reader reads."""
    if isinstance(part, dict):
        for name, value in part.items():
            if name == "table":
                yield value["caption"]
            elif isinstance(value, str) and name in WORDS:
                yield value
            else:
                yield from _words(value)
    elif isinstance(part, list):
        for value in part:
            yield from _words(value)


def _without_links(text: str) -> list[str]:
    """The text between the references, whose words the Markdown writes in its own way."""
    pieces = text.replace("](", "[").replace(")", "[").split("[")
    return [" ".join(piece.split()) for piece in pieces if ":" not in piece and "(" not in piece and piece.strip()]


def test_a_line_over_its_budget_does_not_pass() -> None:
    over = Line("build", seconds=21, ratio=0.21, pages=1000, peak_mb=None, budget=0.2)
    kept = Line("build", seconds=20, ratio=0.2, pages=1000, peak_mb=300, budget=0.2)
    assert (over.passes, kept.passes) == (False, True)
    printed = table([Line("bare", 100, 1, 1000, 300), over, kept]).splitlines()
    assert printed[0].split("  ")[-1] == "MB, largest process"
    assert "OVER" in printed[2]
    assert "not told" in printed[2]
    assert printed[3].split() == ["build", "20.00", "0.200", "0.20", "pass", "1000", "50.0", "300"]


def test_racking_says_its_time_and_its_waste() -> None:
    slow, quick = Racking(1.5, 0.01, 1.25), Racking(0.5, 0.01, 1.25)
    assert (slow.passes, quick.passes) == (False, True)
    assert str(quick) == (
        "racking a 300 sq ft room: 0.50 s (budget 1 s, pass); waste 0.010 % over the least possible, first fit 1.250 %"
    )
    assert "(budget 1 s, OVER)" in str(slow)


def test_planning_says_its_time_and_its_worth() -> None:
    quick, slow = Planning(40, 0.3, 5.0, True, 11, 0.25), Planning(40, 10.5, 15.0, True, 11, 0.25)
    open_end = Planning(40, 6.0, 9.0, False, 11, 0.25)
    assert (quick.passes, slow.passes, open_end.passes) == (True, False, False)
    assert str(quick) == (
        "planning a job of 40 tasks: end proved in 0.30 s (budget 10 s, pass), all aims in 5.00 s; "
        "11 working days, 0.25 of one task after another"
    )
    assert "end not proved in 6.00 s (budget 10 s, OVER)" in str(open_end)


def test_a_job_of_forty_tasks_is_proved() -> None:
    """On a busy machine the clock says little; the proof itself does."""
    found = measure_planning(ROOT / "procedures")
    assert (found.tasks, found.proved) == (40, True)
    assert found.ratio < 0.5


def test_the_script_of_a_page_is_weighed(tmp_path: Path) -> None:
    """What the page names and what its forms load; the theme's own script is not ours."""
    (tmp_path / "plumbing").mkdir()
    (tmp_path / "assets/script/calculators").mkdir(parents=True)
    for name in ("form", "crew", "draw", "calculators/wax-ring", "calculators/other"):
        (tmp_path / f"assets/script/{name}.js").write_text("x" * 1000, encoding="utf-8")
    scripts = ["assets/script/crew.js", "assets/script/calculators/wax-ring.js"]
    data = json.dumps({"scripts": scripts, "draw": "assets/script/draw.js"})
    page = (
        '<script src="../assets/javascripts/theme.js"></script><script defer src="../assets/script/form.js"></script>'
        f'<script type="application/json" id="crew-page">{data}</script>'
    )
    (tmp_path / "plumbing/toilet-set.html").write_text(page, encoding="utf-8")
    found = weigh(tmp_path)
    assert (found.files, found.raw) == (4, 4000)
    assert 4 * 20 < found.compressed < 4 * 60
    assert str(ScriptWeight(5, 80000, 30721)) == (
        "script on the page plumbing/toilet-set.html: 5 files, 80,000 bytes, compressed 30,721 (budget 30,720, OVER)"
    )


def test_a_program_that_fails_says_its_last_lines(tmp_path: Path) -> None:
    with pytest.raises(Failed, match="no such thing"):
        timed(["sh", "-c", "echo no such thing; exit 3"], tmp_path)


def test_the_whole_run_measures_three_things(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(bench_run, "BUILDS", 1)
    monkeypatch.setattr(bench_run, "REBUILDS", 1)
    code = main(["bench", "--procedures", "20", "--json"])
    captured = capsys.readouterr()
    result = json.loads(captured.out)
    assert result["procedures"] == 20
    assert [line["what"] for line in result["lines"]] == [
        "bare mkdocs build",
        "build of the book",
        "rebuild after an edit",
    ]
    assert all(line["seconds"] > 0 for line in result["lines"])
    racking = result["racking"]
    script, planning = result["script"], result["planning"]
    assert script["files"] >= 5
    assert script["raw"] > script["compressed"] > 10_000
    assert code == (0 if all(each["passes"] for each in (racking, planning, script, *result["lines"])) else 1)
    assert 0 <= racking["waste"] * 5 < racking["first_fit_waste"]
    assert "inventing 20 procedures" in captured.err


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--procedures", "3"], "--procedures 3: at least 20 are wanted"),
        (["--keep", str(ROOT)], "is there already; --keep names a new folder"),
    ],
)
def test_a_wrong_call_is_told(arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["bench", *arguments]) == 2
    assert said in capsys.readouterr().err
