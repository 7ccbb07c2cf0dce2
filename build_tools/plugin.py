"""The doorway to MkDocs: it hands the work on, and alone imports the engine.

In the order of MkDocs' events:

- ``on_startup``: being there keeps this object between the builds of a preview, and with it what was made before.
- ``on_config``: our theme folder and style sheet.
- ``on_pre_build``: read and check the book, stop on mistakes, make every page.
- ``on_files``: hand the pages to MkDocs as generated files.
- ``on_nav``, ``on_env``: render the theme's frame once for each place in the navigation.
- ``on_page_context``: a page outside the navigation gets its frame, filled.
- ``on_post_build``: the list of every file of the site, for devices that keep the book; the site into its place.
"""

from __future__ import annotations

import gc
import logging
import re
import warnings
from collections.abc import Callable
from contextlib import nullcontext, suppress
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from jinja2 import Environment
from markupsafe import Markup
from mkdocs.commands.build import get_context
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as EnginePage
from mkdocs.structure.toc import AnchorLink, TableOfContents
from mkdocs.utils.templates import TemplateContext

from build_tools.book.checks import check
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, count_line, listed
from build_tools.book.load import Cache, load_book
from build_tools.book.memo import Memo
from build_tools.book.parallel import MIN_ITEMS, in_background
from build_tools.browser.offline import Unserved, write_offline, write_preview
from build_tools.browser.scripts import script_problems
from build_tools.pages.fonts import make_fonts
from build_tools.pages.frame import MARKS, Frame, for_the_frame
from build_tools.pages.icons import manifest
from build_tools.pages.page import Heading, Page
from build_tools.pages.pictures import make_pictures
from build_tools.pages.prebuild import prebuild
from build_tools.pages.search import search_data
from build_tools.pages.site import Maker, make_pages, navigation, signs
from build_tools.pages.site_files import prebuild_assets, site_files, whole_style
from build_tools.plan.for_crew import without_private
from build_tools.site_folder import REFUSED, SiteFolder, told

if TYPE_CHECKING:
    from build_tools.plan.planned_job import PlannedJob

log = get_plugin_logger("crew-methods")
THEME = Path(__file__).parent / "theme"
OWNER = "owner"
"""For whom a site is made where its settings do not say; everybody else gets it without money and private notes."""


class Settings(Config):  # type: ignore[no-untyped-call]  # MkDocs' own
    """The plugin takes no settings: what a site needs stands in the book."""


class CrewMethodsPlugin(BasePlugin[Settings]):  # type: ignore[no-untyped-call]
    """Makes the site of the book that lies in ``docs_dir``."""

    def __init__(self) -> None:
        self._cache = Cache()
        self._memo = Memo()
        self._pages: list[Page] = []
        self._frames: dict[str, Frame] = {}
        self._written = Written("")
        self._preview = False
        self._folder: SiteFolder | None = None

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Being here keeps the plugin between the builds of a preview.

        A ``--dirty`` preview writes only what changed. For this book that misses nothing, since each file knows
        whether it changed (:class:`BookFile`), so MkDocs' warning that it might is not passed on.
        """
        self._preview = command == "serve"
        if dirty:
            logging.getLogger("mkdocs.commands.build").addFilter(lambda record: "'dirty' build" not in record.msg)

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Put our templates before the theme's, and our style sheet after its own."""
        if str(THEME) not in config.theme.dirs:
            config.theme.dirs.insert(0, str(THEME))
        config.extra_css.append("assets/crew.css")
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Read and check the book, and make its pages, before MkDocs writes anything.

        A mistake stops here, so that a preview goes on showing the last good site. What a build writes goes into a
        folder beside the site's; a preview, whose folder is nobody's, writes into it what changed.
        """
        if not self._preview:
            self._folder = SiteFolder(Path(config.site_dir))
            self._folder.check()
        # A large book is millions of small objects that all stay: looking through them for garbage, again and again,
        # is a third of the time of a build.
        gc.disable()
        cache = _cache_folder(config)
        loaded = load_book(Path(config.docs_dir), self._cache)
        for_owner = config.extra.get("made_for", OWNER) == OWNER
        book = loaded.book if for_owner else without_private(loaded.book)
        first_of_many = not self._pages and len(book.procedures) > MIN_ITEMS
        with in_background(partial(make_fonts, cache / "fonts")) if first_of_many else nullcontext():
            context = Context.of(book, self._memo)
        pictures, unreadable = make_pictures(book, cache / "pictures")
        self._maker = maker = Maker(context, pictures, config.site_name, cache / "plots")
        maker.for_owner = for_owner
        maker.site_url = _published_at(config)
        if not unreadable:
            prebuild(maker, partial(prebuild_assets, context, cache))
        found = {*loaded.diagnostics, *check(context), *unreadable, *script_problems(context, cache)}
        if context.book.jobs and not any(diagnostic.severity == "error" for diagnostic in found):
            maker.jobs, diagnostics = self._plan_jobs(context, _today(config), cache)
            found |= set(diagnostics)
        _report(found, strict=config.strict)
        self._pages = make_pages(maker)
        alive = [entry.item for _, entry in book.entries()]
        self._memo.forget({id(thing) for thing in (*alive, *self._pages)})
        if self._folder:
            config.site_dir = str(self._folder.begin())

    def _plan_jobs(self, context: Context, today: date, cache: Path) -> tuple[dict[str, PlannedJob], list[Diagnostic]]:
        """Every job planned, and the diagnostics."""
        from build_tools.plan.cache import plan_jobs  # a book without jobs never loads the solver

        return plan_jobs(context, today, cache)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Replace the YAML files by the pages made from them."""
        folder, context = Path(config.docs_dir), self._maker.context
        for file in [file for file in files if file.abs_src_path and Path(file.abs_src_path).is_relative_to(folder)]:
            files.remove(file)
        theme_style = _theme_style(files)
        config.nav = navigation(context, self._pages)
        before, self._written = self._written, Written(config.site_dir, str(config.nav))
        in_nav = {source for line in config.nav for source in _sources(line)}
        for page in self._pages:
            self._written.things[page.url] = page
            files.append(_engine_page(page, config, in_nav, same=before.has(page.url, self._written)))
        edition = datetime.now(UTC).strftime("%Y-%m-%d")
        found = {"assets/script/found.js": search_data(self._pages, self._maker.words, self._memo)}
        made = found | site_files(context, self._maker.pictures, edition, _cache_folder(config)) | self._job_files()
        made["assets/crew.css"] = whole_style(theme_style)
        made["site.webmanifest"] = manifest(config.site_name, config.site_description or "", context.book.language)
        for url, content in made.items():
            self._written.things[url] = content
            files.append(BookFile.made(config, url, content, same=before.has(url, self._written)))
        for url in before.things.keys() - self._written.things.keys():
            Path(config.site_dir, url).unlink(missing_ok=True)
        if before.navigation != self._written.navigation or before.folder != config.site_dir:
            self._frames = {}
        return files

    def _job_files(self) -> dict[str, str | bytes]:
        if not self._maker.jobs:
            return {}
        from build_tools.pages.jobs.files import job_files

        return job_files(self._maker)

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> None:
        """Keep the navigation for the frames."""
        self._nav = nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> None:
        """Render a frame for each folder whose pages stand outside the navigation, where it is not held already.

        The engine's templates write what they are given as it is, titles in the menu too: here text becomes HTML.
        """
        env.autoescape = True
        env.globals["crew"] = for_the_frame(self._maker.words, signs()["sun"], self._preview)
        for file in files.documentation_pages():
            folder = _folder(file)
            if isinstance(file.page, FramedPage) and folder not in self._frames:
                self._frames[folder] = _frame(folder, env, self._nav, files, config)

    def on_page_context(
        self, context: TemplateContext, *, page: EnginePage, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Fill the frame of a page that stands outside the navigation."""
        if isinstance(page, FramedPage):
            frame = self._frames[_folder(page.file)]
            finished = {"finished": frame.fill(page.made, page.canonical_url or "")}
            context.update(finished)  # type: ignore[typeddict-item]  # our own template takes it
        return context

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Write the list of every file that a device keeps, once all of them lie there, and put the site in its
        place."""
        _collect_again()
        site, maker = Path(config.site_dir), self._maker
        if self._preview:
            write_preview(site)
        else:
            made = datetime.now(UTC).strftime("%Y-%m-%dT%H:%MZ")
            try:
                write_offline(site, made, maker.words, maker.book.language)
            except Unserved as file:
                raise PluginError(str(file)) from None
        if self._folder:
            config.site_dir = str(self._folder.finish())

    def on_serve(self, server: LiveReloadServer, *, config: MkDocsConfig, builder: Callable[..., None]) -> None:
        """Let the preview end with its main thread: told to end while the one that answers is being started, MkDocs
        takes that one for not there, and waits for it without end."""
        server.serve_thread.daemon = True

    def on_build_error(self, *, error: Exception) -> None:
        """Leave nothing switched off and nothing half written; what the disk refuses is no traceback."""
        _collect_again()
        self.on_shutdown()
        if isinstance(error, OSError) and error.errno in REFUSED:
            log.error(told(error, self._folder.place if self._folder else Path("the preview")))
            raise Abort("Nothing was built; a site that was there is as it was.") from None

    def on_shutdown(self) -> None:
        """Remove what a build began that was stopped."""
        with suppress(OSError):
            if self._folder:
                self._folder.drop()


def _today(config: MkDocsConfig) -> date:
    """The day that jobs are planned from: ``extra: today`` of the settings, or the day of the build."""
    given = str(config.extra.get("today") or "")
    return date.fromisoformat(given) if given else datetime.now().date()


def _published_at(config: MkDocsConfig) -> str:
    """The ``site_url`` of the settings, ending in ``/``: a preview puts its own address in its place."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)  # the only place where the settings stand as written
        written = config.user_configs
    given = next((str(one["site_url"]) for one in reversed(written) if one.get("site_url")), "")
    return f"{given.rstrip('/')}/" if given else ""


@dataclass(slots=True)
class Written:
    """What the last build put into the folder of the site, by address, and the navigation that stood around it."""

    folder: str
    navigation: str = ""
    things: dict[str, Page | str | bytes] = field(default_factory=dict)

    def has(self, url: str, now: Written) -> bool:
        """Whether what is made now stands there already."""
        around = (self.folder, self.navigation) == (now.folder, now.navigation)
        return around and self.things.get(url) == now.things[url]


class BookFile(File):
    """A generated file that knows whether it differs from the last build, for a preview that writes only changes."""

    same = False

    @classmethod
    def made(
        cls,
        config: MkDocsConfig,
        url: str,
        content: str | bytes,
        *,
        same: bool,
        inclusion: InclusionLevel = InclusionLevel.UNDEFINED,
    ) -> BookFile:
        """A file of the site that holds this content."""
        file: BookFile = cls.generated(config, url, content=content, inclusion=inclusion)  # type: ignore[assignment]
        file.same = same
        return file

    def is_modified(self) -> bool:
        """Whether it has to be written again; asked only where MkDocs keeps the folder between builds (``--dirty``)."""
        return not self.same


class MadePage(EnginePage):
    """A page of the book in the navigation: its content is made already, and MkDocs renders the theme around it."""

    def __init__(self, made: Page, file: File, config: MkDocsConfig) -> None:
        super().__init__(made.title, file, config)
        self.made = made
        self.markdown = ""
        self.content = made.content
        self.meta = {"description": made.description}
        self.meta |= {"digest": Markup(made.style_digest), "style": Markup(made.style_element)}
        self.toc = TableOfContents([_anchor(heading) for heading in made.headings])

    def read_source(self, config: MkDocsConfig) -> None:
        """Nothing to read."""

    def render(self, config: MkDocsConfig, files: Files) -> None:
        """Nothing to render: the Markdown of the book is in the content already."""


class FramedPage(MadePage):
    """A page outside the navigation, which shares its frame with its neighbours.

    The frame is filled from the page as it was made, so there is no content.
    """

    def __init__(self, made: Page, file: File, config: MkDocsConfig) -> None:
        super().__init__(made, file, config)
        self.content = ""
        self.meta["template"] = "framed.html"


def _cache_folder(config: MkDocsConfig) -> Path:
    """The folder of what takes long to make, kept between builds: ``extra: cache`` of the settings, or beside them."""
    given = config.extra.get("cache")
    return Path(given) if given else Path(config.config_file_path or "mkdocs.yml").parent / ".cache"


def _collect_again() -> None:
    """Look for garbage again, but not among what a first build has made: that is the book, and stays."""
    if gc.get_freeze_count() == 0:
        gc.freeze()
    gc.enable()


def _report(diagnostics: set[Diagnostic], *, strict: bool) -> None:
    for diagnostic in listed(diagnostics):
        if diagnostic.severity == "error":
            log.error("%s", diagnostic)
        else:
            log.warning("%s", diagnostic)
    if any(strict or diagnostic.severity == "error" for diagnostic in diagnostics):
        raise PluginError(f"The book has {count_line(diagnostics)}.")


def _theme_style(files: Files) -> str:
    """The theme's style sheet, whose used part goes into our own; nothing else that the theme brings is published."""
    style = ""
    for file in [file for file in files if file.src_uri.startswith("assets/")]:
        if re.fullmatch(r"assets/stylesheets/main\.\w+\.min\.css", file.src_uri):
            style = file.content_string
        files.remove(file)
    return style


def _engine_page(page: Page, config: MkDocsConfig, in_nav: set[str], *, same: bool) -> File:
    source = page.url.removesuffix(".html") + ".md"
    listed = source in in_nav
    level = InclusionLevel.INCLUDED if listed else InclusionLevel.NOT_IN_NAV
    file = BookFile.made(config, source, "", same=same, inclusion=level)
    (MadePage if listed else FramedPage)(page, file, config)
    return file


def _frame(folder: str, env: Environment, nav: Navigation, files: Files, config: MkDocsConfig) -> Frame:
    """The theme rendered around marks, with the folder's own page shown as the place in the navigation."""
    file = File.generated(config, f"{folder}/frame.md", content="")
    page = EnginePage(MARKS["title"], file, config)
    page.markdown, page.content = "", MARKS["content"]
    page.meta = {name: MARKS[name] for name in ("description", "digest", "style")}
    page.toc = TableOfContents([AnchorLink(MARKS["toc"], MARKS["first"], 2)])
    if page.canonical_url:
        page.canonical_url = MARKS["address"]
    home = next((one for one in nav.pages if one.file.src_uri == f"{folder}/index.md"), None)
    if home is not None:
        home.active = True
    context = config.plugins.on_page_context(get_context(nav, files, config, page), page=page, config=config, nav=nav)
    rendered = env.get_template("main.html").render(context)
    if home is not None:
        home.active = False
    return Frame(rendered)


def _folder(file: File) -> str:
    return file.src_uri.rpartition("/")[0]


def _sources(line: Any) -> list[str]:
    """The source files that a line of the navigation names."""
    if isinstance(line, str):
        return [line]
    return [source for inner in (line.values() if isinstance(line, dict) else line) for source in _sources(inner)]


def _anchor(heading: Heading, level: int = 2) -> AnchorLink:
    link = AnchorLink(heading.title, heading.id, level)
    link.children = [_anchor(below, level + 1) for below in heading.below]
    return link
