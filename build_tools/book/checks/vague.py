"""Words that stand in place of a figure, a sign or a test: nobody can see whether they are done."""

from __future__ import annotations

import re
from collections.abc import Iterator

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.base import Prose
from build_tools.book.traverse import traversed

WORDS = {
    **dict.fromkeys(("properly", "correctly", "make sure"), "{}"),
    **dict.fromkeys(("adequate", "sufficient", "appropriate"), "{}(?:ly)?"),
    **dict.fromkeys(("needed", "required", "necessary"), "(?:as|if|where|when) {}"),
    "suitabl": "{}[ey]",
    "satisfactor": "{}(?:y|ily)",
    "ensure": "{}s?",
}
"""What each has in it, and all of it: to look for the first takes a tenth of the time."""
VAGUE = re.compile(rf"\b({'|'.join(whole.format(part) for part, whole in WORDS.items())})\b", re.IGNORECASE)
PLACES = {"steps", "acceptance", "safety"}
"""The parts of a procedure that are worked from. A summary may speak loosely."""


def vague_words(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """Each such word of the steps, the safety messages and the acceptance."""
    for location, kind, prose in traversed(entry.item, context.memo):
        if kind is not Prose or location[0] not in PLACES:
            continue
        words = prose.inside(context.book.language)
        lower = words.lower()
        if any(part in lower for part in WORDS) and (found := VAGUE.search(words)):
            yield entry.error(
                location,
                f"'{found[0]}' is nothing that somebody can see",
                "write the figure to hit, the sign to look for or the test to make",
            )
