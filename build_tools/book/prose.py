"""Markdown of the prose fields: its references, its HTML, its bare words.

Prose is CommonMark with tables. Raw HTML is shown as the text that was written. A link whose address has one of the
book's schemes is a reference; one to the web (``https:``) stays a link; any other is a mistake.

Most prose is words with a reference or two, and a book has tens of thousands of them, so that form is read here
directly; everything else goes to markdown-it. A test holds the two against each other.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from html import escape
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from markdown_it.utils import EnvType, OptionsDict

from build_tools.book.book import FIELD

SCHEMES = (*FIELD, "calculator")
CACHE_SIZE = 100_000
"""Texts whose parts are remembered."""

_LINK = re.compile(r"\[([^\[\]`*_!<&\\\n]*)\]\(([a-z]+:[A-Za-z0-9_#-]+)\)")
_MARKS = re.compile(r"[\\`*_\[\]!|<>&\n]|  ")
_DEFINED = re.compile(r"\[([^\[\]]*)\]:")
_BLOCK_START = re.compile(r"[\s#+\-=~>|]|\d{1,9}[.)]")


@dataclass(frozen=True, slots=True)
class ProseLink:
    """A link of prose: ``[text](scheme:target#step)``. ``scheme`` is empty where the address has none of ours."""

    scheme: str
    target: str
    step: str
    text: str
    address: str


Resolve = Callable[[ProseLink], tuple[str, str] | None]
"""Gives the URL and the title of a reference, or None when it leads nowhere."""


def read_link(address: str, text: str) -> ProseLink:
    """Split a link's address.

    >>> link = read_link("procedure:toilet-set#level", "level it")
    >>> link.scheme, link.target, link.step, link.text
    ('procedure', 'toilet-set', 'level', 'level it')
    """
    scheme, colon, rest = address.partition(":")
    if not colon or scheme not in SCHEMES:
        return ProseLink("", "", "", text, address)
    target, _, step = rest.partition("#")
    return ProseLink(scheme, target, step, text, address)


def prose_links(text: str) -> tuple[ProseLink, ...]:
    """The links of a Markdown text, in order."""
    if "[" not in text and "<" not in text:
        return ()
    parts = _simple(text)
    if parts is not None:
        return tuple(part for part in parts if isinstance(part, ProseLink))
    found = []
    for token in _parsed(text):
        children = token.children or []
        for index, child in enumerate(children):
            if child.type == "link_open":
                found.append(_link_at(children, index))
            elif child.type == "image":
                found.append(ProseLink("image", "", "", child.content, str(child.attrGet("src") or "")))
    return tuple(found)


def html(text: str, resolve: Resolve, *, block: bool) -> str:
    """The HTML of a Markdown text with its references resolved.

    ``block`` keeps the paragraphs; without it a single paragraph loses its own, to stand in a heading or a cell.
    """
    parts = _simple(text)
    if parts is not None:
        words = "".join(part if isinstance(part, str) else _anchor(part, resolve) for part in parts)
        return f"<p>{words}</p>\n" if block else words
    tokens: Sequence[Token] = _parsed(text)
    if not block and len(tokens) == 3 and tokens[0].type == "paragraph_open":
        tokens = tokens[1:2]
    return str(_markdown.renderer.render(tokens, _markdown.options, {"resolve": resolve}))


def plain(text: str, resolve: Resolve) -> str:
    """The words alone, for search and structured data; a reference without text gives its target's title."""
    parts = _simple(text)
    if parts is None:
        words = _plain_words(_parsed(text), resolve)
    elif len(parts) == 1 and isinstance(parts[0], str):
        words = text
    else:
        words = "".join(
            _unescaped(part) if isinstance(part, str) else part.text or _title(part, resolve) for part in parts
        )
    return " ".join(words.split())


def hidden_links(text: str) -> list[str]:
    """The names of addresses of links that stand on lines of their own, which no page shows.

    >>> hidden_links("[It can burn]: http://example.org")
    ['It can burn']
    """
    if "]:" not in text:
        return []
    env: dict[str, Any] = {}
    _markdown.parse(text, env)
    return [name for name in _DEFINED.findall(text) if env.get("references")][:1]


def _plain_words(tokens: Sequence[Token], resolve: Resolve) -> str:
    words: list[str] = []
    for token in tokens:
        children = token.children or []
        for index, child in enumerate(children):
            if child.type == "link_open":
                link = _link_at(children, index)
                words.append("" if link.text else _title(link, resolve))
            else:
                words.append(" " if child.type in ("softbreak", "hardbreak") else child.content)
        if token.type == "inline":
            words.append(" ")
        elif token.type in ("fence", "code_block"):
            words.append(f"{token.content} ")
    return "".join(words)


@lru_cache(maxsize=CACHE_SIZE)
def _simple(text: str) -> tuple[str | ProseLink, ...] | None:
    """The text as escaped words and references, or None where Markdown says more than that."""
    if _BLOCK_START.match(text) or not text or text[-1].isspace():
        return None
    parts: list[str | ProseLink] = []
    pieces = _LINK.split(text)  # words, then again and again the text and the address of a link, and words
    for at in range(0, len(pieces), 3):
        if at > 0:
            link = read_link(pieces[at - 1], pieces[at - 2])
            if not link.scheme:
                return None
            parts.append(link)
        words = pieces[at]
        if _MARKS.search(words):
            return None
        if words:
            parts.append(words.replace('"', "&quot;"))
    return tuple(parts)


def _unescaped(words: str) -> str:
    return words.replace("&quot;", '"') if "&" in words else words


@lru_cache(maxsize=CACHE_SIZE)
def _parsed(text: str) -> tuple[Token, ...]:
    return tuple(_markdown.parse(text))


def _link_at(children: Sequence[Token], index: int) -> ProseLink:
    """The reference whose link opens at that token."""
    words = []
    for child in children[index + 1 :]:
        if child.type == "link_close":
            break
        words.append(child.content)
    return read_link(str(children[index].attrGet("href") or ""), "".join(words))


def _title(link: ProseLink, resolve: Resolve) -> str:
    found = resolve(link)
    return found[1] if found else link.target


def _anchor(link: ProseLink, resolve: Resolve) -> str:
    found = resolve(link)
    words = link.text or (found[1] if found else link.target)
    return f"{_opening(link, found)}{escape(words, quote=False)}</a>"


def _opening(link: ProseLink, found: tuple[str, str] | None) -> str:
    return f'<a href="{escape(found[0]) if found else "#"}" class="ref ref-{link.scheme}">'


def _link_open(renderer: RendererHTML, tokens: Sequence[Token], index: int, options: OptionsDict, env: EnvType) -> str:
    """Renders the start of a link; a reference without text gets its title here."""
    link = _link_at(tokens, index)
    if not link.scheme:
        return str(renderer.renderToken(tokens, index, options, env))
    resolve: Any = env["resolve"]
    found = resolve(link)
    title = "" if link.text else escape(found[1] if found else link.target, quote=False)
    return _opening(link, found) + title


_markdown = MarkdownIt("commonmark", {"html": False}).enable("table")
_markdown.validateLink = lambda url: True  # type: ignore[method-assign]  # the reference check refuses all but a few
_markdown.add_render_rule("link_open", _link_open)
_markdown.add_render_rule("table_open", lambda *_: '<table tabindex="0">')  # a wide one scrolls, by the keyboard too
