"""A table of the book worked out again from its YAML, by calling the calculator for each cell and nothing else."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from build_tools.book.yaml_reader import read_document
from calculators.declaration import Calculator, Refused
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


def inside(calculator: Calculator, name: str, text: Any, book: Path) -> Any:
    """An input as the calculator takes it, a crew standard by its figure."""
    if isinstance(text, str) and text.startswith("value:"):
        id, _, way = text.removeprefix("value:").partition(" ")
        text = f"{values(book)[id]['quantity']} {way}".rstrip()
    return read_inputs(calculator, {name: text})[0][name]


def standards(calculator: Calculator, book: Path) -> dict[str, Any]:
    """The inputs that start at a crew standard."""
    return {
        name: inside(calculator, name, f"{value['quantity']} {way}".rstrip(), book)
        for value in values(book).values()
        for place in value.get("default_of", [])
        for name, _, way in [place.removeprefix(f"{calculator.name}.").partition(" ")]
        if place.startswith(f"{calculator.name}.")
    }


def answer(name: str, given: dict[str, Any], book: Path) -> dict[str, Any]:
    """What a calculator says for inputs as the book writes them, the rest at the crew's standards."""
    calculator = CALCULATORS[name]
    inputs = {input: inside(calculator, input, text, book) for input, text in given.items()}
    return shown(calculator, run(calculator, {**standards(calculator, book), **inputs}))


def along(axis: dict[str, Any], calculator: Calculator, book: Path) -> list[Any]:
    """The values along an axis, as the calculator takes them."""
    if "values" in axis:
        return [inside(calculator, axis["input"], text, book) for text in axis["values"]]
    low, high = (inside(calculator, axis["input"], axis[end], book) for end in ("from", "to"))
    first_way = next((each.ways[0] for each in calculator.inputs if each.name == axis["input"] and each.ways), "")
    step = inside(calculator, axis["input"], f"{axis['step']} {first_way}".strip(), book)
    return [low + step * n for n in range(round((high - low) / step) + 1)]


def cells(table: dict[str, Any], book: Path) -> Cells:
    """The lines of each cell; a refusal is the one line of its cell."""
    calculator = CALCULATORS[table["calculator"]]
    fixed = {name: inside(calculator, name, text, book) for name, text in table.get("fixed", {}).items()}
    given = {**standards(calculator, book), **fixed}
    down = table["down"]
    rows = [{down["input"]: value} for value in along(down, calculator, book)]

    def lines(more: dict[str, Any]) -> list[str]:
        try:
            texts = shown(calculator, run(calculator, {**given, **more}))
        except Refused as refused:
            return [refused.message]
        return [str(texts[name]) for name in table["show"]]

    if "across" not in table:
        return [[[line] for line in lines(row)] for row in rows]
    across = table["across"]
    columns = [{across["input"]: value} for value in along(across, calculator, book)]
    return [[lines({**row, **column}) for column in columns] for row in rows]
