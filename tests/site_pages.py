"""Reads finished pages: their elements, links and ids, what a page loads, and whether it is well formed."""

from __future__ import annotations

import posixpath
import re
from functools import cached_property
from pathlib import Path
from urllib.parse import unquote, urlsplit

import html5lib
from bs4 import BeautifulSoup, Tag
from bs4.element import TemplateString

from build_tools.pages.page import Page

LOADING_RELS = {"stylesheet", "icon", "preload", "modulepreload", "prefetch", "preconnect", "dns-prefetch", "manifest"}
CLOSED_BY_GUESS = ("p", "li", "dt", "dd", "tr", "td", "th", "thead", "tbody", "tfoot", "option", "body", "html")
"""Elements whose end tag HTML allows to be left out; ours never is."""


class SitePage:
    """A page by its address from the top of the site; Beautiful Soup reads it, once something is asked of it."""

    def __init__(self, url: str, html: str) -> None:
        self.url = url
        self.html = html

    @classmethod
    def of(cls, page: Page) -> SitePage:
        """The content of a page as the build makes it, found to be well formed."""
        made = cls(page.url, page.content)
        assert made.mistakes() == [], page.url
        return made

    @cached_property
    def soup(self) -> BeautifulSoup:
        """Its tree."""
        return BeautifulSoup(self.html, "lxml")

    def select(self, selector: str) -> list[Tag]:
        """The elements of a CSS selector, in their order."""
        return list(self.soup.select(selector))

    def texts(self) -> list[str]:
        """Each text that is shown, spaces as one."""
        return [" ".join(text.split()) for text in self.soup.stripped_strings]

    def ids(self) -> list[str]:
        """Every id."""
        return [attribute(element, "id") for element in self.soup.find_all(id=True)]

    def links(self) -> list[str]:
        """The addresses of all links."""
        return [attribute(link, "href") for link in self.soup.find_all("a", href=True)]

    def loads(self) -> list[str]:
        """The addresses of everything that a browser fetches to show the page."""
        found = []
        for element in self.soup.find_all(True):
            found += [attribute(element, name) for name in ("src", "poster", "data") if element.has_attr(name)]
            found += [part.split()[0] for part in attribute(element, "srcset").split(",") if part.strip()]
            found += loaded_by_css(attribute(element, "style"))
            if element.name == "link" and LOADING_RELS & set(attribute(element, "rel").split()):
                found.append(attribute(element, "href"))
            if element.name in ("use", "image") and attribute(element, "href")[:1] not in ("", "#"):
                found.append(attribute(element, "href"))
            if element.name == "style":
                found += loaded_by_css(element.get_text())
        return found

    def mistakes(self) -> list[str]:
        """What is not well formed: each error that HTML names, by its line, and each end tag that is left out."""
        parser = html5lib.HTMLParser()
        whole = self.html.lstrip().lower().startswith("<!doctype")
        (parser.parse if whole else parser.parseFragment)(self.html)
        found = [f"line {line}: {html5lib.constants.E[code] % given}" for (line, _), code, given in parser.errors]
        written = re.sub(r"(?s)<(script|style)\b.*?</\1>|<!--.*?-->", "", self.html)
        for tag in CLOSED_BY_GUESS:
            opened, closed = len(re.findall(rf"<{tag}[\s>]", written)), written.count(f"</{tag}>")
            found += [f"{opened} <{tag}>, {closed} </{tag}>"] if opened != closed else []
        return found


def attribute(element: Tag, name: str) -> str:
    """An attribute as it is written; nothing where there is none."""
    value = element.get(name, "")
    return value if isinstance(value, str) else " ".join(value or ())


def text_of(element: Tag) -> str:
    """The words of an element, spaces as one. A template in it shows none; what stands in a template has its own."""
    words = element.get_text()
    if not words and element.find_parent("template"):
        words = element.get_text(types=(TemplateString,))
    return " ".join(words.split())


def loaded_by_css(css: str) -> list[str]:
    """The addresses that a style sheet loads, those within the sheet itself (``data:``, ``#``) left out."""
    found = re.findall(r"""(?:url\(|@import\s+)\s*["']?([^"')\s;]+)""", css)
    return [address for address in found if not address.startswith(("data:", "#"))]


def read_site(site: Path) -> dict[str, SitePage]:
    """Every page of a built site by its address from the top."""
    return {
        path.relative_to(site).as_posix(): SitePage(path.relative_to(site).as_posix(), path.read_text(encoding="utf-8"))
        for path in sorted(site.rglob("*.html"))
    }


def is_elsewhere(address: str) -> bool:
    """Whether an address leads out of the site (``//host`` does as well)."""
    parts = urlsplit(address)
    return bool(parts.scheme or parts.netloc)


def resolve(base: str, address: str) -> tuple[str, str]:
    """An address of the site as written on the page ``base``: the file from the top, and the anchor."""
    parts = urlsplit(address)
    path = unquote(parts.path)
    if not path:
        return base, unquote(parts.fragment)
    joined = path if path.startswith("/") else posixpath.join(posixpath.dirname(base), path)
    return posixpath.normpath(joined).lstrip("/"), unquote(parts.fragment)
