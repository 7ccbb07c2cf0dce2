"""Reading figures as people write them, into the units of the inside.

A bare number means the unit that is asked for. Feet and inches may be written with marks or words (`5' 3-1/2"`,
`5'-3½"`, `5 ft 3 1/2 in`), with typographic marks, dashes and fractions. A space parts thousands (`1 613 mm`) where
exactly three figures follow it; a comma only does so (`1,200`), and `1,5` is refused. In `1 in 48`, `1:48` and
`4 in 12` the two numbers are rise and run. A minus sign holds for the whole figure.
"""

from __future__ import annotations

from math import floor
from typing import Any

from calculators.scanning import Unreadable as Unreadable
from calculators.scanning import amount, is_at, plain, spaces_end, unit_at, unreadable
from calculators.unit_words import EXAMPLES, NAMED, UNIT_WORDS
from calculators.units import to_inside
from calculators.writing_units import one_of

Found = dict[str, Any]
"""What a text holds: ``value`` in the unit of the inside, ``quantity``, ``unit``. A bare number has the quantity
`bare` and its value as written; what cannot be read has `unknown`."""


def found_as(value: float, quantity: str, unit: str) -> Found:
    """A Found."""
    return {"value": value, "quantity": quantity, "unit": unit}


def ratio(rise: float, text: str, at: int) -> Found:
    """A slope whose run stands at the end of the text."""
    run, end = amount(text, at)
    if end == at or end < len(text) or run == 0:
        return found_as(0.0, "unknown", "")
    return found_as(rise / run, "slope", "1:n")


def rise_per(rise: float, text: str, at: int) -> Found:
    """A slope of a rise in inches for one of a unit of length that stands at the end of the text."""
    word, end = unit_at(text, at)
    if end < len(text) or word not in UNIT_WORDS or UNIT_WORDS[word][0] != "length":
        return found_as(0.0, "unknown", "")
    return found_as(rise / to_inside(1, "length", UNIT_WORDS[word][1]), "slope", "in/ft")


def parts_after(first: float, sign: float, unit: str, quantity: str, text: str, at: int) -> Found:
    """A figure in several units, such as 5' 3-1/2", 1 h 30 min, 2 lb 4 oz, from its second part on."""
    total = first
    size = to_inside(1, quantity, unit)
    while at < len(text):
        if unit == "ft" and is_at(text, at, "-"):
            at = spaces_end(text, at + 1)
        value, end = amount(text, at)
        if end == at:
            return found_as(0.0, "unknown", "")
        word, behind = unit_at(text, spaces_end(text, end))
        if word == "" and behind == len(text) and unit == "ft":
            word = "in"
        if word not in UNIT_WORDS or UNIT_WORDS[word][0] != quantity:
            return found_as(0.0, "unknown", "")
        unit = UNIT_WORDS[word][1]
        if to_inside(1, quantity, unit) >= size:
            return found_as(0.0, "unknown", "")
        size = to_inside(1, quantity, unit)
        total = total + sign * to_inside(value, quantity, unit)
        at = spaces_end(text, behind)
    return found_as(total, quantity, unit)


def with_units(number: float, sign: float, text: str) -> Found:
    """A signed number and what stands behind it."""
    if is_at(text, 0, ":"):
        return ratio(number, text, spaces_end(text, 1))
    word, end = unit_at(text, 0)
    after = spaces_end(text, end)
    if word == "in":
        slope = ratio(number, text, after)
        if slope["quantity"] == "slope":
            return slope
    if word == "per":
        return rise_per(number, text, after)
    if word not in UNIT_WORDS:
        return found_as(0.0, "unknown", "")
    quantity = UNIT_WORDS[word][0]
    unit = UNIT_WORDS[word][1]
    value = to_inside(number, quantity, unit)
    if after == len(text):
        return found_as(value, quantity, unit)
    if quantity == "length":
        if is_at(text, after, "/"):
            return rise_per(value, text, spaces_end(text, after + 1))
        joint, behind = unit_at(text, after)
        if joint == "per":
            return rise_per(value, text, spaces_end(text, behind))
    if quantity == "length" or quantity == "time" or quantity == "mass":
        return parts_after(value, sign, unit, quantity, text, after)
    return found_as(0.0, "unknown", "")


def opening(written: str) -> Found:
    """The number that a text starts with (``there`` says whether it does), its sign, and the words behind it."""
    text = plain(written)
    start = 0
    sign = 1.0
    if is_at(text, 0, "+-"):
        start = spaces_end(text, 1)
    if is_at(text, 0, "-"):
        sign = -1.0
    number, end = amount(text, start)
    words = text[spaces_end(text, end) : len(text)]
    return {"there": end > start, "number": sign * number, "sign": sign, "words": words}


def found_in(written: str) -> Found:
    """What a text holds."""
    if plain(written) == "level":
        return found_as(0.0, "slope", "1:n")
    head = opening(written)
    if not head["there"]:
        return found_as(0.0, "unknown", "")
    if head["words"] == "":
        return found_as(head["number"], "bare", "")
    return with_units(head["number"], head["sign"], head["words"])


def why_not(found: Found, quantity: str, unit: str) -> str:
    """The sentence for a figure that is not the quantity wanted."""
    example = EXAMPLES[quantity]
    if (quantity == "count" or quantity == "number") and unit != "":
        example = example + " or " + example + " " + unit
    if found["quantity"] == "unknown":
        return "is not " + NAMED[quantity] + ": write " + example
    given = NAMED[found["quantity"]] if found["quantity"] in NAMED else "in " + found["unit"]
    return "is " + given + "; " + NAMED[quantity] + " is wanted: write " + example


def read_slope(text: str, found: Found, unit: str) -> float:
    """A slope as a ratio, from any of its written forms; less steep than upright."""
    value: float = found["value"]
    form = found["quantity"]
    if form == "slope":
        return float(value)
    if form == "percent":
        return to_inside(value, "slope", "%")
    if form == "angle" or (form == "bare" and unit == "deg"):
        if abs(value) >= 90:
            unreadable(text, "is upright or more: a slope is less than 90 deg")
        return to_inside(value, "slope", "deg")
    if form == "bare":
        if unit == "1:n" and value == 0:
            unreadable(text, "is no slope: write 1:48, or level")
        return to_inside(value, "slope", unit)
    return unreadable(text, why_not(found, "slope", unit))


def read_count(text: str, quantity: str, unit: str) -> float:
    """A count or a plain number, alone or with its own unit word behind it."""
    head = opening(text)
    words = head["words"]
    own = words in ["", "each", "ea"] or (unit != "" and one_of(words) == one_of(plain(unit)))
    if not head["there"] or not own:
        unreadable(text, why_not(found_in(text), quantity, unit))
    value = float(head["number"])
    if quantity == "count" and floor(value) != value:
        unreadable(text, "is not a whole number: write 3")
    return value


def read(text: str, quantity: str, unit: str) -> float:
    """A written figure of the wanted quantity, in the unit of the inside. A bare number means ``unit``.

    >>> [read("5' 3-1/2\\"", "length", "in"), read("1613 mm", "length", "in"), read("2 %", "slope", "%")]
    [63.5, 63.503937, 0.02]
    >>> read("3 lb", "length", "in")
    Traceback (most recent call last):
    calculators.scanning.Unreadable: '3 lb' is a mass; a length is wanted: write 5' 3-1/2", 63-1/2 in or 1613 mm
    """
    if text.strip() == "":
        unreadable(text, "is empty: write " + EXAMPLES[quantity])
    if quantity == "count" or quantity == "number":
        return read_count(text, quantity, unit)
    found = found_in(text)
    if quantity == "slope":
        return read_slope(text, found, unit)
    if found["quantity"] == "bare":
        return to_inside(found["value"], quantity, unit)
    if found["quantity"] != quantity:
        unreadable(text, why_not(found, quantity, unit))
    return float(found["value"])


def read_number_with_unit(text: str) -> tuple[float, str]:
    """A written figure in the unit of the inside, and its quantity, which its unit decides.

    A bare number is a `number`, `2 %` a `percent` and `1.2 deg` an `angle`; `1:48` and `1/4 in/ft` are a `slope`. A
    unit without conversion is its own quantity: `3000 psi` gives `psi`.

    >>> [read_number_with_unit("1/4 in"), read_number_with_unit("3 days"), read_number_with_unit("3000 psi")]
    [(0.25, 'length'), (72.0, 'time'), (3000.0, 'psi')]
    """
    found = found_in(text)
    if found["quantity"] == "unknown":
        unreadable(text, "is not a number with a unit that is known: write for example 1/4 in, 24 h, 2 % or 1:48")
    return (found["value"], "number") if found["quantity"] == "bare" else (found["value"], found["quantity"])
