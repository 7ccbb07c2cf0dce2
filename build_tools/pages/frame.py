"""The theme's frame around a page, rendered once and filled for every page that stands at the same place.

Rendering the whole theme for each procedure is most of the time of a large build, and all that differs are the title,
the description, the address, the table of contents and the content. So the frame is rendered with marks in their
places, and cut at them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from html import escape
from secrets import token_hex
from typing import Any

from markupsafe import Markup

from build_tools.browser.form_script import single
from build_tools.browser.in_script import script_in_page
from build_tools.browser.offline import WORKER
from build_tools.browser.policy import site_policy
from build_tools.pages.page import Heading, Page

PARTS = ("title", "description", "address", "digest", "style", "toc", "first", "content")
MARKS = {name: f"crew{name}{token_hex(8)}mark" for name in PARTS}
"""What stands in the frame for each part of a page; plain letters, so that no filter of a template changes them, and
others each time, so that no title in the menu is one."""
_CUT = re.compile("|".join(f"({mark})" for mark in MARKS.values()))
_NAME = {mark: name for name, mark in MARKS.items()}


class Frame:
    """A frame cut at its marks."""

    def __init__(self, rendered: str) -> None:
        self._parts = [part for part in _CUT.split(rendered) if part]
        missing = [name for name, mark in MARKS.items() if mark not in self._parts and name not in ("address", "first")]
        if missing:
            raise ValueError(f"the theme's frame has no place for {', '.join(missing)}")

    def fill(self, page: Page, address: str) -> str:
        """The finished page; ``address`` is its full one, where the site has one."""
        filling = {
            "title": escape(page.title, quote=False),
            "description": escape(page.description),
            "address": escape(address),
            "digest": page.style_digest,
            "style": page.style_element,
            "toc": "".join(_toc_item(heading) for heading in page.headings),
            "first": page.headings[0].id if page.headings else "",
            "content": page.content,
        }
        return "".join(filling[_NAME[part]] if part in _NAME else part for part in self._parts)


def frame_context(words: Mapping[str, str], sun: str, preview: bool) -> dict[str, Any]:
    """What our parts of the frame need, as ``crew``: words, the sign of the sun, what runs in the head, what a page may
    load and run, and the script that keeps the book, where it is kept."""
    head = script_in_page(single("head"))
    policy = Markup(site_policy(head, preview))
    worker = "" if preview else WORKER
    return {"t": words, "sun": sun, "head": Markup(head), "policy": policy, "worker": worker, "toc": MARKS["toc"]}


def _toc_item(heading: Heading) -> str:
    """A line of the table of contents, with the classes that the theme's own have (``partials/toc-item.html``)."""
    title = escape(heading.title)
    below = ""
    if heading.below:
        lines = "".join(_toc_item(one) for one in heading.below)
        below = f'<nav class="md-nav" aria-label="{title}"><ul class="md-nav__list">{lines}</ul></nav>'
    link = f'<a href="#{heading.id}" class="md-nav__link"><span class="md-ellipsis">{title}</span></a>'
    return f'<li class="md-nav__item">{link}{below}</li>'
