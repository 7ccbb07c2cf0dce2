"""Runs the whole benchmark and holds the results against the budgets."""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from build_tools.bench.invent import write_book
from build_tools.bench.markdown import write_pages
from build_tools.bench.measure import TimedRun, timed
from build_tools.bench.preview import measure_rebuilds
from build_tools.book.load import load_book

FULL_BUDGET = 0.15
FULL_PROCESSOR_BUDGET = 0.22
CACHED_PROCESSOR_BUDGET = 0.12
REBUILD_BUDGET = 0.02
BUILDS = 3
REBUILDS = 5


@dataclass(frozen=True, slots=True)
class ResultLine:
    """One line of the result: the clock and the processors, each as a ratio to the bare build.

    A ratio without a budget is there to compare with. Processor seconds are None where the system does not tell them.
    """

    what: str
    pages: int
    peak_mb: float | None
    seconds: float
    ratio: float
    budget: float | None = None
    processor_seconds: float | None = None
    processor_ratio: float | None = None
    processor_budget: float | None = None

    @property
    def passes(self) -> bool:
        """Whether it keeps its budgets."""
        kept = self.budget is None or self.ratio <= self.budget
        return kept and (
            self.processor_budget is None
            or self.processor_ratio is None
            or self.processor_ratio <= self.processor_budget
        )


@dataclass(frozen=True, slots=True)
class Workshop:
    """Where and how the benchmark runs."""

    folder: Path
    real: Path
    procedures: int
    settings_for: Callable[[Path, Path], Path]
    quiet: dict[str, str]
    port: int
    say: Callable[[str], None]


def large_site(shop: Workshop) -> Path:
    """The site of the large book, as :func:`bench` left it, or built now."""
    folder = shop.folder / "build-1"
    if not folder.is_dir():
        shop.say(f"inventing {shop.procedures} procedures, and building them")
        write_book(shop.real, shop.folder / "procedures", shop.procedures)
        _build(shop.settings_for(shop.folder / "procedures", _fresh(folder)), shop)
    return folder / "site"


def real_site(shop: Workshop) -> Path:
    """The site of the real book, built now."""
    shop.say("building the book itself")
    folder = _fresh(shop.folder / "real")
    _build(shop.settings_for(shop.real, folder), shop)
    return folder / "site"


def bench(shop: Workshop) -> list[ResultLine]:
    """Make the book, build it both ways, and rebuild it after an edit; one line a measurement."""
    shop.say(f"inventing {shop.procedures} procedures")
    book_folder, bare_folder = shop.folder / "procedures", shop.folder / "bare"
    write_book(shop.real, book_folder, shop.procedures)
    bare_pages = write_pages(load_book(book_folder).book, bare_folder)
    shop.say("bare mkdocs build, the same text as Markdown")
    bare = _build(bare_folder / "mkdocs.yml", shop)
    shop.say(f"    {bare.seconds:.1f} s")
    shop.say(f"the book's own build, {BUILDS} times")
    fresh = [_fresh(shop.folder / f"build-{number}") for number in range(1, BUILDS + 1)]
    full = _median([_build(shop.settings_for(book_folder, folder), shop) for folder in fresh])
    shop.say(f"    {full.seconds:.1f} s")
    shop.say("once more in each folder, with what was kept there")
    cached = _median([_build(folder / "mkdocs.yml", shop) for folder in fresh])
    shop.say(f"    {cached.seconds:.1f} s")
    pages = sum(1 for _ in (fresh[0] / "site").rglob("*.html"))
    shop.say(f"mkdocs serve, and {REBUILDS} procedures saved one after the other")
    invented = sorted(book_folder.glob("*/work-*.yaml"))
    edited = invented[:: max(1, len(invented) // REBUILDS)][:REBUILDS]
    settings = shop.settings_for(book_folder, _fresh(shop.folder / "preview"))
    again = measure_rebuilds(settings, shop.port, edited, shop.quiet)
    seconds = median(again.seconds)
    return [
        _line("bare mkdocs build", bare, bare, bare_pages),
        _line("build from nothing", full, bare, pages, FULL_BUDGET, FULL_PROCESSOR_BUDGET),
        _line("build with the cache kept", cached, bare, pages, processor_budget=CACHED_PROCESSOR_BUDGET),
        ResultLine("rebuild after an edit", 1, again.peak_mb, seconds, seconds / bare.seconds, REBUILD_BUDGET),
    ]


def _line(
    what: str,
    run: TimedRun,
    bare: TimedRun,
    pages: int,
    budget: float | None = None,
    processor_budget: float | None = None,
) -> ResultLine:
    spent, bare_spent = run.processor_seconds, bare.processor_seconds
    processor_ratio = spent / bare_spent if spent is not None and bare_spent else None
    return ResultLine(
        what,
        pages,
        run.peak_mb,
        run.seconds,
        run.seconds / bare.seconds,
        budget,
        spent,
        processor_ratio,
        processor_budget,
    )


def _fresh(folder: Path) -> Path:
    """A new folder for each build, so that none finds what an earlier one left."""
    folder.mkdir()
    return folder


def _build(settings: Path, shop: Workshop) -> TimedRun:
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--config-file", str(settings)]
    return timed(command, settings.parent, shop.quiet)


def _median(runs: list[TimedRun]) -> TimedRun:
    return sorted(runs, key=lambda run: run.seconds)[len(runs) // 2]
