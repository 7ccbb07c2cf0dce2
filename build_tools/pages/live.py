"""What a page hands to the script of its live forms: where each form starts, the words, and the scripts to load."""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Mapping
from typing import Any

from markupsafe import Markup

from build_tools.book.book import Book
from build_tools.book.calls import CallResult, resolve
from build_tools.book.model.base import Written
from build_tools.browser.in_script import data_in_script
from calculators.declaration import Calculator, Input

WORDS = "live_"
"""The words of the forms have names that start so."""
SHARED = ("how_worked_out", "answer", "caution", "at_standards")
"""Words that the forms and the pages have in common."""


def open_inputs(called: CallResult, given: Collection[str], standards: Collection[str]) -> list[str]:
    """The inputs that stand open on the page, to be asked for: those given, or else those without a crew standard."""
    names = [each.name for each in called.calculator.inputs]
    return [name for name in names if name in given] or [name for name in names if name not in standards]


def start_of(
    book: Book,
    called: CallResult,
    key: str,
    given: Mapping[str, Any],
    readings: Mapping[str, str],
) -> str:
    """Where a form starts, as JSON: ``key`` is its name in addresses, ``given`` the texts that the page puts in.

    ``readings`` maps inputs to the measurements whose readings are put in once they are there.
    """
    calculator = called.calculator
    texts = {
        each.name: _text(book, each, given[each.name])
        for each in calculator.inputs
        if given.get(each.name) not in (None, "", [])
    }
    return json.dumps({"given": texts, "readings": dict(readings), "key": key}, ensure_ascii=False)


def field_of(declared: Input, words: Mapping[str, str]) -> dict[str, Any]:
    """What stands on the page for an input: its name and label, its help, what can be chosen, and its columns."""
    return {
        "name": declared.name,
        "label": declared.label,
        "help": declared.help,
        "choices": _choices(declared, words),
        "columns": [{"label": column.label, "choices": _choices(column, words)} for column in declared.columns],
    }


def _choices(declared: Input, words: Mapping[str, str]) -> list[tuple[str, str]]:
    """The names that can be chosen, with their labels."""
    if declared.quantity == "yes-no":
        return [(name, words[name]) for name in ("yes", "no")]
    return [(choice.name, choice.label) for choice in declared.choices]


def _text(book: Book, declared: Input, written: Written) -> str:
    """An input as it is typed into a form; rows are parted by `;` and their cells by `,`."""
    resolved = resolve(book, written)
    if isinstance(resolved, list):
        return "; ".join(_row(declared, row) for row in resolved)
    return str(resolved or "")


def _row(declared: Input, row: Mapping[str, Any]) -> str:
    return ", ".join(str(row.get(column.name, "")) for column in declared.columns).rstrip(", ")


def live_page(calculators: Iterable[Calculator], words: Mapping[str, str], top: str) -> Markup:
    """What the script of the forms needs to know of its page, as the text of a data block; nothing where it has none.

    ``scripts`` run the calculators and are loaded when a form comes near, ``draw`` when a drawing has to be drawn anew:
    a page that is only read loads neither. The shared one stands first.
    """
    live = [calculator for calculator in calculators if calculator.on_site]
    on_site = sorted(calculator.name for calculator in live)
    if not on_site:
        return Markup("")
    said = {name.removeprefix(WORDS): text for name, text in words.items() if name.startswith(WORDS)}
    said |= {name: words[name] for name in SHARED}
    page = {
        "top": top,
        "scripts": [_script("crew"), *(_script(f"calculators/{name}") for name in on_site)],
        "draw": [_script("draw")] if any(calculator.drawing for calculator in live) else [],
        "words": said,
    }
    return Markup(data_in_script(page))


def _script(name: str) -> str:
    return f"assets/script/{name}.js"
