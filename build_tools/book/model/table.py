"""Calls of calculators: an amount, and a table computed at build time."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from build_tools.book.model.base import IDENTIFIER, CalculatorId, Measure, Part, Text, Written


class Call(Part):
    """A calculator with its inputs, in the units that people write, and the output that is wanted."""

    calculator: CalculatorId
    inputs: dict[str, Written] = {}
    output: str


Amount = Measure | Call
"""A quantity as a figure (``2 each``) or as a calculator's output."""


class Axis(Part):
    """The input that runs along one side of a table: its values listed, or from, to and step.

    ``ours`` is the crew's own standard along it, where that is not the default of the input already.
    """

    input: str
    values: list[Measure] = []
    start: Annotated[Measure | None, Field(alias="from")] = None
    to: Measure | None = None
    step: Measure | None = None
    ours: Measure | None = None

    @model_validator(mode="after")
    def _one_way(self) -> Axis:
        ranged = [part for part in (self.start, self.to, self.step) if part is not None]
        if bool(self.values) == bool(ranged) or len(ranged) not in (0, 3):
            raise ValueError("an axis takes either 'values', or all three of 'from', 'to' and 'step'")
        return self


class Table(Part):
    """A table that the build computes: which input runs down, which across, what is fixed, what is shown.

    ``passes`` names an output that is yes or no: a cell where it is no is marked as one that does not do.
    """

    caption: Text
    calculator: CalculatorId
    down: Axis
    across: Axis | None = None
    fixed: dict[str, Written] = {}
    show: Annotated[list[str], Field(min_length=1)]
    passes: str | None = None


class Form(Part):
    """A calculator at a step, with inputs set for the work of this page; the rest start at their standards.

    ``readings`` maps an input to the ``name`` of a measurement of this step or one before it: what is read there is put
    in here.
    """

    calculator: CalculatorId
    inputs: dict[str, Written] = {}
    readings: dict[str, Annotated[str, Field(pattern=IDENTIFIER)]] = {}
    show: list[str] = []
