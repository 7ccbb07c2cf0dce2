"""The pages and files of a site as MkDocs takes them, and the frame that its theme puts around pages."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from jinja2 import Environment
from markupsafe import Markup
from mkdocs.commands.build import get_context
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as EnginePage
from mkdocs.structure.toc import AnchorLink, TableOfContents

from build_tools.pages.frame import MARKS, Frame
from build_tools.pages.page import Heading, Page
from build_tools.pipeline import Site


@dataclass(slots=True)
class LastBuild:
    """What the last build put into the folder of the site, by address, and the navigation that stood around it."""

    folder: str
    navigation: str = ""
    things: dict[str, Page | str | bytes] = field(default_factory=dict)

    def has(self, url: str, now: LastBuild) -> bool:
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


def engine_files(
    site: Site, style: dict[str, str], config: MkDocsConfig, last: LastBuild, now: LastBuild
) -> Iterator[File]:
    """Every page and file of a site, and the style sheet by its address; each is written down in ``now``, and knows
    whether the last build left the same."""
    in_nav = {source for line in site.navigation for source in sources_of(line)}
    for page in site.pages:
        now.things[page.url] = page
        source = page.url.removesuffix(".html") + ".md"
        listed = source in in_nav
        level = InclusionLevel.INCLUDED if listed else InclusionLevel.NOT_IN_NAV
        file = BookFile.made(config, source, "", same=last.has(page.url, now), inclusion=level)
        (MadePage if listed else FramedPage)(page, file, config)
        yield file
    for url, content in {**site.files, **style}.items():
        now.things[url] = content
        yield BookFile.made(config, url, content, same=last.has(url, now))


def render_frame(folder: str, env: Environment, nav: Navigation, files: Files, config: MkDocsConfig) -> Frame:
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


def take_theme_style(files: Files) -> str:
    """The theme's style sheet, whose used part goes into our own; nothing else that the theme brings is published."""
    style = ""
    for file in [file for file in files if file.src_uri.startswith("assets/")]:
        if re.fullmatch(r"assets/stylesheets/main\.\w+\.min\.css", file.src_uri):
            style = file.content_string
        files.remove(file)
    return style


def folder_of(file: File) -> str:
    """The folder that a file stands in, whose pages share a frame."""
    return file.src_uri.rpartition("/")[0]


def sources_of(line: Any) -> list[str]:
    """The source files that a line of the navigation names."""
    if isinstance(line, str):
        return [line]
    return [source for inner in (line.values() if isinstance(line, dict) else line) for source in sources_of(inner)]


def _anchor(heading: Heading, level: int = 2) -> AnchorLink:
    link = AnchorLink(heading.title, heading.id, level)
    link.children = [_anchor(below, level + 1) for below in heading.below]
    return link
