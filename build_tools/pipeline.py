"""From the folder of a book to its site: every stage, as DEVELOPERS.md draws them.

    read -> link -> check -> plan the jobs -> render the pages -> make the other files

:func:`build` is the whole way; commands that need less (``check``, ``plan``, ``pack``) stop at :func:`read_checked`.
"""

from __future__ import annotations

from contextlib import nullcontext
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime
from functools import partial
from pathlib import Path
from typing import Any

from build_tools.book.checks import check
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, stops
from build_tools.book.load import DocumentCache, load_book
from build_tools.book.memo import Memo
from build_tools.book.parallel import MIN_ITEMS, in_background
from build_tools.book.schema import write_schemas
from build_tools.browser.scripts import script_problems
from build_tools.pages.fonts import make_fonts
from build_tools.pages.icons import manifest
from build_tools.pages.jobs.files import job_files
from build_tools.pages.page import Page
from build_tools.pages.pictures import make_pictures
from build_tools.pages.prebuild import prebuild
from build_tools.pages.renderer import Renderer
from build_tools.pages.search import search_data
from build_tools.pages.site import make_pages, navigation
from build_tools.pages.site_files import prebuild_assets, site_files
from build_tools.plan.cache import plan_jobs
from build_tools.plan.for_crew import without_private


@dataclass(frozen=True, slots=True)
class Options:
    """What a site is made with besides its book.

    ``cache`` is the folder for what is dear to make. ``site_url`` is empty or ends in ``/``. ``today`` is the day from
    which what is left of a job is planned, the present day where it is None. ``strict`` stops at warnings as well.
    """

    cache: Path
    site_name: str = "Crew Methods"
    description: str = ""
    site_url: str = ""
    for_owner: bool = True
    today: date | None = None
    strict: bool = False


class Held:
    """What one build leaves for the next in the same process: files that were read, and what was made from them."""

    def __init__(self) -> None:
        self.files, self.memo, self.is_first = DocumentCache(), Memo(), True


@dataclass(frozen=True, slots=True)
class Checked:
    """A book that was read, linked and checked: what pages are made with, and all diagnostics."""

    renderer: Renderer
    diagnostics: frozenset[Diagnostic]

    @property
    def context(self) -> Context:
        """The book with its links."""
        return self.renderer.context


@dataclass(frozen=True, slots=True)
class Site:
    """A site before an engine puts its frame around the pages.

    ``files`` are all files that are no page, address from the top of the site to content. ``navigation`` names pages
    by their source, as the engine's settings do. A book with a mistake has diagnostics and nothing else.
    """

    renderer: Renderer
    diagnostics: frozenset[Diagnostic]
    pages: list[Page] = field(default_factory=list)
    files: dict[str, str | bytes] = field(default_factory=dict)
    navigation: list[Any] = field(default_factory=list)


def build(folder: Path, options: Options, held: Held | None = None) -> Site:
    """The site of the book in that folder: ``build(Path("procedures"), Options(cache=Path(".cache")))``.

    ``held`` is what an earlier build of the same process left; a preview gives it again, and makes only what changed.
    """
    held = held or Held()
    checked = read_checked(folder, options, held, ahead=True)
    if stops(checked.diagnostics):
        return Site(checked.renderer, checked.diagnostics)
    context = checked.context
    jobs, diagnostics = plan_jobs(context, options.today or datetime.now().date(), options.cache)
    checked = Checked(replace(checked.renderer, jobs=jobs), checked.diagnostics | set(diagnostics))
    if stops(checked.diagnostics, strict=options.strict):
        return Site(checked.renderer, checked.diagnostics)
    pages = make_pages(checked.renderer)
    held.is_first = False
    held.memo.forget({id(thing) for thing in (*(entry.item for _, entry in context.book.entries()), *pages)})
    files = _files(checked.renderer, pages, options)
    return Site(checked.renderer, checked.diagnostics, pages, files, navigation(context, pages))


def read_checked(folder: Path, options: Options, held: Held | None = None, *, ahead: bool = False) -> Checked:
    """The book read and checked. The jobs are not: planning them checks them, and so does ``check_jobs``.

    ``ahead`` makes the pages of new procedures while they are checked, on every core.
    """
    held = held or Held()
    loaded = load_book(folder, held.files)
    write_schemas(folder)
    book = loaded.book if options.for_owner else without_private(loaded.book)
    large = ahead and held.is_first and len(book.procedures) > MIN_ITEMS
    with in_background(partial(make_fonts, options.cache / "fonts")) if large else nullcontext():
        context = Context.of(book, held.memo)
    pictures, unreadable = make_pictures(book, options.cache / "pictures")
    renderer = Renderer(
        context,
        pictures,
        options.site_name,
        for_owner=options.for_owner,
        site_url=options.site_url,
        plots=options.cache / "plots",
    )
    if ahead and not unreadable:
        prebuild(renderer, partial(prebuild_assets, context, options.cache))
    diagnostics = {*loaded.diagnostics, *check(context), *unreadable, *script_problems(context, options.cache)}
    return Checked(renderer, frozenset(diagnostics))


def _files(renderer: Renderer, pages: list[Page], options: Options) -> dict[str, str | bytes]:
    context, day = renderer.context, datetime.now(UTC).strftime("%Y-%m-%d")
    return {
        "assets/script/found.js": search_data(pages, renderer.words, context.memo),
        **site_files(context, renderer.pictures, day, options.cache),
        **job_files(renderer),
        "site.webmanifest": manifest(options.site_name, options.description, context.book.language),
    }
