"""A form starts from what was read before: the measurement is there, it comes first, and it is the same quantity."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from build_tools.book.amounts import read_figure
from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.model.step import Measurement
from build_tools.book.yaml_reader import Location
from calculators.declaration import Input
from calculators.reading import Unreadable


@dataclass(frozen=True, slots=True)
class NamedMeasurement:
    """A measurement that has a name, and the place of its step and of itself."""

    step: int
    at: Location
    item: Measurement


def of_procedure(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """The names of the measurements of a procedure, and the forms that start from them."""
    named: dict[str, NamedMeasurement] = {}
    for number, step in enumerate(entry.item.steps):
        for index, item in enumerate(step.measurements):
            at: Location = ("steps", number, "measurements", index)
            if item.name in named:
                line, _ = entry.document.place((*named[item.name].at, "name"))
                yield entry.error((*at, "name"), f"the name '{item.name}' is taken already in line {line}")
            elif item.name is not None:
                named[item.name] = NamedMeasurement(number, at, item)
    for number, step in enumerate(entry.item.steps):
        calculator = context.calculators.get(step.calculator.calculator) if step.calculator else None
        if step.calculator is None or calculator is None:
            continue
        for input_name, name in step.calculator.readings.items():
            here: Location = ("steps", number, "calculator", "readings", input_name)
            declared = calculator.input(input_name)
            found = named.get(name)
            if declared is None:
                inputs = [each.name for each in calculator.inputs]
                hint = did_you_mean(input_name, inputs) or f"its inputs are {', '.join(inputs)}"
                yield entry.error(here, f"'{input_name}' is not an input of '{calculator.name}'", hint)
            elif found is None:
                hint = did_you_mean(name, named) or f"give the measurement that is meant a 'name: {name}'"
                yield entry.error(here, f"no measurement of this procedure has the name '{name}'", hint)
            elif found.step > number:
                there = entry.item.steps[found.step].id
                yield entry.error(here, f"'{name}' is read in step '{there}', which comes after this one")
            else:
                yield from _fits(context, entry, here, declared, found.item)


def _fits(
    context: Context, entry: ProcedureEntry, at: Location, declared: Input, item: Measurement
) -> Iterator[Diagnostic]:
    """A reading is of the quantity that the input takes, and goes the same ways."""
    kind, what = _kind(context, item), f"'{item.name}' is read"
    wanted = declared.unit if declared.quantity == "number" else declared.quantity
    ways = sorted(way.way.inside(context.book.language) for way in item.ways)
    if kind not in ("", wanted):
        yield entry.error(at, f"{what} as a {kind}, while '{declared.name}' takes a {wanted or declared.quantity}")
    elif ways != sorted(declared.ways):
        hint = f"its ways are: {' / '.join(declared.ways)}" if declared.ways else "take 'ways' out of the measurement"
        yield entry.error(at, f"{what} in other ways than '{declared.name}' of the calculator goes", hint)


def _kind(context: Context, item: Measurement) -> str:
    """The quantity of a measurement; nothing where it cannot be read, which another check says."""
    written = next(
        figure
        for part in item.sides
        for name in ("target", "least", "most")
        if (figure := getattr(part, name, None)) is not None
    )
    try:
        return read_figure(context.figure(written) or "")[1]
    except Unreadable:
        return ""
