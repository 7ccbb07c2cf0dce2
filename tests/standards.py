"""The crew standards of the book, each with another figure to try, and the book in memory with one of them changed."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache
from typing import Any

from build_tools.book.amounts import read_figure, split_amount
from build_tools.book.checks.context import Context
from build_tools.book.index import Index
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.commands.site import BOOK
from calculators.declaration import Calculator, Refused
from calculators.house.truck_trips import NAMES
from calculators.limits import limits
from calculators.reading import Unreadable
from calculators.run import read_input, run
from calculators.shapes import read_plan
from tests.drawn_inputs import drawn_cases

PROBES = 150
"""Drawn inputs of a calculator that are tried, to see whether a standard bears on its answer."""
OTHER = (1.25, 0.75, 1.125, 0.875, 1.5, 0.5, 2.0, 1.0625, 0.9375)
"""Parts of itself that a standard is changed to, until one lies within the limits of all that starts at it."""


@lru_cache
def context() -> Context:
    """The book as it is."""
    return Context.of(load_book(BOOK).book, Memo())


IDS = sorted(load_book(BOOK).book.values)


@lru_cache
def other(id: str) -> str:
    """Another figure for a standard, of the same kind and within the limits of all that starts at it."""
    written = context().book.values[id].item.quantity
    ratio = re.fullmatch(r"1:(\d+)", written)
    parts = split_amount(written)
    if ratio:
        return f"1:{int(ratio.group(1)) + 2}"
    assert parts is not None, written
    counts = parts.unit in ("each", "") and parts.number == int(parts.number) and parts.number < 100
    found = [parts.number + step for step in (1, -1)] if counts else [parts.number * part for part in OTHER]
    return next(text for text in (f"{number:g} {parts.unit}".strip() for number in found) if _fits(id, text))


def _fits(id: str, text: str) -> bool:
    for calculator, name in starts(id):
        item = calculator.input(name)
        assert item is not None
        try:
            value = read_input(item, other_of(id, calculator.name, name, text))
        except Refused:
            return False
        if limits([item], {name: value}):
            return False
        try:
            run(calculator, {**probes(calculator.name)[0], name: value})
        except Refused:
            return False
    try:
        return read_figure(text)[1] == read_figure(context().book.values[id].item.quantity)[1]
    except Unreadable:
        return False


def starts(id: str) -> list[tuple[Calculator, str]]:
    """The inputs that start at a standard."""
    places = context().book.values[id].item.starts()
    return [(context().calculators[start.calculator], start.input) for start in places]


def other_of(id: str, calculator: str, name: str, text: str = "") -> str:
    """The other figure, or the one given, as an input that starts at the standard takes it: with the input's way."""
    ways = {start[:2]: start.way for start in context().book.values[id].item.starts()}
    return f"{text or other(id)} {ways[calculator, name]}".rstrip()


@lru_cache
def with_other(id: str) -> Context:
    """The book with that one standard changed."""
    held = context()
    return _changed(held, id)


def _changed(held: Context, id: str) -> Context:
    entry = held.book.values[id]
    values = {**held.book.values, id: replace(entry, item=entry.item.model_copy(update={"quantity": other(id)}))}
    index = Index(dict(held.index.targets), held.index.steps, held.index.used_in, held.index.quoted)
    return replace(held, book=replace(held.book, values=values, _standards=None), index=index, _tables={}, _calls={})


def given(id: str) -> dict[str, Any]:
    """The new figure in the unit of the inside, by ``calculator.input``."""
    found = {}
    for calculator, name in starts(id):
        item = calculator.input(name)
        assert item is not None
        found[f"{calculator.name}.{name}"] = read_input(item, other_of(id, calculator.name, name))
    return found


EVERY_KIND = [{"kind": kind, "note": "", "count": 2, "each": 1.0 if kind == "other" else 0.0} for kind in NAMES]
ROOMS = ["8' x 4'", "7' x 3' 1\"", "50 in x 30 in"]


@lru_cache
def probes(name: str) -> list[dict[str, Any]]:
    """Inputs of a calculator: its example and drawn ones; a few small ones of those that take long."""
    calculator = context().calculators[name]
    if name == "rack-room":
        start = {each.name: each.default for each in calculator.inputs}
        return [{**start, "room": read_plan(room)} for room in ROOMS]
    found = [values for values, _ in drawn_cases(calculator, PROBES if calculator.on_site else 0)]
    return [{**values, "items": EVERY_KIND} for values in found[:1]] if name == "truck-load" else found
