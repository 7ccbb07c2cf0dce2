"""What can be found: every page and place that has words, as a script that the search loads when it is first asked.

A script and no data file, since a page that is opened from a folder may not read files.
"""

from __future__ import annotations

import re
from functools import partial
from typing import Any

from build_tools.book.memo import Memo
from build_tools.browser.in_script import data_in_script
from build_tools.pages.page import Page

_WORD = re.compile(r"[a-z][a-z0-9]{3,}")
"""Words that a mistyped one may have meant; shorter ones forgive no slip."""


def search_data(pages: list[Page], words: dict[str, str], memo: Memo) -> str:
    """The script: ``crewSearch.entries`` are ``[address, title, other names, weight, text]``, ``words`` all words.

    An entry for an emergency has its phrases as a sixth part.

    ``words`` of the pages: title of the field, hint, what is said when nothing is found or a slip was forgiven.
    """
    made = [memo.of("search", page, None, partial(_of_page, page)) for page in pages]
    known = sorted(set().union(*(some for _, some in made)))
    said = {name: words[f"search_{name}"] for name in ("title", "hint", "nothing", "meant", "shut")}
    entries = ",".join(text for text, _ in made if text)
    return f'window.crewSearch={_text({**said, "words": known})[:-1]},"entries":[{entries}]}};\n'


def entry_rows(page: Page) -> list[list[Any]]:
    """One entry for each thing on a page that can be found. Other names weigh more than any text."""
    return [
        [found.url, found.title, ", ".join(found.tags), found.boost, found.text]
        + ([list(found.emergency)] if found.emergency else [])
        for found in page.search_entries
    ]


def _of_page(page: Page) -> tuple[str, set[str]]:
    text = " ".join(" ".join((one.title, *one.tags, one.text, *one.emergency)) for one in page.search_entries).lower()
    return ",".join(_text(entry) for entry in entry_rows(page)), set(_WORD.findall(text))


def _text(data: Any) -> str:
    return data_in_script(data)
