"""The whole book with its computed tables as open data: ``book.json`` and its schema beside it."""

from __future__ import annotations

import json
from typing import Any

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.reference import KINDS, Person
from calculators.declaration import Calculator

FORMAT = 1


def book_json(context: Context, edition: str) -> str:
    """The book as JSON text; ``edition`` says when it was built."""
    book = context.book
    procedures = ",".join(f"{json.dumps(id)}:{_remembered(context, entry)}" for id, entry in book.procedures.items())
    parts: dict[str, Any] = {
        "format": FORMAT,
        "edition": edition,
        "language": book.language,
        **{kind: {id: _dump(entry.item) for id, entry in getattr(book, kind).items()} for kind in KINDS},
        "calculators": {name: _calculator(calculator) for name, calculator in context.calculators.items()},
    }
    text = json.dumps(parts, ensure_ascii=False, separators=(",", ":"))
    return f'{text[:-1]},"procedures":{{{procedures}}}}}'


def _dump(item: Any) -> Any:
    return item.model_dump(mode="json", by_alias=True, exclude_none=True, exclude_defaults=True)


def _remembered(context: Context, entry: ProcedureEntry) -> str:
    return context.memo.of("json", entry.item, context.fingerprint, lambda: procedure_json(context, entry))


def procedure_json(context: Context, entry: ProcedureEntry) -> str:
    """A procedure with its computed tables as JSON text."""
    data = _dump(entry.item)
    data["trade"] = entry.trade
    for step, written in zip(entry.item.steps, data["steps"], strict=True):
        if step.table is not None:
            computed, _ = context.table(step.table)
            written["computed"] = {
                "columns": computed.columns,
                "rows": [
                    {
                        "head": row.head,
                        "ours": row.ours,
                        "cells": [
                            {"refused": cell.refused} if cell.refused else dict(cell.lines) for cell in row.cells
                        ],
                    }
                    for row in computed.rows
                ],
            }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def _calculator(calculator: Calculator) -> dict[str, Any]:
    return {
        "title": calculator.title,
        "trade": calculator.trade,
        "summary": calculator.summary,
        "formula": calculator.formula,
        "inputs": [
            {"name": each.name, "label": each.label, "quantity": each.quantity, "unit": each.unit}
            for each in calculator.inputs
        ],
        "outputs": [
            {"name": each.name, "label": each.label, "quantity": each.quantity, "unit": each.unit}
            for each in calculator.outputs
        ],
        "sources": [f"{each.source} {each.clause}".strip() for each in calculator.sources],
    }


def book_schema() -> dict[str, Any]:
    """The JSON Schema of ``book.json``."""
    definitions: dict[str, Any] = {}

    def refer(model: Any) -> dict[str, Any]:
        schema = model.model_json_schema(ref_template="#/$defs/{model}", mode="serialization")
        definitions.update(schema.pop("$defs", {}))
        definitions[model.__name__] = schema
        return {"type": "object", "additionalProperties": {"$ref": f"#/$defs/{model.__name__}"}}

    properties = {kind: refer(model) for kind, model in KINDS.items()}
    refer(Person)
    refer(Procedure)
    procedure = definitions["Procedure"]
    procedure["properties"]["trade"] = {"type": "string"}
    definitions["Step"]["properties"]["computed"] = {"type": "object"}
    properties["procedures"] = {"type": "object", "additionalProperties": {"$ref": "#/$defs/Procedure"}}
    properties["calculators"] = {"type": "object"}
    properties |= {"format": {"const": FORMAT}, "edition": {"type": "string"}, "language": {"type": "string"}}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A book of standard methods",
        "type": "object",
        "required": sorted(properties),
        "properties": properties,
        "$defs": definitions,
    }
