"""Numbers with their units can be read, and are of the kind that their place wants."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from build_tools.book.amounts import read_figure, read_with_unit, split_amount
from build_tools.book.book import Entry, ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.step import Measurement, Way
from build_tools.book.model.table import Call
from build_tools.book.references import figure_of
from build_tools.book.yaml_reader import Location
from calculators.reading import Unreadable

TOLERANCES = ("target", "within", "plus", "minus", "least", "most")
TWO_WAYS = (
    "say the two ways in words: 'ways', two of them, each with its 'way' (above the string), and a 'least' or a 'most'"
)


def of_procedure(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """Hours, waiting times, measurements and quantities of material."""
    labour = entry.item.labour
    if isinstance(labour.hours, str):
        yield from _time(context, entry, ("labour", "hours"), labour.hours)
    yield from _amount(context, entry, ("labour", "per"), labour.per, "")
    for index, closes in enumerate(entry.item.closes):
        yield from _time(context, entry, ("closes", index, "for"), closes.time)
    for index, line in enumerate(entry.item.materials):
        material = context.book.materials.get(line.material)
        counted_in = material.item.counted_in if material else ""
        at: Location = ("materials", index, "quantity")
        if isinstance(line.quantity, Call):
            yield from _call_unit(context, entry, at, line.quantity, counted_in)
        else:
            yield from _amount(context, entry, at, line.quantity, counted_in)
    for number, step in enumerate(entry.item.steps):
        for index, measurement in enumerate(step.measurements):
            yield from _measurement(context, entry, ("steps", number, "measurements", index), measurement)


def of_reference_entries(context: Context) -> Iterator[Diagnostic]:
    """Crew standards, and the notice of inspections and of people."""
    for value in context.book.values.values():
        try:
            read_figure(value.item.quantity)
        except Unreadable as trouble:
            yield value.error(("quantity",), str(trouble))
    for inspection in context.book.inspections.values():
        yield from _time(context, inspection, ("notice",), inspection.item.notice)
    for person in context.book.people.values():
        if person.item.notice is not None:
            yield from _time(context, person, ("notice",), person.item.notice)


def _time(context: Context, entry: Entry[Any], at: Location, written: str) -> Iterator[Diagnostic]:
    text = figure_of(written, context.book)
    if text is None:
        return
    try:
        read_with_unit(text, "time", "h")
    except Unreadable as trouble:
        yield entry.error(at, str(trouble))


def _measurement(context: Context, entry: ProcedureEntry, at: Location, item: Measurement) -> Iterator[Diagnostic]:
    for number, way in enumerate(item.ways):
        yield from _limits(context, entry, (*at, "ways", number), way)
    yield from _limits(context, entry, at, item)


def _limits(context: Context, entry: ProcedureEntry, at: Location, item: Measurement | Way) -> Iterator[Diagnostic]:
    kinds: dict[str, str] = {}
    numbers: dict[str, float] = {}
    figures: dict[str, str] = {}
    for part in TOLERANCES:
        if part not in type(item).model_fields:
            continue
        written = getattr(item, part)
        text = context.figure(written) if written is not None else None
        if text is None:
            continue
        figures[part] = text
        try:
            numbers[part], kinds[part] = read_figure(text)
        except Unreadable as trouble:
            yield entry.error((*at, part), str(trouble))
    first = next(iter(kinds), "")
    for part, kind in kinds.items():
        if kind != kinds[first]:
            yield entry.error(
                (*at, part),
                f"'{figures[part]}' is a {kind}, while '{first}' of this measurement is a {kinds[first]}",
            )
    if {"least", "most"} <= numbers.keys() and numbers["least"] > numbers["most"]:
        yield entry.error((*at, "least"), f"the least, {figures['least']}, is more than the most, {figures['most']}")
    if "temperature" not in kinds.values():
        yield from _signs(entry, at, numbers)


def _signs(entry: ProcedureEntry, at: Location, numbers: dict[str, float]) -> Iterator[Diagnostic]:
    """A reading that may go below nothing does so alike both ways: then nobody has to know which one is minus."""
    below = next((part for part in ("target", "least", "most") if numbers.get(part, 0) < 0), None)
    if below is not None:
        yield entry.error((*at, below), "is less than nothing, and a sign can be taken the other way", TWO_WAYS)
    elif "target" in numbers:
        minus, plus = (numbers.get(part, numbers.get("within", 0)) for part in ("minus", "plus"))
        if minus > numbers["target"] > 0 or (numbers["target"] == 0 and minus != plus):
            part = "minus" if "minus" in numbers else "within"
            yield entry.error(
                (*at, part), "a reading goes both ways from nothing here, each to its own limit", TWO_WAYS
            )


def _amount(
    context: Context, entry: ProcedureEntry, at: Location, written: str, counted_in: str
) -> Iterator[Diagnostic]:
    text = figure_of(written, context.book)
    if text is None:
        return
    amount = split_amount(text)
    if amount is None:
        yield entry.error(at, f"'{written}' is not a number with its unit", f"write it like '2 {counted_in or 'each'}'")
    elif not amount.unit and not counted_in:
        yield entry.error(
            at, f"'{written}' does not say of what", f"write it like '{written} each' or '{written} sq ft'"
        )
    elif counted_in and amount.unit != counted_in:
        yield entry.error(at, f"'{written}' is not in the unit of this material, which is counted in '{counted_in}'")


def _call_unit(
    context: Context, entry: ProcedureEntry, at: Location, call: Call, counted_in: str
) -> Iterator[Diagnostic]:
    calculator = context.calculators.get(call.calculator)
    output = calculator.output(call.output) if calculator else None
    if output is None or not counted_in:
        return
    if output.quantity in ("text", "choice", "rows", "yes-no"):
        yield entry.error((*at, "output"), f"'{call.output}' of '{call.calculator}' is no number")
    elif output.unit not in ("", counted_in, f"{counted_in}s"):
        yield entry.error(
            (*at, "output"),
            f"'{call.output}' of '{call.calculator}' is in '{output.unit}', "
            f"while the material is counted in '{counted_in}'",
        )
