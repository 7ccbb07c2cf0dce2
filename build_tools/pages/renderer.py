"""What the pages of one book are made with: the book, the words, the templates, and the helpers of a page."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from pathlib import Path
from typing import Any

from markupsafe import Markup

from build_tools.book.book import Book, ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.sequence import after, links
from build_tools.pages.helpers import Helpers
from build_tools.pages.jobs.times import clock, day
from build_tools.pages.live import live_page
from build_tools.pages.pictures import SitePicture
from build_tools.pages.template_environment import template_environment
from build_tools.pages.words import words
from build_tools.plan.planned_job import PlannedJob
from calculators.declaration import Calculator

SIGNS = Path(__file__).parent / "assets" / "signs"


@lru_cache
def signs() -> dict[str, Markup]:
    """The signs that stand inside the pages: file name to SVG."""
    return {path.stem: Markup(path.read_text(encoding="utf-8").strip()) for path in SIGNS.glob("*.svg")}


@dataclass(frozen=True)
class Renderer:
    """What every page is made with, whole from the start.

    ``jobs`` are planned, by id. ``site_url`` is the address at which the site is published, ending in ``/``; empty
    where the settings have none. ``plots`` is a folder that keeps plots between builds.
    """

    context: Context
    pictures: dict[tuple[str, str], SitePicture]
    site_name: str
    jobs: Mapping[str, PlannedJob] = field(default_factory=dict)
    for_owner: bool = True
    site_url: str = ""
    plots: Path | None = None

    @property
    def book(self) -> Book:
        """The book."""
        return self.context.book

    @cached_property
    def words(self) -> dict[str, str]:
        """The words of the pages in the book's language."""
        return words(self.book.language)

    @cached_property
    def after(self) -> dict[str, list[str]]:
        """By procedure, those that come after it."""
        return after(links(self.book))

    def helpers(self, url: str, folder: str = "") -> Helpers:
        """The helpers for the page at that address."""
        return Helpers(self.context, "../" * url.count("/"), self.pictures, folder)

    def render(self, template: str, helpers: Helpers, **given: Any) -> str:
        """A template filled for one page."""
        names = {"t": self.words, "signs": signs(), "day": day, "clock": clock, **helpers.names(), **given}
        return template_environment(self.book.language).get_template(template).render(names)

    def live(self, helpers: Helpers, calculators: Iterable[Calculator], has_steps: bool = False) -> dict[str, str]:
        """What makes the forms of these calculators live on a page, and the boxes of its steps, in one script."""
        data = live_page(calculators, self.words, helpers.top)
        needs = ("steps-form" if data else "steps") if has_steps else "form"
        script = f"{helpers.top}assets/script/{needs}.js" if data or has_steps else ""
        return {"data": data, "script": script, "top": helpers.top}

    def procedures_of(self, trade: str) -> list[ProcedureEntry]:
        """The procedures of a trade by title."""
        return sorted(
            (entry for entry in self.book.procedures.values() if entry.trade == trade),
            key=lambda entry: self.context.index.targets["procedure", entry.id].title,
        )

    def listed(self, helpers: Helpers, entries: list[ProcedureEntry]) -> list[dict[str, str]]:
        """Procedures as a list of links."""
        return [
            {
                "url": helpers.url("procedure", entry.id),
                "title": helpers.title("procedure", entry.id),
                "summary": first_sentence(helpers.words(entry.item.summary)),
            }
            for entry in entries
        ]

    def linked(self, helpers: Helpers, ids: list[str]) -> list[dict[str, str]]:
        """Procedures as bare links."""
        return [
            {"url": helpers.url("procedure", id), "title": helpers.title("procedure", id), "summary": ""} for id in ids
        ]

    def around(self, entry: ProcedureEntry) -> tuple[object, ...]:
        """What the page of a procedure is made from besides the procedure itself."""
        beside = sorted(shown.url for (folder, _), shown in self.pictures.items() if folder == entry.folder)
        return self.context.fingerprint, tuple(self.after[entry.id]), tuple(beside)

    def has_pictures(self, entry: ProcedureEntry) -> bool:
        """Whether every photo and drawing of a procedure could be made."""
        wanted = [picture.file for step in entry.item.steps for picture in (step.photo, step.drawing) if picture]
        return all((entry.folder, file) in self.pictures for file in wanted)

    def trades(self) -> list[str]:
        """The trades in the order that the book gives them."""
        return sorted(self.book.trades, key=lambda id: (self.book.trades[id].item.order, id))


def first_sentence(text: str) -> str:
    """The first sentence, to stand in a list.

    >>> first_sentence("Set it level. Then seal it.")
    'Set it level.'
    """
    end = text.find(". ")
    return text if end < 0 else text[: end + 1]
