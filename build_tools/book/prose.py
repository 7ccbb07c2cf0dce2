"""Markdown of the prose fields: its references, and its HTML.

Prose is CommonMark with tables. Raw HTML is shown as the text that was written. A link whose address has one of the
book's schemes is a reference; one to the web (``https:``) stays a link; any other is a mistake.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from html import escape

from markdown_it import MarkdownIt
from markdown_it.token import Token

from build_tools.book.book import FIELD

SCHEMES = (*FIELD, "calculator")

_markdown = MarkdownIt("commonmark", {"html": False}).enable("table")
_markdown.validateLink = lambda url: True  # type: ignore[method-assign]  # the reference check refuses all but a few
_PLAIN_UNLESS = frozenset("\\`*_{}[]()#+-!|<>&~\n\"'0123456789.:")
"""Markdown can only begin with one of these; digits and stops make lists, so they count at the start alone."""
_MARKS = frozenset("\\`*_[]!|<>&\n")


@dataclass(frozen=True, slots=True)
class Reference:
    """A link of prose: ``[text](scheme:target#step)``. ``scheme`` is empty where the address has none of ours."""

    scheme: str
    target: str
    step: str
    text: str
    address: str


Resolve = Callable[[Reference], tuple[str, str] | None]
"""Gives the URL and the title of a reference, or None when it leads nowhere."""


def _is_plain(text: str) -> bool:
    first = text[:1]
    if first in _PLAIN_UNLESS or first.isspace():
        return False
    return not any(mark in _MARKS for mark in text)


def read_reference(address: str, text: str) -> Reference:
    """Split a link's address.

    >>> reference = read_reference("procedure:toilet-set#level", "level it")
    >>> reference.scheme, reference.target, reference.step, reference.text
    ('procedure', 'toilet-set', 'level', 'level it')
    """
    scheme, colon, rest = address.partition(":")
    if not colon or scheme not in SCHEMES:
        return Reference("", "", "", text, address)
    target, _, step = rest.partition("#")
    return Reference(scheme, target, step, text, address)


@lru_cache(maxsize=200_000)
def references(text: str) -> tuple[Reference, ...]:
    """The links of a Markdown text, in order."""
    if "](" not in text and "]:" not in text and "<" not in text:
        return ()
    found = []
    for token in _markdown.parse(text):
        children = token.children or []
        for index, child in enumerate(children):
            if child.type == "link_open":
                found.append(read_reference(str(child.attrGet("href") or ""), _link_text(children, index)))
            elif child.type == "image":
                found.append(Reference("image", "", "", child.content, str(child.attrGet("src") or "")))
    return tuple(found)


def _link_text(children: list[Token], index: int) -> str:
    words = []
    for child in children[index + 1 :]:
        if child.type == "link_close":
            break
        words.append(child.content)
    return "".join(words)


def html(text: str, resolve: Resolve, *, block: bool) -> str:
    """The HTML of a Markdown text with its references resolved.

    ``block`` keeps the paragraphs; without it a single paragraph loses its own, to stand in a heading or a cell.
    """
    if _is_plain(text):
        words = escape(text, quote=False)
        return f"<p>{words}</p>\n" if block else words
    tokens = _markdown.parse(text)
    for token in tokens:
        if token.children:
            _resolve_links(token.children, resolve)
    if not block and len(tokens) == 3 and tokens[0].type == "paragraph_open":
        tokens = tokens[1:2]
    return str(_markdown.renderer.render(tokens, _markdown.options, {}))


def _resolve_links(children: list[Token], resolve: Resolve) -> None:
    index = 0
    while index < len(children):
        child = children[index]
        if child.type == "link_open":
            reference = read_reference(str(child.attrGet("href") or ""), _link_text(children, index))
            if reference.scheme:
                found = resolve(reference)
                child.attrSet("href", found[0] if found else "#")
                child.attrSet("class", f"ref ref-{reference.scheme}")
                if not reference.text:
                    words = Token("text", "", 0)
                    words.content = found[1] if found else reference.target
                    children.insert(index + 1, words)
        index += 1


def plain(text: str, resolve: Resolve) -> str:
    """The words alone, for search and structured data; a reference without text gives its target's title."""
    if _is_plain(text):
        return text
    words = []
    for token in _markdown.parse(text):
        children = token.children or []
        _resolve_links(children, resolve)
        words += ["\n" if child.type in ("softbreak", "hardbreak") else child.content for child in children]
        if token.type == "inline":
            words.append(" ")
    return " ".join("".join(words).split())
