"""Tables for the invented procedures: calculators along inputs for which they answer, never twice the same span."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import dataclass
from random import Random
from typing import Any

from build_tools.book.book import Book
from build_tools.book.model.table import Table
from build_tools.book.tables import compute_table
from calculators.declaration import Calculator, Input
from calculators.registry import CALCULATORS
from calculators.writing_units import write

ROWS = 8
GRAIN = {"length": 0.0625, "count": 1.0, "percent": 0.5, "number": 0.25}


@dataclass(frozen=True, slots=True)
class Shape:
    """A calculator with the input that runs down, the inputs that stay, and what is shown."""

    calculator: Calculator
    down: Input
    fixed: dict[str, Any]
    show: list[str]

    def table(self, random: Random, caption: str) -> dict[str, Any]:
        """A table over a span drawn by lot inside the input's usual range."""
        low, high = _range(self.down)
        grain = GRAIN[self.down.quantity]
        steps = max(1, int((high - low) / grain))
        first = random.randint(0, max(0, steps - ROWS))
        stride = random.randint(1, max(1, (steps - first) // ROWS))
        values = [low + grain * (first + row * stride) for row in range(ROWS) if first + row * stride <= steps]
        written = [write(value, self.down.quantity, self.down.unit, 0.0, "nearest") for value in values]
        return {
            "caption": caption,
            "calculator": self.calculator.name,
            "down": {"input": self.down.name, "values": list(dict.fromkeys(written))},
            "fixed": deepcopy(self.fixed),
            "show": list(self.show),
        }

    def form(self) -> dict[str, Any]:
        """The calculator at a step, with the inputs of its own example."""
        return {
            "calculator": self.calculator.name,
            "inputs": {name: _written(given) for name, given in self.calculator.example.items()},
            "show": list(self.show),
        }


def table_shapes(book: Book) -> list[Shape]:
    """The shapes that every calculator offers, each tried once; heavy ones, which nobody tabulates, are left out."""
    shapes = []
    for calculator in CALCULATORS.values():
        if not calculator.on_site:
            continue
        show = [output.name for output in calculator.outputs if output.quantity not in ("rows", "plan")][:3]
        for declared in calculator.inputs:
            if not show or declared.quantity not in GRAIN or _range(declared) == (0.0, 0.0):
                continue
            fixed = {name: _written(given) for name, given in calculator.example.items() if name != declared.name}
            shape = Shape(calculator, declared, fixed, show)
            if _answers(book, shape):
                shapes.append(shape)
    return shapes


def _answers(book: Book, shape: Shape) -> bool:
    """Whether most rows of a table of that shape have an answer."""
    table = Table.model_validate(shape.table(Random(1), "Trial"))
    computed, troubles = compute_table(book, table, shape.calculator)
    answered = [row for row in computed.rows if not any(cell.refused for cell in row.cells)]
    return not troubles and len(answered) * 2 > len(computed.rows) > 3


def _written(given: Any) -> str | list[dict[str, str]]:
    """An input of an example as a file of the book holds it: every figure is text."""
    if isinstance(given, list):
        return [{column: str(cell) for column, cell in row.items()} for row in given]
    return str(given)


def _range(declared: Input) -> tuple[float, float]:
    if declared.usual is not None:
        return declared.usual
    if declared.least is not None and declared.most is not None:
        return declared.least, min(declared.most, declared.least + 100 * GRAIN[declared.quantity])
    return 0.0, 0.0
