"""A finished page, before the engine puts its frame around it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from build_tools.browser.policy import digest


@dataclass(frozen=True, slots=True)
class Heading:
    """A line of the page's table of contents."""

    title: str
    id: str
    below: tuple[Heading, ...] = ()


@dataclass(frozen=True, slots=True)
class SearchEntry:
    """What search finds: a page or a place on it.

    ``emergency``: words or phrases that bring it up before everything else.
    """

    url: str
    title: str
    text: str
    tags: tuple[str, ...] = ()
    boost: float = 1.0
    emergency: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Page:
    """``url`` is the address from the top of the site; ``links`` are the pages that this one leads to.

    ``style`` holds rules for this page alone: what of the book or of its layout no style sheet can know.
    """

    url: str
    title: str
    content: str
    description: str = ""
    headings: tuple[Heading, ...] = ()
    search_entries: tuple[SearchEntry, ...] = field(default=(), repr=False)
    links: frozenset[str] = field(default=frozenset(), repr=False)
    style: str = ""

    @property
    def top(self) -> str:
        """The way from this page to the top of the site: ``../`` once a folder."""
        return "../" * self.url.count("/")

    @property
    def style_element(self) -> str:
        """Its own rules as an element of the head."""
        return f"<style>{self.style}</style>" if self.style else ""

    @property
    def style_digest(self) -> str:
        """What the page's policy adds for them."""
        return f" {digest(self.style)}" if self.style else ""


def foot_style(text: str) -> str:
    r"""The rule with the words at the foot of each printed sheet: a text of CSS, in which no sign ends anything.

    >>> print(foot_style('Set a "toilet"</style>'))
    :root{--foot:"Set a \22 toilet\22 \3c /style\3e "}
    """
    escaped = re.sub(r"[\"\\<>&\x00-\x1f\x7f-\x9f]", lambda found: f"\\{ord(found[0]):x} ", text)
    return f':root{{--foot:"{escaped}"}}'
