"""The benchmark: the invented book is a good one, the Markdown says the same, and a budget that is not kept fails."""

from __future__ import annotations

import gzip
import json
import signal
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any
from urllib.error import HTTPError
from urllib.request import urlopen

import pytest

from build_tools.bench import run as bench_run
from build_tools.bench.answers import Answer
from build_tools.bench.invent import STEPS, write_book
from build_tools.bench.lighthouse import scores_of
from build_tools.bench.markdown import write_pages
from build_tools.bench.measure import Failed, timed
from build_tools.bench.planning import Planning
from build_tools.bench.racking import Racking
from build_tools.bench.run import ResultLine
from build_tools.bench.script import ScriptWeight, weigh
from build_tools.bench.serving import served
from build_tools.book.book import Book
from build_tools.book.checks import check_book
from build_tools.book.load import load_book
from build_tools.book.yaml_reader import read_text
from build_tools.commands.bench import table
from build_tools.commands.cli import main
from build_tools.environment import ROOT

NUMBER = 60


@pytest.fixture
def in_the_background() -> Iterator[None]:
    """Ctrl-C is not heard, by this process and those that it starts, as after ``&`` in a script."""
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    yield
    signal.signal(signal.SIGINT, before)


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
    assert loaded.diagnostics == []
    return loaded.book


@pytest.mark.slow
def test_the_invented_book_has_no_mistakes(book: Book) -> None:
    assert [str(diagnostic) for diagnostic in check_book(book) if diagnostic.severity == "error"] == []


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
    over = ResultLine("build", seconds=21, ratio=0.21, pages=1000, peak_mb=None, budget=0.2)
    kept = ResultLine("build", seconds=20, ratio=0.2, pages=1000, peak_mb=300, budget=0.2)
    costly = replace(kept, processor_seconds=30, processor_ratio=0.3, processor_budget=0.22)
    assert (over.passes, kept.passes, costly.passes) == (False, True, False)
    printed = table([ResultLine("bare", 1000, 300, 100, 1), over, kept, costly]).splitlines()
    assert printed[0].split("  ")[-1] == "MB, largest process"
    assert "OVER" in printed[2]
    assert "not told" in printed[2]
    assert printed[3].split() == ["build", "20.00", "0.200", "0.20", "pass", "1000", "300"]
    figures = ["20.00", "0.200", "0.20", "30.00", "0.300", "0.22"]
    assert printed[4].split() == ["build", *figures, "OVER", "1000", "300"]


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


def test_the_script_of_a_page_is_weighed(tmp_path: Path) -> None:
    """What the page names, and what its heaviest form loads with its drawing. The theme's own script is not ours."""
    (tmp_path / "plumbing").mkdir()
    (tmp_path / "assets/script/calculators").mkdir(parents=True)
    names = ["crew", "calculators/wax-ring", "calculators/drain-fall"]
    for name in ("form", "draw", "calculators/other", *names):
        (tmp_path / f"assets/script/{name}.js").write_text("x" * 1000, encoding="utf-8")
    scripts = [f"assets/script/{name}.js" for name in names]
    data = json.dumps({"scripts": scripts, "draw": ["assets/script/draw.js"]})
    page = (
        '<script src="../assets/javascripts/theme.js"></script><script defer src="../assets/script/form.js"></script>'
        f'<div class="crew procedure"><script type="application/json" id="crew-page">{data}</script>'
    )
    (tmp_path / "plumbing/toilet-set.html").write_text(page, encoding="utf-8")
    (tmp_path / "plumbing/index.html").write_text("no procedure", encoding="utf-8")
    (found,) = weigh(tmp_path)
    one = found.at_once
    assert 20 < one < 60
    assert (found.in_use, found.drawing, found.all) == (4 * one, one, 5 * one)
    assert str(ScriptWeight("a.html", 9000, 30721, 5000, 40000)) == (
        "script on a.html, compressed: 9,000 bytes at once, 30,721 with a form in use and its drawing redrawn "
        "(budget 30,720, OVER), 5,000 of that for the drawing; 40,000 with all its forms"
    )


def report(performance: float, lcp: float, accessibility: float = 1.0) -> dict[str, Any]:
    """As much of a report of Lighthouse as is read."""
    scores = {"performance": performance, "accessibility": accessibility, "best-practices": 1}
    requests = [{"resourceType": "Script", "transferSize": 700}, {"resourceType": "Font", "transferSize": 9000}]
    audits = {"largest-contentful-paint": lcp, "total-blocking-time": 40.4, "total-byte-weight": 90_000}
    return {
        "categories": {name: {"score": score} for name, score in scores.items()},
        "audits": {
            **{name: {"numericValue": value} for name, value in audits.items()},
            "network-requests": {"details": {"items": requests}},
        },
        "environment": {"benchmarkIndex": 1500.4},
    }


def test_scores_are_held_against_the_budget() -> None:
    good, slow = scores_of("a.html", report(0.95, 1800)), scores_of("a.html", report(0.96, 1801))
    assert (good.passes, slow.passes) == (True, False)
    assert not scores_of("a.html", report(0.94, 900)).passes
    assert not scores_of("a.html", report(1, 900, 0.99)).passes
    assert (good.script, good.bytes, good.machine) == (700, 90_000, 1500)
    assert "95 of 100 (budget 95), largest part painted after 1.80 s (budget 1.8 s)" in str(good)


def test_an_answer_is_held_against_its_budget() -> None:
    kept, over = Answer("a key", 2.0, 16.0, 16.0), Answer("a key", 2.0, 16.1, 16.0)
    assert (kept.passes, over.passes) == (True, False)
    assert str(over) == "a key: 16.1 ms at 4x (budget 16 ms, OVER); 2.00 of a fixed piece of work"


def test_the_server_compresses_text(tmp_path: Path) -> None:
    (tmp_path / "a.css").write_text("a" * 1000, encoding="utf-8")
    (tmp_path / "a.png").write_bytes(b"picture")
    with served(tmp_path) as address:
        with urlopen(f"{address}a.css") as answer:
            assert answer.headers["Content-Encoding"] == "gzip"
            assert gzip.decompress(answer.read()) == b"a" * 1000
        with urlopen(f"{address}a.png") as answer:
            assert answer.headers["Content-Encoding"] is None
            assert answer.read() == b"picture"
        with pytest.raises(HTTPError, match="404"):
            urlopen(f"{address}none.css")


def test_a_program_that_fails_says_its_last_lines(tmp_path: Path) -> None:
    with pytest.raises(Failed, match="no such thing"):
        timed(["sh", "-c", "echo no such thing; exit 3"], tmp_path)


@pytest.mark.slow
@pytest.mark.usefixtures("in_the_background")
def test_the_whole_run_measures_each_way_to_build(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(bench_run, "BUILDS", 1)
    monkeypatch.setattr(bench_run, "REBUILDS", 1)
    code = main(["bench", "--procedures", "60", "--part", "build", "--json"])
    captured = capsys.readouterr()
    result = json.loads(captured.out)
    assert result["procedures"] == 60
    assert [line["what"] for line in result["lines"]] == [
        "bare mkdocs build",
        "build from nothing",
        "build with the cache kept",
        "rebuild after an edit",
    ]
    assert all(line["seconds"] > 0 for line in result["lines"])
    assert all(line["processor_seconds"] > 0 for line in result["lines"][:3])
    (racking,), (planning,) = result["racking"], result["planning"]
    assert code == (0 if all(each["passes"] for each in (racking, planning, *result["lines"])) else 1)
    assert 0 <= racking["waste"] * 5 < racking["first_fit_waste"]
    assert (planning["tasks"], planning["proved"]) == (40, True)
    assert planning["ratio"] < 0.5
    assert "inventing 60 procedures" in captured.err


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--procedures", "3"], "--procedures 3: at least 60 are wanted"),
        (["--keep", str(ROOT)], "is there already; --keep names a new folder"),
    ],
)
def test_a_wrong_call_is_told(arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["bench", *arguments]) == 2
    assert said in capsys.readouterr().err
