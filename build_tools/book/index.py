"""The names of the book: what each reference may point at, its title and its page, and who points at what."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from build_tools.book.book import Book
from build_tools.book.memo import Memo
from build_tools.book.references import figure_of, references_of
from calculators.declaration import Calculator

Key = tuple[str, str]
"""Scheme and id."""

PAGE_OF = {
    "value": "values",
    "term": "terms",
    "tool": "tools",
    "material": "materials",
    "source": "sources",
    "inspection": "inspections",
    "danger": "dangers",
    "person": "crew",
}
"""The schemes whose entries share one page, each with an anchor of its own."""


@dataclass(frozen=True, slots=True)
class Target:
    """Something that can be pointed at: its title and its address from the top of the site."""

    title: str
    url: str


@dataclass(slots=True)
class Index:
    """Everything that has a name.

    ``quoted`` holds the actions of the steps whose words a link takes over (``[](procedure:toilet-set#set-bowl)``).
    """

    targets: dict[Key, Target] = field(default_factory=dict)
    steps: dict[str, tuple[str, ...]] = field(default_factory=dict)
    used_in: dict[Key, list[Key]] = field(default_factory=dict)
    quoted: dict[tuple[str, str], str] = field(default_factory=dict)

    def names(self, scheme: str) -> list[str]:
        """The ids that a scheme knows."""
        return [id for known, id in self.targets if known == scheme]

    def fingerprint(self) -> int:
        """Changes when any name, title, address, step id or quoted action changes."""
        return hash((tuple(self.targets.items()), tuple(self.steps.items()), tuple(self.quoted.items())))


def make_index(book: Book, calculators: dict[str, Calculator], memo: Memo) -> Index:
    """Collect the names of the book and of the calculators, and the back-links."""
    index = Index()
    for trade, entry in book.trades.items():
        index.targets["trade", trade] = Target(entry.item.title.inside(book.language), f"{trade}/index.html")
    for id, procedure in book.procedures.items():
        title = procedure.item.title.inside(book.language)
        index.targets["procedure", id] = Target(title, f"{procedure.trade}/{id}.html")
        index.steps[id] = tuple(step.id for step in procedure.item.steps)
    for scheme, page in PAGE_OF.items():
        for id, item in book.kind(scheme).items():
            title = item.item.name if scheme == "person" else _title(item.item, book)
            index.targets[scheme, id] = Target(title, f"{page}.html#{id}")
    for id, job in book.jobs.items():
        index.targets["job", id] = Target(job.item.title.inside(book.language), f"jobs/{id}/index.html")
    for name, calculator in calculators.items():
        index.targets["calculator", name] = Target(calculator.title, f"calculators/{name}.html")
    _link_back(book, calculators, memo, index)
    return index


def _title(item: Any, book: Book) -> str:
    """The title of an entry, with its size where it has one."""
    title: str = item.title.inside(book.language)
    size = getattr(item, "size", None)
    return f"{title}, {figure_of(size, book) or size}" if size else title


def _link_back(book: Book, calculators: dict[str, Calculator], memo: Memo, index: Index) -> None:
    back: dict[Key, dict[Key, None]] = {}
    for scheme, entry in book.entries():
        user = (scheme, entry.id)
        for ref in references_of(entry, book, memo):
            target = (ref.scheme, ref.target)
            if ref.step and ref.prose is not None and not ref.prose.text:
                index.quoted[ref.target, ref.step] = _action(book, ref.target, ref.step)
            if target != user:
                back.setdefault(target, {})[user] = None
    for id, value in book.values.items():
        for start in value.item.starts():
            back.setdefault(("value", id), {})["calculator", start.calculator] = None
    for name, calculator in calculators.items():
        for citation in calculator.sources:
            back.setdefault(("source", citation.source), {})["calculator", name] = None
    index.used_in = {target: list(users) for target, users in back.items()}


def _action(book: Book, procedure: str, step: str) -> str:
    """The action of a step as it is written; empty where there is no such step."""
    entry = book.procedures.get(procedure)
    steps = entry.item.steps if entry else []
    return next((each.do.inside(book.language) for each in steps if each.id == step), "")
