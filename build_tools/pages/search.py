"""The search index: what can be found, in the form that the theme's search reads."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from build_tools.pages.page import Page


def add_to_index(index: Path, pages: list[Page]) -> None:
    """Put what the pages offer to search into the index that the theme's own plugin wrote."""
    data = json.loads(index.read_text(encoding="utf-8"))
    data["docs"] += search_entries(pages)
    index.write_text(json.dumps(data, ensure_ascii=False, separators=(",", ":")), encoding="utf-8")


def search_entries(pages: list[Page]) -> list[dict[str, Any]]:
    """One entry for each thing that can be found. Other names are tags, which weigh more than any text."""
    entries = []
    for page in pages:
        for found in page.found:
            entry: dict[str, Any] = {"location": found.url, "title": found.title, "text": found.text}
            if found.tags:
                entry["tags"] = list(found.tags)
            if found.boost != 1:
                entry["boost"] = found.boost
            entries.append(entry)
    return entries
