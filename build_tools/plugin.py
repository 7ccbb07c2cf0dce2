"""The doorway to MkDocs: it hands the work to the pipeline, and the pages that come back to the engine.

In the order of MkDocs' events:

- ``on_startup``: being there keeps this object between the builds of a preview, and with it what was made before.
- ``on_config``: our theme folder and style sheet.
- ``on_pre_build``: the whole pipeline; a mistake in the book stops here.
- ``on_files``: hand the pages to MkDocs as generated files.
- ``on_nav``, ``on_env``: render the theme's frame once for each place in the navigation.
- ``on_page_context``: a page outside the navigation gets its frame, filled.
- ``on_post_build``: the list of every file of the site, for devices that keep the book; the site into its place.
"""

from __future__ import annotations

import gc
import logging
from collections.abc import Callable
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path
from typing import Literal

from jinja2 import Environment
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as EnginePage
from mkdocs.utils.templates import TemplateContext

from build_tools.book.diagnostics import count_line, listed, stops
from build_tools.browser.offline import Unserved, write_offline, write_preview
from build_tools.engine_pages import (
    FramedPage,
    LastBuild,
    engine_files,
    folder_of,
    render_frame,
    take_theme_style,
)
from build_tools.engine_settings import options_of
from build_tools.pages.frame import Frame, frame_context
from build_tools.pages.renderer import signs
from build_tools.pages.site_files import whole_style
from build_tools.pipeline import Held, Site, build
from build_tools.site_folder import REFUSED, SiteFolder, refusal_text

log = get_plugin_logger("crew-methods")
THEME = Path(__file__).parent / "theme"


class PluginSettings(Config):  # type: ignore[no-untyped-call]  # MkDocs' own
    """The plugin takes no settings: what a site needs stands in the book."""


class CrewMethodsPlugin(BasePlugin[PluginSettings]):  # type: ignore[no-untyped-call]
    """Makes the site of the book that lies in ``docs_dir``."""

    def __init__(self) -> None:
        self._held = Held()
        self._site: Site
        self._frames: dict[str, Frame] = {}
        self._written = LastBuild("")
        self._preview = False
        self._folder: SiteFolder | None = None

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Being here keeps the plugin between the builds of a preview.

        A ``--dirty`` preview writes only what changed. For this book that misses nothing, since each file knows
        whether it changed (``BookFile`` of ``engine_pages.py``), so MkDocs' warning that it might is not passed on.
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
        """Make every page and file of the book before MkDocs writes anything.

        A mistake stops here, so that a preview goes on showing the last good site. What a build writes goes into a
        folder beside the site's; a preview, whose folder is nobody's, writes into it what changed.
        """
        if not self._preview:
            self._folder = SiteFolder(Path(config.site_dir))
            self._folder.check()
        # A large book is millions of small objects that all stay: looking through them for garbage, again and again,
        # is a quarter of the processor time of a build.
        gc.disable()
        self._site = build(Path(config.docs_dir), options_of(config), self._held)
        for diagnostic in listed(self._site.diagnostics):
            log.log(logging.ERROR if diagnostic.severity == "error" else logging.WARNING, "%s", diagnostic)
        if stops(self._site.diagnostics, strict=config.strict):
            raise PluginError(f"The book has {count_line(self._site.diagnostics)}.")
        if self._folder:
            config.site_dir = str(self._folder.begin())

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Replace the YAML files by the pages made from them."""
        folder, site = Path(config.docs_dir), self._site
        for file in [file for file in files if file.abs_src_path and Path(file.abs_src_path).is_relative_to(folder)]:
            files.remove(file)
        config.nav = site.navigation
        before, self._written = self._written, LastBuild(config.site_dir, str(config.nav))
        style = {"assets/crew.css": whole_style(take_theme_style(files))}
        for file in engine_files(site, style, config, before, self._written):
            files.append(file)
        for url in before.things.keys() - self._written.things.keys():
            Path(config.site_dir, url).unlink(missing_ok=True)
        if before.navigation != self._written.navigation or before.folder != config.site_dir:
            self._frames = {}
        return files

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> None:
        """Keep the navigation for the frames."""
        self._nav = nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> None:
        """Render a frame for each folder whose pages stand outside the navigation, where it is not held already.

        The engine's templates write what they are given as it is, titles in the menu too: here text becomes HTML.
        """
        env.autoescape = True
        env.globals["crew"] = frame_context(self._site.renderer.words, signs()["sun"], self._preview)
        for file in files.documentation_pages():
            folder = folder_of(file)
            if isinstance(file.page, FramedPage) and folder not in self._frames:
                self._frames[folder] = render_frame(folder, env, self._nav, files, config)

    def on_page_context(
        self, context: TemplateContext, *, page: EnginePage, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Fill the frame of a page that stands outside the navigation."""
        if isinstance(page, FramedPage):
            frame = self._frames[folder_of(page.file)]
            finished = {"finished": frame.fill(page.made, page.canonical_url or "")}
            context.update(finished)  # type: ignore[typeddict-item]  # our own template takes it
        return context

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Write the list of every file that a device keeps, once all of them lie there, and put the site in its
        place."""
        _collect_again()
        site, renderer = Path(config.site_dir), self._site.renderer
        if self._preview:
            write_preview(site)
        else:
            made = datetime.now(UTC).strftime("%Y-%m-%dT%H:%MZ")
            try:
                write_offline(site, made, renderer.words, renderer.book.language)
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
            log.error(refusal_text(error, self._folder.place if self._folder else Path("the preview")))
            raise Abort("Nothing was built; a site that was there is as it was.") from None

    def on_shutdown(self) -> None:
        """Remove what a build began that was stopped."""
        with suppress(OSError):
            if self._folder:
                self._folder.drop()


def _collect_again() -> None:
    """Look for garbage again, but not among what a first build has made: that is the book, and stays."""
    if gc.get_freeze_count() == 0:
        gc.freeze()
    gc.enable()
