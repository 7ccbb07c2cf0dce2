"""Calculators are called with inputs they know, in units they read, within their limits."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.book.book import ProcedureEntry
from build_tools.book.calls import InputError
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.model.table import Call, Form, Table
from build_tools.book.traverse import CALLS, traversed
from build_tools.book.yaml_reader import Location
from calculators.declaration import COMMON_PRACTICE, CREW_RULE
from calculators.limits import limits

LABELS = {COMMON_PRACTICE.source, CREW_RULE.source}


def of_procedure(context: Context, entry: ProcedureEntry) -> Iterator[Diagnostic]:
    """Every amount, form and table of a procedure."""
    for location, kind, part in traversed(entry.item, context.memo):
        if kind not in CALLS or part.calculator not in context.calculators:
            continue  # the reference check names an unknown one
        if isinstance(part, Table):
            for trouble in context.table(part)[1]:
                yield entry.error((*location, *trouble.location), trouble.message, trouble.hint)
            continue
        called = context.call(part)
        for complaint in called.complaints:
            yield entry.error(_at(location, part, complaint), complaint.message, complaint.hint)
        wanted = [part.output] if isinstance(part, Call) else part.show
        outputs = [output.name for output in called.calculator.outputs]
        for name in wanted:
            if name not in outputs:
                yield entry.error(
                    (*location, "output" if isinstance(part, Call) else "show"),
                    f"'{name}' is not an output of calculator '{part.calculator}'",
                    did_you_mean(name, outputs) or f"its outputs are {', '.join(outputs)}",
                )


def standards(context: Context) -> Iterator[Diagnostic]:
    """What a value is the default of exists, is set by one value alone, and takes it."""
    taken: dict[str, str] = {}
    for id, entry in context.book.values.items():
        for index, (name, input_name, _) in enumerate(entry.item.starts()):
            at: Location = ("default_of", index)
            place = f"{name}.{input_name}"
            calculator = context.calculators.get(name)
            if calculator is None:
                yield entry.error(at, f"there is no calculator '{name}'", did_you_mean(name, context.calculators))
                continue
            declared = calculator.input(input_name)
            if declared is None:
                inputs = [one.name for one in calculator.inputs]
                yield entry.error(
                    at, f"calculator '{name}' has no input '{input_name}'", did_you_mean(input_name, inputs)
                )
                continue
            if place in taken:
                yield entry.error(at, f"'{place}' has the value '{taken[place]}' as its default already", "keep one")
            taken[place] = id
            called = context.call_with(name, {})
            said = {
                complaint.message: complaint.hint for complaint in called.complaints if complaint.input == input_name
            }
            if input_name in called.values:
                # A calculator that another input keeps from answering has not looked at the limits of this one.
                said |= {message: "" for _, message in limits([declared], called.values) if message not in said}
            for message, hint in said.items():
                yield entry.error(("quantity",), f"does not fit {place}: {message}", hint)


def citations(context: Context) -> Iterator[Diagnostic]:
    """The sources that calculators cite are in the book."""
    for name, calculator in context.calculators.items():
        for citation in calculator.sources:
            if citation.source not in LABELS and citation.source not in context.book.sources:
                yield Diagnostic(
                    "procedures/reference/sources",
                    1,
                    1,
                    "error",
                    f"calculator '{name}' cites source '{citation.source}', which is not in the book",
                    did_you_mean(citation.source, context.book.sources) or "add it to one of the files here",
                )


def _at(location: Location, part: Call | Form, complaint: InputError) -> Location:
    if complaint.input in part.inputs:
        return (*location, "inputs", complaint.input)
    return (*location, "inputs")
