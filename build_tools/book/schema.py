"""The JSON Schema of the book's files, made from the model, so that editors complete and check the YAML.

``python3 -m build_tools.book.schema`` writes ``build_tools/book/schema/``; a test compares what lies there.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from build_tools.book.model.base import Part
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.reference import KINDS, Person
from calculators.declaration import Calculator
from calculators.registry import CALCULATORS

FOLDER = Path(__file__).parent / "schema"
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


def as_text(schema: dict[str, Any]) -> str:
    """A schema as it lies in the file."""
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"


def write_schemas(folder: Path = FOLDER) -> list[Path]:
    """Write every schema; gives the files."""
    folder.mkdir(exist_ok=True)
    written = []
    for name, schema in schemas(CALCULATORS).items():
        path = folder / name
        path.write_text(as_text(schema), encoding="utf-8")
        written.append(path)
    return written


if __name__ == "__main__":
    for path in write_schemas():
        print(path.name)
