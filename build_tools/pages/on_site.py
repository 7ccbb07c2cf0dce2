"""What a procedure page hands to the scripts of the work on site: the prints of its steps, and the limits of readings.

A print is a short digest of what a step says. What somebody ticked carries the print that he saw, so that a page can
say that its step has changed since then. A step's number is not in it: steps may change places.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Any

from build_tools.book.book import Book
from build_tools.book.checks.context import Context
from build_tools.book.model.base import Part, Text
from build_tools.book.model.reference import Inspection
from build_tools.book.model.step import Check, Measurement, Step, Way
from build_tools.book.model.table import Call
from build_tools.browser.in_script import data_in_script
from calculators.reading import found_in, read_number_with_unit
from calculators.scanning import plain, spaces_end, unit_at
from calculators.unit_words import UNIT_WORDS
from calculators.units import UNITS, to_inside

STANDARD = re.compile(r"value:([a-z0-9]+(?:-[a-z0-9]+)*)")
_read = lru_cache(maxsize=20_000)(read_number_with_unit)  # a book has few limits, again and again
US_UNITS = {"mm": "in", "cm": "in", "m": "ft", "m2": "sq ft", "m3": "cu yd", "L": "gal", "kg": "lb", "C": "F"}
"""The unit of a reading is that of its limits, in the units in which the whole book asks."""


def digest(text: str, digits: int = 8) -> str:
    """The first digits of the text's SHA-256.

    >>> digest("level")
    '0081779c'
    """
    return hashlib.sha256(text.encode()).hexdigest()[:digits]


def content_hash(part: Step | list[Check], context: Context) -> str:
    """The print of a step, or of the checks at the end; it follows the crew standards that are named in it."""
    values = context.book.values
    parts: Iterable[Part] = [part] if isinstance(part, Step) else part
    written = "\n".join(one.model_dump_json(exclude_defaults=True) for one in parts)
    standards = sorted({id for id in STANDARD.findall(written) if id in values})
    answers = [context.figure(limit) or "" for limit in _worked_out(part)]
    return digest("\n".join([written, *(values[id].item.quantity for id in standards), *answers]))


def _worked_out(part: Step | list[Check]) -> list[Call]:
    """The limits of a step's readings that a calculator gives."""
    read = part.measurements if isinstance(part, Step) else []
    limits = [limit for one in read for side in one.sides for limit in (side.least, side.most)]
    return [limit for limit in limits if isinstance(limit, Call)]


def measure_data(measurement: Measurement, context: Context) -> str:
    """What a reading is held against, as JSON: ``name``, quantity, unit, and lowest and highest or ``ways`` with both.

    The name is the measurement's own, or comes from what is measured, so that it stays when measurements change places
    or a tolerance changes.
    """
    language = context.book.language
    figures = _figures(measurement, context)
    ways = [(way.way.inside(language), _figures(way, context)) for way in measurement.ways]
    every = [figure for given in (figures, *(given for _, given in ways)) for figure in given.values()]
    first = every[0]
    _, quantity = _read(first)
    unit = _unit(first)
    if quantity not in UNITS:
        quantity, unit = "number", "" if quantity == "number" else quantity
    name = measurement.name or digest(measurement.what.inside(language), 6)
    low, high = _limits(figures)
    data: dict[str, Any] = {"name": name, "quantity": quantity, "unit": unit, "low": low, "high": high}
    held = [(way, *_limits(given)) for way, given in ways]
    data["ways"] = [{"way": way, "low": low, "high": high} for way, low, high in held] or None
    return json.dumps(_given(data), separators=(",", ":"))


def _given(data: dict[str, Any]) -> dict[str, Any]:
    """What is there, in each way too."""
    given = {key: item for key, item in data.items() if item is not None}
    return {**given, "ways": [_given(way) for way in data["ways"]]} if data.get("ways") else given


def _figures(part: Measurement | Way, context: Context) -> dict[str, str]:
    """The figures of a measurement or of one of its ways, by the names of their fields."""
    return {
        name: context.figure(written) or ""
        for name in ("target", "within", "plus", "minus", "least", "most")
        if (written := getattr(part, name, None)) is not None
    }


def lookers(inspection: Inspection, book: Book, words: Mapping[str, str]) -> str:
    """Who can be picked as the one who looked at a hold point, as JSON: the crew, and who comes from outside.

    ``people`` are pairs of a name and what that person is ("a helper"), empty where the look is his; ``the`` is whose
    look it is ("the crew lead").
    """
    who = inspection.who.inside(book.language)
    roles = inspection.roles or ([] if inspection.by == "outside" or inspection.people else ["lead"])
    people = [
        (
            person.item.name,
            "" if person.item.role in roles or id in inspection.people else words[f"is_{person.item.role}"],
        )
        for id, person in book.people.items()
    ]
    outside = [(who, "")] if inspection.by == "outside" else []
    data = {"the": _the(who), "people": sorted(people) + outside}
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def _the(who: str) -> str:
    """Whose look it is, inside a sentence.

    >>> _the("Crew lead"), _the("The lead"), _the("A certified renovator")
    ('the crew lead', 'the lead', 'a certified renovator')
    """
    inside = who[:1].lower() + who[1:]
    return inside if inside.startswith(("the ", "a ", "an ")) else f"the {inside}"


def _limits(figures: dict[str, str]) -> tuple[float | None, float | None]:
    """The lowest and the highest reading that passes, in the unit of the inside."""

    def read(name: str) -> float:
        return _read(figures[name])[0]

    if "target" not in figures:
        return (read("least") if "least" in figures else None, read("most") if "most" in figures else None)
    minus, plus = ("minus", "plus") if "plus" in figures else ("within", "within")
    target = read("target")
    return round(target - _size(figures[minus]), 9), round(target + _size(figures[plus]), 9)


def _size(figure: str) -> float:
    """A difference in the unit of the inside: two degrees of heat are a difference, not a place on a scale."""
    value, quantity = _read(figure)
    return value - to_inside(0, quantity, _written(figure)) if quantity == "temperature" else value


@lru_cache(maxsize=20_000)
def _written(figure: str) -> str:
    """The unit in which a figure is written: the last one that stands in it."""
    text, unit, at = plain(figure), "", 0
    while at < len(text):
        word, end = unit_at(text, at)
        if word in UNIT_WORDS:
            unit = UNIT_WORDS[word][1]
        at = spaces_end(text, max(end, at + 1))
    return unit


@lru_cache(maxsize=20_000)
def _unit(figure: str) -> str:
    """The unit that a bare number means in the reading."""
    unit = str(found_in(figure)["unit"]) or _written(figure)
    return US_UNITS.get(unit, unit)


def places_script(context: Context) -> str:
    """The script with the jobs, their spaces and the people of the crew, loaded where somebody chooses."""
    book = context.book

    def say(text: Text) -> str:
        return text.inside(book.language)

    jobs = [
        {
            "id": id,
            "title": say(job.item.title),
            "spaces": [{"id": name, "title": say(space.title)} for name, space in job.item.spaces.items()],
        }
        for id, job in sorted(book.jobs.items())
    ]
    people = sorted(person.item.name for person in book.people.values())
    return f"window.crewPlaces={data_in_script({'jobs': jobs, 'people': people})};\n"
