"""The JSON Schema of the book's files, made from the model, so that editors complete and check the YAML.

They lie in the book itself, in the hidden folder ``.schema``, and are made anew whenever the book is checked.
"""

from __future__ import annotations

import json
from contextlib import suppress
from functools import lru_cache
from pathlib import Path
from typing import Any

from build_tools.book.files import write_whole
from build_tools.book.model.base import Part
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.reference import KINDS, Person
from calculators.declaration import Calculator
from calculators.registry import CALCULATORS

FOLDER = ".schema"
DRAFT = "https://json-schema.org/draft/2020-12/schema"


def schemas(calculators: dict[str, Calculator]) -> dict[str, dict[str, Any]]:
    """File name to schema: one for procedures, one for each kind of reference entry, one for people."""
    procedure = Procedure.model_json_schema(by_alias=True)
    for name in ("Call", "Form", "Table"):
        if name in procedure["$defs"]:
            _know_calculators(procedure["$defs"][name], calculators)
    made = {
        "procedure.json": {"$schema": DRAFT, **procedure},
        "job.json": {"$schema": DRAFT, **Job.model_json_schema(by_alias=True)},
    }
    entries: dict[str, type[Part]] = {**KINDS, "people": Person}
    for kind, model in entries.items():
        entry = model.model_json_schema(by_alias=True)
        definitions = entry.pop("$defs", {})
        made[f"{kind}.json"] = {
            "$schema": DRAFT,
            "title": kind,
            "type": "object",
            "additionalProperties": entry,
            "$defs": definitions,
        }
    for schema in made.values():
        _let_figures_be_text(schema)
    return made


def _let_figures_be_text(schema: Any) -> None:
    """Free text takes a number as well: an editor reads ``clause: 402.5`` as one, the book as what was written."""
    inner = list(schema.values()) if isinstance(schema, dict) else schema if isinstance(schema, list) else []
    if isinstance(schema, dict) and schema.get("type") == "string" and not {"pattern", "format", "enum"} & set(schema):
        schema["type"] = ["string", "number"]
    for part in inner:
        _let_figures_be_text(part)


def _know_calculators(definition: dict[str, Any], calculators: dict[str, Calculator]) -> None:
    """Name the calculators, and for each the inputs and outputs that may stand beside its name."""
    properties = definition["properties"]
    properties["calculator"] = {"enum": sorted(calculators), "title": "Calculator"}
    given = "fixed" if "fixed" in properties else "inputs"
    rules = []
    for name, calculator in sorted(calculators.items()):
        inputs = {each.name: {"title": each.label, "description": each.help} for each in calculator.inputs}
        outputs = {"enum": [output.name for output in calculator.outputs]}
        then: dict[str, Any] = {given: {"properties": inputs, "additionalProperties": False}}
        if "output" in properties:
            then["output"] = outputs
        if "show" in properties:
            then["show"] = {"items": outputs}
        rules.append({"if": {"properties": {"calculator": {"const": name}}}, "then": {"properties": then}})
    definition["allOf"] = rules


@lru_cache
def schema_files() -> dict[str, str]:
    """File name to text, for the book's own calculators."""
    made = {
        name: json.dumps(schema, indent=1, ensure_ascii=False) + "\n" for name, schema in schemas(CALCULATORS).items()
    }
    return {".gitignore": "*\n", **made}


def write_schemas(book: Path) -> None:
    """Put the schemas where the first line of a book's files says, as far as they are not there.

    A folder without a file of a book gets none, and a book that cannot be written to does without: only editors read
    them. They are never written through a link, which may lead anywhere.
    """
    folder = book / FOLDER
    if folder.is_symlink() or not any(book.glob("*/*.yaml")):
        return
    with suppress(OSError):
        for name, text in schema_files().items():
            path = folder / name
            if not path.is_file() or path.read_text(encoding="utf-8") != text:
                write_whole(path, text)
