"""A table of the book worked out again from its YAML, by calling the calculator for each cell and nothing else."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from build_tools.book.yaml_reader import read_document
from calculators.declaration import Refused
from calculators.registry import CALCULATORS
from calculators.run import read_inputs, run, shown

Cells = list[list[list[str]]]
"""Rows of cells of lines."""


def procedures(book: Path) -> dict[str, dict[str, Any]]:
    """The procedures of a book as they are written, by id."""
    files = sorted(path for path in book.glob("*/*.yaml") if path.parent.name not in ("reference", "crew", "jobs"))
    return {path.stem: read_document(path, path.name).data for path in files}


def values(book: Path) -> dict[str, dict[str, Any]]:
    """The crew standards of a book as they are written, by id."""
    found: dict[str, dict[str, Any]] = {}
    for path in sorted((book / "reference" / "values").glob("*.yaml")):
        found |= read_document(path, path.name).data
    return found


def tables(book: Path) -> dict[tuple[str, str], dict[str, Any]]:
    """The tables as they are written, by procedure and step."""
    return {
        (id, step["id"]): step["table"]
        for id, procedure in procedures(book).items()
        for step in procedure["steps"]
        if "table" in step
    }


def cells(table: dict[str, Any], book: Path) -> Cells:
    """The lines of each cell; a refusal is the one line of its cell."""
    calculator = CALCULATORS[table["calculator"]]
    standards = values(book)

    def inside(name: str, text: Any) -> Any:
        """An input as the calculator takes it."""
        if isinstance(text, str) and text.startswith("value:"):
            text = standards[text.removeprefix("value:")]["quantity"]
        return read_inputs(calculator, {name: text})[0][name]

    def along(axis: dict[str, Any]) -> list[Any]:
        """The values along an axis."""
        if "values" in axis:
            return [inside(axis["input"], text) for text in axis["values"]]
        low, high, step = (inside(axis["input"], axis[end]) for end in ("from", "to", "step"))
        return [low + step * n for n in range(round((high - low) / step) + 1)]

    given = {}
    for id, value in standards.items():
        for place in value.get("default_of", []):
            if place.startswith(f"{calculator.name}."):
                given[place.partition(".")[2]] = inside(place.partition(".")[2], f"value:{id}")
    given |= {name: inside(name, text) for name, text in table.get("fixed", {}).items()}

    def answer(**more: Any) -> list[str]:
        try:
            texts = shown(calculator, run(calculator, {**given, **more}))
        except Refused as refused:
            return [refused.message]
        return [str(texts[name]) for name in table["show"]]

    down = table["down"]
    if "across" in table:
        across = table["across"]
        return [
            [answer(**{down["input"]: row, across["input"]: column}) for column in along(across)] for row in along(down)
        ]
    return [[[line] for line in answer(**{down["input"]: row})] for row in along(down)]
