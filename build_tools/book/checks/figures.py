"""A figure in prose that repeats a crew standard should be a reference to it, so that it follows when that changes.

Equal figures are common: 1/4 in is a gap, a fall in each foot and the head of a nail. So the figure, its unit and its
subject must all agree. The subject does where the standard itself is named right beside the figure, or where the
sentence holds every word of its title. Everything less is left alone: who obeys a false warning spoils the book.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.base import Prose
from build_tools.book.references import references_of
from build_tools.book.traverse import traversed
from calculators.reading import Unreadable, read_number_with_unit
from calculators.unit_words import UNIT_WORDS

NUMBER = r"(?<![\w./-])(\d[\d,]{0,12}(?:\.\d{1,6})?(?:[ -]\d{1,3}/\d{1,3}|/\d{1,3})?)"
UNIT = (
    "in/ft|inches|inch|in|ft|feet|foot|mm|cm|m|%|percent|hours|hour|h|days|day|min|minutes"
    "|lb|°F|F|psi|sq ft|cu yd|[\"'″′]"
)
FIGURE = re.compile(rf"{NUMBER}\s*({UNIT})(?![\w/])")
DIGIT = re.compile("[0-9]")
PART_OF_MORE = re.compile(rf"(?:\d\s*(?:{UNIT})?\s*(?:to|and|or|x|by|[-–])?|\b(?:x|by))\s*$")
"""What stands before a figure that is the end of a range, a second dimension or the inches of feet and inches."""
GOES_ON = re.compile(
    r"\s*(?:/|[-–x]?\s*\d|(?:to|and|or|by)\s+\d|(?:in|for|to)\s+(?:a|the|each|every|\d)|per|each|every|a)\b"
)
"""What stands after a figure that is a rate (1/4 in in each foot), a start of a range, or one of several dimensions."""
LINK = re.compile(r"\[[^\[\]]*\]\([^()]*\)")
NEAR = 40
"""Letters before a figure in which its range or its other dimension stands."""
BESIDE = r"[\s,(=]*(?:(?:that|which|is|the|or|of|a)[\s,(]+){0,3}"
"""What may stand between a standard and its own figure."""
TYPED = {"″": '"', "′": "'", "percent": "%"}
SENTENCE_END = re.compile(r"(?<=[.!?;])\s+")
WORD = re.compile(r"[a-z]{2,}")
SMALL_WORDS = set("of the an at to and or in on for by from with is be as it its per most least each".split())


def repeated_values(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """Figures of a procedure's prose against the standards that it uses, and those of its own trade."""
    standards = _standards_near(context, entry)
    if not standards:
        return
    for location, kind, prose in traversed(entry.item, context.memo):
        if kind is not Prose:
            continue
        words = prose.inside(context.book.language)
        for sentence in SENTENCE_END.split(words) if DIGIT.search(words) else ():
            for figure, number in _figures_in(sentence):
                for id in standards.get(number, ()):
                    if _same_subject(context, id, sentence, figure):
                        yield entry.warning(
                            location,
                            f"'{figure}' repeats the crew standard '{id}'",
                            f"write [](value:{id}), so that the page follows when the standard changes",
                        )
                        break


def _figures_in(sentence: str) -> Iterator[tuple[str, tuple[float, str]]]:
    """The figures that stand for themselves, outside of links."""
    text = LINK.sub(lambda link: "\0" * len(link[0]), sentence)
    for match in FIGURE.finditer(text):
        before = text[max(0, match.start() - NEAR) : match.start()]
        if PART_OF_MORE.search(before) or GOES_ON.match(text, match.end()):
            continue
        number = _read(match[0])
        if number is not None:
            yield match[0], number


def _same_subject(context: Context, id: str, sentence: str, figure: str) -> bool:
    link = rf"\[[^\]]*\]\(value:{id}\)"
    written = re.escape(figure)
    if re.search(rf"{link}{BESIDE}{written}|{written}{BESIDE}{link}", sentence):
        return True
    subject = _words(context.book.values[id].item.title.inside(context.book.language))
    return len(subject) > 1 and subject <= _words(LINK.sub(" ", sentence))


def _words(text: str) -> frozenset[str]:
    """The words that carry meaning, in the singular as far as an ``s`` tells."""
    return frozenset(word.removesuffix("s") for word in WORD.findall(text.lower()) if word not in SMALL_WORDS)


def _standards_near(context: Context, entry: ProcedureEntry) -> dict[tuple[float, str], list[str]]:
    used = {ref.target for ref in references_of(entry, context.book, context.memo) if ref.scheme == "value"}
    found: dict[tuple[float, str], list[str]] = {}
    for id, file, figure in context.memo.named("figures", context.fingerprint, lambda: _figures(context)):
        if id in used or file == entry.trade:
            found.setdefault(figure, []).append(id)
    return found


def _figures(context: Context) -> list[tuple[str, str, tuple[float, str]]]:
    """Every standard that can be read: its id, the name of its file, its figure."""
    values = [(id, value, _read(value.item.quantity)) for id, value in context.book.values.items()]
    return [(id, Path(value.document.file).stem, figure) for id, value, figure in values if figure is not None]


@lru_cache(maxsize=20_000)
def _read(text: str) -> tuple[float, str] | None:
    """The figure in the unit of the inside, and the unit that it is written in."""
    match = FIGURE.fullmatch(text)
    try:
        number, quantity = read_number_with_unit(text.replace("percent", "%"))
    except Unreadable:
        return None
    unit = TYPED.get(match[2], match[2]) if match else quantity
    return round(number, 6), UNIT_WORDS.get(unit, [quantity, unit])[1]
