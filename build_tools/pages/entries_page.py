"""A page of reference: every entry of one kind, such as the tools."""

from __future__ import annotations

from typing import Any

from build_tools.pages.helpers import Helpers
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.renderer import Renderer


def entries_page(renderer: Renderer, scheme: str, kind: str) -> Page:
    """The page of a kind, as it was made before where nothing of it has changed."""
    items = [entry.item for entry in renderer.book.kind(scheme).values()]
    users = [renderer.context.index.used_in.get((scheme, id)) for id in renderer.book.kind(scheme)]
    given = (renderer.context.fingerprint, items, users)
    return renderer.context.memo.named(f"page {kind}", given, lambda: _entries(renderer, scheme, kind))


def _entries(renderer: Renderer, scheme: str, kind: str) -> Page:
    url = f"{kind}.html"
    helpers = renderer.helpers(url)
    entries = sorted(renderer.book.kind(scheme).values(), key=lambda entry: helpers.title(scheme, entry.id).lower())
    content = renderer.render("entries.html", helpers, kind=kind, scheme=scheme, entries=entries)
    title = renderer.words[{"values": "standards", "crew": "people"}.get(kind, kind)]
    found = tuple(
        SearchEntry(
            f"{url}#{entry.id}",
            helpers.title(scheme, entry.id),
            _meaning(helpers, entry.item),
            _names(helpers, entry.item),
        )
        for entry in entries
    )
    headings = tuple(Heading(helpers.title(scheme, entry.id), entry.id) for entry in entries)
    return Page(url, title, content, renderer.words[f"{kind}_lead"], headings, found)


def _meaning(helpers: Helpers, item: Any) -> str:
    for field in ("means", "use", "buy", "looks_at", "note"):
        text = getattr(item, field, None)
        if text is not None:
            return helpers.words(text)
    return ""


def _names(helpers: Helpers, item: Any) -> tuple[str, ...]:
    return tuple(helpers.say(name) for name in getattr(item, "other_names", ()))
