"""Reads finished pages with Python's own HTML parser: links, ids, headings, cells, and what the page loads."""

from __future__ import annotations

import posixpath
import re
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}
UNSEEN = {"script", "style", "template"}
LOADING_RELS = {"stylesheet", "icon", "preload", "modulepreload", "prefetch", "preconnect", "dns-prefetch", "manifest"}


@dataclass(eq=False)
class Element:
    """An open or finished element with the words in it; ``above`` are the elements around it, the outermost first."""

    tag: str
    attributes: dict[str, str]
    line: int
    above: tuple[Element, ...]
    words: list[str] = field(default_factory=list)

    @property
    def classes(self) -> list[str]:
        """Its classes."""
        return self.attributes.get("class", "").split()

    @property
    def text(self) -> str:
        """Its words, spaces as one."""
        return " ".join("".join(self.words).split())


class SitePage(HTMLParser):
    """One page: its elements in the order in which they end, each with its text."""

    def __init__(self, url: str, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.url = url
        self.html = html
        self.elements: list[Element] = []
        self.texts: list[str] = []
        self._open: list[Element] = []
        self.feed(html)
        self.close()
        assert self._open == [], f"{url}: never closed: {[(one.tag, one.line) for one in self._open]}"

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        (self.elements if tag in VOID else self._open).append(self._element(tag, attrs))

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append(self._element(tag, attrs))

    def handle_endtag(self, tag: str) -> None:
        assert self._open and self._open[-1].tag == tag, (
            f"{self.url}:{self.getpos()[0]}: </{tag}> ends no open element; open are {[one.tag for one in self._open]}"
        )
        self.elements.append(self._open.pop())

    def handle_data(self, data: str) -> None:
        inert = next((at for at, element in enumerate(self._open) if element.tag == "template"), 0)
        for element in self._open[inert:]:
            element.words.append(data)
        if data.strip() and not any(element.tag in UNSEEN for element in self._open):
            self.texts.append(" ".join(data.split()))

    def _element(self, tag: str, attrs: list[tuple[str, str | None]]) -> Element:
        return Element(tag, {name: value or "" for name, value in attrs}, self.getpos()[0], tuple(self._open))

    def all(self, *tags: str) -> list[Element]:
        """The elements of those kinds, in the order of their lines."""
        return sorted((element for element in self.elements if element.tag in tags), key=lambda element: element.line)

    def by_class(self, name: str) -> list[Element]:
        """The elements of that class, in the order of their lines."""
        found = (element for element in self.elements if name in element.classes)
        return sorted(found, key=lambda element: element.line)

    def within(self, around: Element, *tags: str, named: str = "") -> list[Element]:
        """The elements in another one, of those kinds or that class where they are given."""
        found = self.by_class(named) if named else self.all(*tags) if tags else self.elements
        return [element for element in found if around in element.above]

    def ids(self) -> list[str]:
        """Every id, in the order of the elements' ends."""
        return [element.attributes["id"] for element in self.elements if "id" in element.attributes]

    def links(self) -> list[str]:
        """The addresses of all links."""
        return [link.attributes["href"] for link in self.all("a") if "href" in link.attributes]

    def loads(self) -> list[str]:
        """The addresses of everything that a browser fetches to show the page."""
        found = []
        for element in self.elements:
            attributes = element.attributes
            found += [attributes[name] for name in ("src", "poster", "data") if name in attributes]
            found += [part.split()[0] for part in attributes.get("srcset", "").split(",") if part.strip()]
            found += loaded_by_css(attributes.get("style", ""))
            if element.tag == "link" and LOADING_RELS & set(attributes.get("rel", "").split()):
                found.append(attributes["href"])
            if element.tag in ("use", "image") and not attributes.get("href", "#").startswith("#"):
                found.append(attributes["href"])
            if element.tag == "style":
                found += loaded_by_css("".join(element.words))
        return found

    def element_html(self, id: str) -> str:
        """The source of the element with that id."""
        return self._source(rf'<(\w+)[^<>]* id="{re.escape(id)}"')

    def first_html(self, tag: str, named: str) -> str:
        """The source of the first element of that kind and class."""
        return self._source(rf'<({tag}) class="{re.escape(named)}"')

    def _source(self, opening: str) -> str:
        start = re.search(opening, self.html)
        assert start is not None, f"{self.url} has no {opening}"
        depth = 0
        for tag in re.finditer(rf"<(/?){start[1]}\b", self.html[start.start() :]):
            depth += -1 if tag[1] else 1
            if depth == 0:
                end = self.html.index(">", start.start() + tag.start())
                return self.html[start.start() : end + 1]
        raise AssertionError(f"{self.url}: {opening} is never closed")


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
