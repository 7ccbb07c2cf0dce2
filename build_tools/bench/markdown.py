"""Writes the book as the Markdown pages that somebody would write by hand, saying all that the book's pages say."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path
from textwrap import indent

from build_tools.book.book import Book, ProcedureEntry
from build_tools.book.calls import call, shown_input
from build_tools.book.model.base import Basis, Cited, Text
from build_tools.book.model.step import Check, Measurement, Message, Step
from build_tools.book.model.table import Call, Form, Table
from build_tools.book.tables import compute_table
from calculators.registry import CALCULATORS
from calculators.run import shown

LINK = re.compile(r"\[([^\]]*)\]\(([a-z]+):([a-z0-9-]+)(#[a-z0-9-]+)?\)")
ADMONITION = {"DANGER": "danger", "WARNING": "warning", "CAUTION": "warning", "NOTICE": "note"}
SETTINGS = """\
site_name: Methods
theme:
  name: material
  font: false
plugins:
  - search
markdown_extensions:
  - admonition
  - attr_list
  - tables
  - toc:
      permalink: true
"""


def write_pages(book: Book, folder: Path) -> int:
    """Write ``mkdocs.yml`` and ``docs/`` into the folder; how many pages that are.

    There is no ``nav``, so MkDocs puts every page into the navigation.
    """
    docs = folder / "docs"
    pages = Pages(book)
    written = {"index.md": pages.front(), "calculators.md": pages.calculators()}
    for scheme in ("tool", "material", "term", "value", "source", "inspection", "person"):
        written[f"reference/{scheme}.md"] = pages.reference(scheme)
    for trade in book.trades:
        written[f"{trade}/index.md"] = pages.trade(trade)
    for id, entry in book.procedures.items():
        written[f"{entry.trade}/{id}.md"] = pages.procedure(entry)
    for name, text in written.items():
        (docs / name).parent.mkdir(parents=True, exist_ok=True)
        (docs / name).write_text(text, encoding="utf-8")
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    return len(written)


class Pages:
    """Each page as Markdown text."""

    def __init__(self, book: Book) -> None:
        self.book = book

    def front(self) -> str:
        """The first page: the trades."""
        lines = [f"- [{self.text(entry.item.title)}]({id}/index.md)" for id, entry in self.book.trades.items()]
        return "\n".join(["# Methods", "", *lines, ""])

    def trade(self, trade: str) -> str:
        """A trade: its procedures, each with its summary."""
        entry = self.book.trades[trade]
        lines = [
            f"- [{self.text(procedure.item.title)}]({id}.md): {self.prose(procedure.item.summary)}"
            for id, procedure in self.book.procedures.items()
            if procedure.trade == trade
        ]
        return "\n".join([f"# {self.text(entry.item.title)}", "", self.prose(entry.item.summary), "", *lines, ""])

    def reference(self, scheme: str) -> str:
        """All entries of one kind, each under a heading of its own."""
        parts = [f"# {scheme.capitalize()}s", ""]
        for id, entry in self.book.kind(scheme).items():
            parts += [f"## {self.title(scheme, id)} {{ #{id} }}", ""]
            for name in type(entry.item).model_fields:
                value = getattr(entry.item, name)
                if isinstance(value, Text):
                    parts += [self.prose(value), ""]
                elif isinstance(value, str) and value:
                    parts += [f"{name.replace('_', ' ')}: {value}", ""]
        return "\n".join(parts)

    def calculators(self) -> str:
        """The calculators: what each is for, its formula, its inputs and outputs."""
        parts = ["# Calculators", ""]
        for name, calculator in CALCULATORS.items():
            parts += [f"## {calculator.title} {{ #{name} }}", "", calculator.summary, "", calculator.formula, ""]
            parts += [f"- {declared.label}" for declared in calculator.inputs]
            parts += [f"- {declared.label}" for declared in calculator.outputs] + [""]
        return "\n".join(parts)

    def procedure(self, entry: ProcedureEntry) -> str:
        """A procedure, whole."""
        item = entry.item
        labour, revision = item.labour, item.revision
        parts = [f"# {self.text(item.title)}", "", self.prose(item.summary), ""]
        parts += [f"Also: {', '.join(map(self.text, item.other_names))}", ""] if item.other_names else []
        hours = self.amount(labour.hours)
        parts += [f"Who: {item.who}. {self.prose(item.alone)}", ""]
        parts += [self.prose(item.reserved), ""] if item.reserved else []
        parts += [f"{labour.people} at work, {hours} for {labour.per} ({self.basis(labour.basis)})", ""]
        parts += [f"- {self.text(trip.title)}: {trip.part}, after {trip.wait}" for trip in labour.trips.values()]
        parts += ["", "## Before", ""]
        for line in item.before:
            what = self.prose(line.state) if line.state else self.link("procedure", line.procedure or "")
            parts.append(f"- {what}: {self.prose(line.why)}")
        for closes in item.closes:
            parts.append(f"- Closes {self.prose(closes.what)} for {closes.time}: {self.prose(closes.why)}")
        parts.append("")
        parts += [line for message in item.safety for line in self.message(message)]
        parts += ["## Tools", "", *(f"- {self.link('tool', line.tool)}" for line in item.tools), ""]
        parts += ["## Materials", "", "| Material | Quantity | For |", "|---|---|---|"]
        for used in item.materials:
            name = self.link("material", used.material)
            parts.append(_row([name, self.amount(used.quantity), self.text(used.per)]))
        parts += ["", "## Steps", ""]
        for number, step in enumerate(item.steps, 1):
            parts += self.step(number, step)
        parts += ["## When it is done", "", *self.checks(item.acceptance), "## Questions", ""]
        for question in item.questions:
            parts += [f"- {self.prose(question.ask)}", "", indent(self.prose(question.answer), "    "), ""]
        parts += ["## Sources", "", *(f"- {self.basis(cited)}" for cited in item.sources), ""]
        parts += [f"Revision {revision.number}, {revision.date}: {self.text(revision.changed)}", ""]
        return "\n".join(parts)

    def step(self, number: int, step: Step) -> list[str]:
        """A step: messages first, then the action and all that belongs to it."""
        parts = [f"### {number}. {self.prose(step.do)} {{ #{step.id} }}", ""]
        parts += [line for message in step.messages for line in self.message(message)]
        parts += [self.prose(step.detail), ""] if step.detail else []
        parts += [f"- **{self.prose(key.point)}** {self.prose(key.why)}" for key in step.key_points] + [""]
        with_what = [self.link("tool", id) for id in step.tools] + [self.link("material", id) for id in step.materials]
        parts += [f"With: {', '.join(with_what)}", ""] if with_what else []
        parts += [line for measurement in step.measurements for line in self.measurement(measurement)]
        parts += self.checks(step.checks) if step.checks else []
        parts += self.form(step.calculator) if step.calculator else []
        parts += self.table(step.table) if step.table else []
        for picture in (step.photo, step.drawing):
            parts += [f"*{self.text(picture.caption or picture.alt)}*", ""] if picture else []
        if step.hold:
            parts += [f"**Hold**: {self.link('inspection', step.hold.inspection)}. {self.prose(step.hold.stops)}", ""]
        return parts

    def message(self, message: Message) -> list[str]:
        """A safety message as an admonition."""
        words = [self.prose(part) for part in (message.hazard, message.harm, message.avoid) if part is not None]
        return [f'!!! {ADMONITION[message.word]} "{message.word}"', "", indent(" ".join(words), "    "), ""]

    def measurement(self, item: Measurement) -> list[str]:
        """A measurement with its tolerance and what to do outside it."""
        names = ("target", "within", "plus", "minus", "least", "most")
        ways = [(one, f" {self.text(one.way)}") for one in item.ways]
        given = [(getattr(one, name, None), name, way) for one, way in [(item, ""), *ways] for name in names]
        limits = [f"{name} {self.amount(figure)}{way}" for figure, name, way in given if figure is not None]
        basis = self.basis(item.basis)
        return [f"Measure: {self.prose(item.what)}: {', '.join(limits)} ({basis}). {self.prose(item.outside)}", ""]

    def checks(self, checks: Iterable[Check]) -> list[str]:
        """Checks as a list."""
        lines = [f"- {self.prose(c.check)} {self.prose(c.passes)} Otherwise: {self.prose(c.outside)}" for c in checks]
        return [*lines, ""]

    def table(self, table: Table) -> list[str]:
        """A table with the figures that the calculator gives."""
        computed, _ = compute_table(self.book, table, CALCULATORS[table.calculator])
        heads = [computed.down_label, *computed.columns]
        rows = [_row([row.head, *(cell.text for cell in row.cells)]) for row in computed.rows]
        fixed = "; ".join(f"{label}: {text}" for label, text in computed.fixed)
        return [f"**{computed.caption}** {fixed}", "", _row(heads), "|" + "---|" * len(heads), *rows, ""]

    def form(self, form: Form) -> list[str]:
        """A calculator at a step, worked out for the inputs that it starts with."""
        calculator = CALCULATORS[form.calculator]
        called = call(self.book, calculator, form.inputs)
        heads = [f"Work it out: {self.link('calculator', calculator.name)}", ""]
        if called.answer is None:
            return heads
        given = {one.name: called.values.get(one.name, one.default) for one in calculator.inputs}
        answer = shown(calculator, called.answer)
        lines = [f"- {one.label}: {shown_input(one, given[one.name])}" for one in calculator.inputs]
        lines += [f"- **{one.label}**: {answer[one.name]}" for one in calculator.outputs if one.name in form.show]
        lines += [f"- {line}" for line in (*called.answer["cautions"], *called.answer["working"])]
        return [*heads, *lines, ""]

    def amount(self, amount: str | Call) -> str:
        """A figure, a crew standard's figure, or a calculator's answer."""
        if isinstance(amount, Call):
            calculator = CALCULATORS[amount.calculator]
            called = call(self.book, calculator, amount.inputs)
            return str(shown(calculator, called.answer)[amount.output]) if called.answer is not None else ""
        if amount.startswith("value:"):
            id = amount.removeprefix("value:")
            return f"[{self.title('value', id)}](../reference/value.md#{id})"
        return amount

    def basis(self, basis: Basis) -> str:
        """Where a figure comes from."""
        if isinstance(basis, Cited):
            return f"{self.link('source', basis.source)} {basis.clause}".strip()
        return basis

    def text(self, text: Text) -> str:
        """Words without references."""
        return text.inside(self.book.language)

    def prose(self, text: Text) -> str:
        """Words with their references as links between the Markdown files."""
        return LINK.sub(lambda found: self.link(found[2], found[3], found[4] or "", found[1]), self.text(text))

    def link(self, scheme: str, id: str, step: str = "", text: str = "") -> str:
        """A link to an entry, as from the folder of a trade."""
        words = text or self.title(scheme, id)
        if scheme == "procedure":
            return f"[{words}](../{self.book.procedures[id].trade}/{id}.md{step})"
        if scheme == "calculator":
            return f"[{words}](../calculators.md#{id})"
        if scheme == "trade":
            return f"[{words}](../{id}/index.md)"
        return f"[{words}](../reference/{scheme}.md#{id})"

    def title(self, scheme: str, id: str) -> str:
        """The title of an entry; of a value its figure."""
        if scheme == "calculator":
            return CALCULATORS[id].title
        item = self.book.kind(scheme)[id].item
        if scheme == "person":
            return str(item.name)
        return str(item.quantity) if scheme == "value" else self.text(item.title)


def _row(cells: Iterable[str]) -> str:
    return "| " + " | ".join(cell.replace("|", r"\|").replace("\n", " ") for cell in cells) + " |"
