"""A finished page, before the engine puts its frame around it."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Heading:
    """A line of the page's table of contents."""

    title: str
    id: str
    below: tuple[Heading, ...] = ()


@dataclass(frozen=True, slots=True)
class Found:
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
    """``url`` is the address from the top of the site; ``links`` are the pages that this one leads to."""

    url: str
    title: str
    content: str
    description: str = ""
    headings: tuple[Heading, ...] = ()
    found: tuple[Found, ...] = field(default=(), repr=False)
    links: frozenset[str] = field(default=frozenset(), repr=False)

    @property
    def top(self) -> str:
        """The way from this page to the top of the site: ``../`` once a folder."""
        return "../" * self.url.count("/")
