"""A figure in prose that repeats a crew standard should be a reference to it, so that it follows when that changes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.model.base import Prose
from build_tools.book.problems import Problem
from build_tools.book.uses import uses_of
from build_tools.book.walk import walked
from calculators.reading import Unreadable, read_number_with_unit

NUMBER = r"(?<![\w./-])(\d[\d,]*(?:\.\d+)?(?:[ -]\d+/\d+|/\d+)?)"
UNIT = (
    "in/ft|inches|inch|in|ft|feet|foot|mm|cm|m|%|percent|hours|hour|h|days|day|min|minutes"
    "|lb|°F|F|psi|sq ft|cu yd|[\"'″′]"
)
FIGURE = re.compile(rf"{NUMBER}\s*({UNIT})(?![\w/])")
DIGIT = re.compile(r"\d")
LINK = re.compile(r"\[[^\]]*\]\([^)]*\)")


def repeated_values(context: Context, entry: ProcedureEntry) -> Iterator[Problem]:
    """Figures of a procedure's prose against the standards that it uses, and those of its own trade."""
    standards = _standards_near(context, entry)
    if not standards:
        return
    for location, kind, prose in walked(entry.item, context.memo):
        if kind is not Prose:
            continue
        text = prose.inside(context.book.language)
        if not DIGIT.search(text):
            continue
        for match in FIGURE.finditer(LINK.sub(" ", text)):
            id = standards.get(_read(match.group(0)))
            if id is not None:
                yield entry.warning(
                    location,
                    f"'{match.group(0)}' repeats the crew standard '{id}'",
                    f"write [](value:{id}), so that the page follows when the standard changes",
                )


def _standards_near(context: Context, entry: ProcedureEntry) -> dict[tuple[float, str] | None, str]:
    used = {use.target for use in uses_of(entry, context.book, context.memo) if use.scheme == "value"}
    found: dict[tuple[float, str] | None, str] = {}
    for id, file, figure in context.memo.named("figures", context.fingerprint, lambda: _figures(context)):
        if id in used or file == entry.trade:
            found.setdefault(figure, id)
    return found


def _figures(context: Context) -> list[tuple[str, str, tuple[float, str]]]:
    """Every standard that can be read: its id, the name of its file, its figure."""
    values = [(id, value, _read(value.item.quantity)) for id, value in context.book.values.items()]
    return [(id, Path(value.document.file).stem, figure) for id, value, figure in values if figure is not None]


@lru_cache(maxsize=20_000)
def _read(text: str) -> tuple[float, str] | None:
    try:
        number, quantity = read_number_with_unit(text.replace("percent", "%"))
    except Unreadable:
        return None
    return round(number, 6), quantity
