"""What the templates may call: prose, links, figures, tables.

Each page has a set of its own, since links are relative.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from html import escape
from types import MappingProxyType
from typing import Any

from markupsafe import Markup

from build_tools.book.calls import CallResult, shown_input
from build_tools.book.checks.context import Context
from build_tools.book.model.base import Basis, Cited, Part, Text
from build_tools.book.model.reference import Inspection
from build_tools.book.model.step import Check, Measurement, Picture, Step
from build_tools.book.model.table import Amount, Call, Form, Table
from build_tools.book.prose import ProseLink, html, plain
from build_tools.book.references import figure_of, named_value
from build_tools.book.tables import ComputedTable
from build_tools.pages.drawings import drawn
from build_tools.pages.live import field_of, open_inputs, start_of
from build_tools.pages.on_site import content_hash, lookers, measure_data
from build_tools.pages.pictures import SitePicture
from build_tools.pages.words import words as fixed_words
from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Calculator, Citation, Input, Output
from calculators.run import shown

LABELS = (COMMON_PRACTICE.source, CREW_RULE.source)
NOTHING = "–"
"""What stands in a cell that has nothing to say, so that it does not read as forgotten."""


@dataclass(slots=True)
class Helpers:
    """The helpers for one page. ``top`` is the way from it to the top of the site."""

    context: Context
    top: str
    pictures: dict[tuple[str, str], SitePicture]
    folder: str = ""
    formed: set[str] = field(default_factory=set)
    """The calculators that a form of the page was made for: a further one has its fields' parts from the first."""

    def names(self) -> dict[str, Any]:
        """The helpers by the names that the templates use."""
        public = "prose inline words say url title linked used_in entry written basis amount table form picture".split()
        public += ["content_hash", "reads", "lookers"]
        return {name: getattr(self, name) for name in public}

    # text

    def say(self, text: Text | str) -> str:
        """A text's words in the language of the pages."""
        return text if isinstance(text, str) else text.inside(self.context.book.language)

    def prose(self, text: Text | str) -> Markup:
        """Markdown as paragraphs."""
        return Markup(html(self.say(text), self.resolve, block=True))

    def inline(self, text: Text | str) -> Markup:
        """Markdown of one paragraph, without the paragraph."""
        return Markup(html(self.say(text), self.resolve, block=False))

    def words(self, text: Text | str) -> str:
        """The words alone, without marks."""
        return plain(self.say(text), self.resolve)

    # references

    def resolve(self, link: ProseLink) -> tuple[str, str] | None:
        """The relative address and the title of a reference of prose."""
        key = (link.scheme, link.target)
        target = self.context.index.targets.get(key)
        if target is None:
            return None
        url = self.top + target.url + (f"#{link.step}" if link.step else "")
        if link.scheme == "value":
            quantity = self.context.book.values[link.target].item.quantity
            return url, quantity.removesuffix(" each")  # 'on 4 screws', not 'on 4 each screws'
        if link.step and link.scheme == "procedure":
            return url, self._step_title(link.target, link.step)
        return url, target.title

    def _step_title(self, procedure: str, step: str) -> str:
        item = self.context.book.procedures[procedure].item
        found = next((one for one in item.steps if one.id == step), None)
        return self.words(found.do).rstrip(".") if found else step

    def url(self, scheme: str, id: str, step: str | None = None) -> str:
        """The address of something of the book, relative to this page."""
        target = self.context.index.targets[scheme, id]
        return self.top + target.url + (f"#{step}" if step else "")

    def title(self, scheme: str, id: str) -> str:
        """The title of something of the book."""
        return self.context.index.targets[scheme, id].title

    def linked(self, scheme: str, ids: Iterable[str]) -> Markup:
        """Links to several entries, with commas between them."""
        links = (f'<a href="{self.url(scheme, id)}">{Markup.escape(self.title(scheme, id))}</a>' for id in ids)
        return Markup(", ".join(links))

    def entry(self, scheme: str, id: str) -> Part:
        """The entry itself."""
        item: Part = self.context.book.kind(scheme)[id].item
        return item

    def used_in(self, scheme: str, id: str) -> list[dict[str, str]]:
        """The pages that refer to something."""
        users = self.context.index.used_in.get((scheme, id), [])
        found = [
            {"url": self.url(*user), "title": self.title(*user), "scheme": user[0], "summary": ""} for user in users
        ]
        return sorted(found, key=lambda page: (page["scheme"] != "procedure", page["title"]))

    # figures

    def written(self, measure: Amount) -> Markup:
        """A figure with its unit; a crew standard links to its entry, what a calculator gives to the calculator."""
        if isinstance(measure, Call):
            link = Markup('<a class="ref ref-calculator" href="{}">{}</a>')
            return link.format(self.url("calculator", measure.calculator), self.figure(measure))
        id = named_value(measure)
        if id is None:
            return Markup(escape(measure))
        return Markup('<a class="ref ref-value" href="{}">{}</a>').format(self.url("value", id), self.figure(measure))

    def basis(self, basis: Basis) -> Markup:
        """Where a figure comes from."""
        if isinstance(basis, Cited):
            return self.citation(Citation(basis.source, basis.clause))
        return Markup(escape(basis))

    def citation(self, citation: Citation) -> Markup:
        """A source with its clause, linked; or one of the two labels."""
        if citation.source in LABELS:
            return Markup(escape(f"{citation.source}{', ' + citation.clause if citation.clause else ''}"))
        link = Markup('<a class="ref ref-source" href="{}">{}</a>').format(
            self.url("source", citation.source), self.title("source", citation.source)
        )
        return link + f", {citation.clause}" if citation.clause else link

    def amount(self, amount: Amount) -> dict[str, Any]:
        """A quantity, with the working where a calculator gave it."""
        if isinstance(amount, Call):
            called = self.context.call(amount)
            text = str(shown(called.calculator, called.answer or {})[amount.output])
            working = list((called.answer or {}).get("working", []))
            return {"text": text, "working": working, "calculator": amount.calculator}
        return {"text": self.written(amount), "working": [], "calculator": ""}

    def figure(self, amount: Amount) -> str:
        """A quantity as bare text."""
        if isinstance(amount, Call):
            return str(self.amount(amount)["text"])
        return figure_of(amount, self.context.book) or ""

    # on site

    def content_hash(self, part: Step | list[Check]) -> str:
        """The print of a step, by which a page sees that it has changed since somebody ticked it."""
        return content_hash(part, self.context)

    def reads(self, measurement: Measurement) -> str:
        """What a reading is held against, for the script."""
        return measure_data(measurement, self.context)

    def lookers(self, inspection: Inspection, words: Mapping[str, str]) -> str:
        """Who can be picked as having looked at a hold point, for the script."""
        return lookers(inspection, self.context.book, words)

    # calculators

    def form(self, form: Form, key: str) -> dict[str, Any]:
        """A calculator worked once, for the inputs of a step; ``key`` is the step's id."""
        return self.worked(self.context.call(form), key, form.inputs, form.show, form.readings)

    def worked(
        self,
        called: CallResult,
        key: str,
        given: Mapping[str, Any],
        show: Sequence[str] = (),
        readings: Mapping[str, str] = MappingProxyType({}),
    ) -> dict[str, Any]:
        """A call as the templates show it: what was given, what stood at its standard, the answer, the working.

        ``given`` holds the inputs that the call sets; ``key`` names the form in addresses; ``readings`` maps inputs
        to measurements.
        """
        calculator, answer = called.calculator, called.answer or {}
        texts = shown(calculator, answer)
        standards = self.context.book.standards(calculator.name)
        opened = open_inputs(called, {*given, *readings}, standards)
        is_first = calculator.name not in self.formed
        self.formed.add(calculator.name)
        values = called.values
        lines = [self._line(each, values.get(each.name), standards.get(each.name)) for each in calculator.inputs]
        return {
            "calculator": calculator.name,
            "title": calculator.title,
            "url": self.url("calculator", calculator.name),
            "is_first": is_first,
            "inputs": [line for line in lines if line["name"] in opened],
            "rest": [line for line in lines if line["name"] not in opened],
            "start": start_of(self.context.book, called, key, given, readings) if calculator.on_site else "",
            "outputs": [_output(output, texts[output.name]) for output in in_order_of(calculator.outputs, show)],
            "working": answer.get("working", []),
            "cautions": answer.get("cautions", []),
            "drawing": drawn(called, f"{key}-drawing"),
            "cannot_decide": self.prose(calculator.cannot_decide) if calculator.cannot_decide else "",
            "sources": self.sources(calculator),
        }

    def _line(self, declared: Input, value: Any, standard: str | None) -> dict[str, Any]:
        """An input as the templates show it; without a text where it has nothing yet."""
        line = field_of(declared, fixed_words(self.context.book.language))
        line["text"] = "" if value in (None, [], "") else shown_input(declared, value)
        id = named_value(standard or "")
        line["standard"] = id and {
            "url": self.url("value", id),
            "title": self.title("value", id),
            "written": self.figure(standard or ""),
        }
        return line

    def table(self, table: Table) -> dict[str, Any]:
        """A computed table."""
        computed, _ = self.context.table(table)
        return {
            "caption": computed.caption,
            "calculator": computed.calculator.name,
            "down": computed.down,
            "across": computed.across,
            "column_values": computed.column_values,
            "down_label": computed.down_label,
            "across_label": computed.across_label,
            "columns": computed.columns,
            "legend": [label for label, _ in _first_lines(computed)] if computed.across else [],
            "rows": [
                {
                    "head": row.head,
                    "value": row.value,
                    "ours": row.ours,
                    "cells": [
                        {
                            "text": cell.text,
                            "ours": cell.ours,
                            "refused": bool(cell.refused),
                            "fails": cell.passes is False,
                            "lines": [text for _, text in cell.lines],
                        }
                        for cell in row.cells
                    ],
                }
                for row in computed.rows
            ],
            "formula": self.prose(computed.calculator.formula),
            "sources": self.sources(computed.calculator),
            "fixed": [{"label": label, "text": text} for label, text in computed.fixed],
        }

    def sources(self, calculator: Calculator) -> list[Markup]:
        """A calculator's sources."""
        return [self.citation(citation) for citation in calculator.sources]

    def picture(self, picture: Picture) -> dict[str, Any]:
        """A photo or a drawing, as made for the page."""
        made = self.pictures[self.folder, picture.file]
        return {
            "src": self.top + made.url,
            "alt": self.say(picture.alt),
            "caption": self.say(picture.caption) if picture.caption else "",
            "width": made.width,
            "height": made.height,
        }


def in_order_of(outputs: Sequence[Output], names: Sequence[str]) -> list[Output]:
    """The outputs that are named, in that order; all of them where none is named."""
    known = {output.name: output for output in outputs}
    return [known[name] for name in names] if names else list(outputs)


def _output(output: Output, text: Any) -> dict[str, Any]:
    """An output as the templates show it; one of rows has its columns and cells."""
    if output.quantity != "rows":
        return {"name": output.name, "label": output.label, "text": text or NOTHING, "columns": [], "rows": []}
    columns = [column.label for column in output.columns]
    rows = [[row[column.name] or NOTHING for column in output.columns] for row in text]
    text = "" if rows else NOTHING
    return {"name": output.name, "label": output.label, "text": text, "columns": columns, "rows": rows}


def _first_lines(computed: ComputedTable) -> tuple[tuple[str, str], ...]:
    """The lines of the first cell that has an answer: their labels are those of all."""
    return next((cell.lines for row in computed.rows for cell in row.cells if cell.lines), ())
