"""The search index: what can be found, in the form that the theme's search reads."""

from __future__ import annotations

import json
from functools import partial
from pathlib import Path
from typing import Any

from build_tools.book.memo import Memo
from build_tools.pages.page import Page


def add_to_index(index: Path, pages: list[Page], memo: Memo) -> None:
    """Put what the pages offer to search into the index that the theme's own plugin wrote."""
    data = json.loads(index.read_text(encoding="utf-8"))
    docs = [_text(entry) for entry in data.pop("docs")]
    docs += [text for page in pages if (text := memo.of("search", page, None, partial(_texts, page)))]
    settings = _text(data)
    index.write_text(f'{settings[:-1]},"docs":[{",".join(docs)}]}}', encoding="utf-8")


def search_entries(page: Page) -> list[dict[str, Any]]:
    """One entry for each thing on a page that can be found. Other names are tags, which weigh more than any text."""
    entries = []
    for found in page.found:
        entry: dict[str, Any] = {"location": found.url, "title": found.title, "text": found.text}
        if found.tags:
            entry["tags"] = list(found.tags)
        if found.boost != 1:
            entry["boost"] = found.boost
        entries.append(entry)
    return entries


def _texts(page: Page) -> str:
    return ",".join(_text(entry) for entry in search_entries(page))


def _text(data: Any) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))
