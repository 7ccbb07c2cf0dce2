"""Texts that mean harm, and the book with one of them or many in every text field that its model has.

The model's classes are walked, so a field that is added is found by itself.
"""

from __future__ import annotations

import re
import shutil
from collections import Counter, defaultdict
from collections.abc import Callable, Set
from datetime import date
from pathlib import Path
from typing import Any, get_args, get_origin

import yaml
from pydantic import BaseModel

from build_tools.book.book import Entry, ProcedureEntry
from build_tools.book.load import load_book
from build_tools.book.model.base import IsMeasure, RefersTo, Text
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.reference import KINDS, Person
from build_tools.book.text_checks import shows_words
from build_tools.commands.site import BOOK
from calculators.registry import CALCULATORS
from tests.jobs import two_rooms

MODELS: tuple[type[BaseModel], ...] = (Procedure, Job, Person, *KINDS.values())
NAMES = {
    tuple(field.split("."))
    for field in """Axis.input Call.inputs Call.output Form.inputs Form.show Job.begins Material.counted_in
    Opening.lock Picture.file Space.measures Space.rooms Table.fixed
    Table.passes Table.show Task.inputs""".split()
}
"""Texts that name something, or are figures by what they are an input of: the checks take nothing else there."""
TEXT_COLUMNS = {
    (each.name, column.name)
    for calculator in CALCULATORS.values()
    for each in calculator.inputs
    for column in each.columns
    if column.quantity == "text"
}
"""Of the lists that calculators take, what is a text: by the input and the column."""
WAYS = {way for calculator in CALCULATORS.values() for each in calculator.inputs for way in each.ways}
"""The ways of a reading that a form takes over are those of the form."""
REFERENCES = re.compile(r"\[[^\]]*\]\(tool:[^)]*\)")
SIGNS = {"⏎": "\n", "⇥": "\t", "⟱": "\u2028", "⤓": "\u2029"}
"""What stands in the file of the texts for what ends a line."""


def vectors() -> list[str]:
    """The texts of the file, a line each; each would run ``ran`` with its own number."""
    lines = (Path(__file__).parent / "hostile_texts.txt").read_text(encoding="utf-8").removesuffix("\n").split("\n")
    texts = []
    for number, text in enumerate(lines):
        for sign, meant in SIGNS.items():
            text = text.replace(sign, meant)
        texts.append(text.replace("(N)", f"({number})"))
    return texts


VECTORS = vectors()


def text_fields() -> set[tuple[str, str]]:
    """Every field of the model that takes a text, by its class and name."""
    found: set[tuple[str, str]] = set()
    seen: set[type[BaseModel]] = set()

    def look(model: type[BaseModel]) -> None:
        if model not in seen:
            seen.add(model)
            for name, field in model.model_fields.items():
                look_at(model, name, field.annotation, field.metadata)

    def look_at(model: type[BaseModel], name: str, annotation: Any, metadata: Any) -> None:
        if isinstance(annotation, type) and issubclass(annotation, Text):
            found.add((model.__name__, name))
        elif isinstance(annotation, type) and issubclass(annotation, BaseModel):
            look(annotation)
        elif annotation is str and not is_bound(metadata):
            found.add((model.__name__, name))
        for inner in get_args(annotation):
            if inner in get_args(annotation)[:1] and getattr(annotation, "__origin__", None) is dict:
                continue  # the keys of a mapping name something
            look_at(model, name, inner, getattr(inner, "__metadata__", metadata))

    for model in MODELS:
        look(model)
    return found - NAMES


def is_bound(metadata: Any) -> bool:
    """Whether a text is a figure or a name: one that the reader or a check holds against a pattern or a list."""
    marks = [mark for one in metadata for mark in (one, *getattr(one, "metadata", ()))]
    return any(isinstance(mark, IsMeasure | RefersTo) or getattr(mark, "pattern", None) for mark in marks)


class Hostile:
    """The entries of a book as data for YAML, with the vectors in place of their texts.

    What leads to a procedure that is ``gone`` is left out. A field that stands ``n`` times in the book gets each
    vector: one a time, or several at once where ``n`` is small.
    """

    def __init__(self, items: list[BaseModel], gone: Set[str] = frozenset()) -> None:
        self._gone = gone
        self._fields = text_fields()
        self._unused: set[tuple[str, str]] = set()
        self.count: Counter[tuple[str, str]] = Counter()
        self._given: defaultdict[tuple[str, str], int] = defaultdict(int)
        self.given: defaultdict[tuple[str, str], set[str]] = defaultdict(set)
        for item in items:
            self._data(item, self._counted)
        self._unused = self._fields - set(self.count)
        self.count.update(dict.fromkeys(self._unused, 1))

    def data(self, item: BaseModel) -> Any:
        """An entry as it is written."""
        return self._data(item, self._vector)

    def _counted(self, field: tuple[str, str]) -> str:
        self.count[field] += 1
        return "counted"

    def _vector(self, field: tuple[str, str]) -> str:
        at, times = self._given[field], self.count[field]
        self._given[field] += 1
        some = VECTORS[at % len(VECTORS) :: times] if times < len(VECTORS) else [VECTORS[at % len(VECTORS)]]
        self.given[field].update(some)
        text = " ".join(some)
        return text if shows_words(text) else f"{text} word"  # a text shows a word, the checks say

    def _data(self, item: BaseModel, text: Callable[[tuple[str, str]], str]) -> dict[str, Any]:
        model = type(item)
        made = {}
        for name in model.model_fields:
            field, written = (model.__name__, name), model.model_fields[name].alias or name
            if name in item.model_fields_set and (value := getattr(item, name)) is not None:
                made[written] = self._value(field, value, text)
            elif field in self._unused:  # nothing of the book has it
                self._unused.discard(field)
                is_list = get_origin(model.model_fields[name].annotation) is list
                made[written] = [text(field)] if is_list else text(field)
        return made

    def _value(self, field: tuple[str, str], value: Any, text: Callable[[tuple[str, str]], str]) -> Any:
        if isinstance(value, Text) and value.inside() in WAYS:
            return value.inside()
        if isinstance(value, Text):
            # What a text refers to stays, so that a tool that is listed is still used.
            return " ".join([*REFERENCES.findall(value.inside()), text(field)])
        if isinstance(value, str) and field in self._fields:
            return text(field)
        if isinstance(value, BaseModel):
            return self._data(value, text)
        if isinstance(value, list):
            left = [each for each in value if str(getattr(each, "procedure", each)) not in self._gone]
            return [self._value(field, each, text) for each in left]
        if isinstance(value, dict):
            return {
                key: text((field[1], key))
                if (field[1], key) in TEXT_COLUMNS
                else self._value((field[0], key), each, text)
                for key, each in value.items()
            }
        return value.isoformat() if isinstance(value, date) else str(value)


FEW = "circuits-proved-dead supply-stops toilet-set lockset-install alarm-places floor-recoat closet-shelf-pole".split()
"""The procedures of the book: few, so that each has many of the vectors and few pages have to be looked at."""
MORE_OF_A_JOB = """
private_note: a note
standards: [{value: tile-gap, is: 1 in, why: a reason}]
visits: [{inspection: flange-and-place, notice: 24 h, why: a reason}]
"""


def hostile_book(folder: Path) -> tuple[Path, Hostile]:
    """A book of few procedures and one job in that folder, with every text replaced."""
    plain = two_rooms(folder / "plain")
    shutil.copy(BOOK / "flooring" / "floor-recoat.yaml", plain / "flooring")  # with its trips
    with (plain / "jobs" / "two-rooms.yaml").open("a", encoding="utf-8") as job:
        job.write(MORE_OF_A_JOB)
    book = folder / "procedures"
    shutil.copytree(plain, book, ignore=shutil.ignore_patterns("*.yaml", "*.yml"))
    loaded = load_book(plain).book
    documents: dict[str, list[Entry[Any]]] = {}
    for _, entry in loaded.entries():
        if not isinstance(entry, ProcedureEntry) or entry.id in FEW:
            documents.setdefault(entry.document.file, []).append(entry)
    items = [entry.item for entries in documents.values() for entry in entries]
    hostile = Hostile(items, loaded.procedures.keys() - set(FEW))
    for file, entries in documents.items():
        data = {at[0]: hostile.data(one.item) for one in entries if (at := one.at)} or hostile.data(entries[0].item)
        text = yaml.safe_dump(data, default_style='"', allow_unicode=True, sort_keys=False, width=10_000)
        path = book / Path(*Path(file).parts[1:])
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return book, hostile
