"""``compute``: ask a calculator, in the units that people write and with the crew's standards, as on the pages."""

from __future__ import annotations

import argparse
import json
import textwrap
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from build_tools.book.printable import printable_lines
from build_tools.commands.command import SUCCESS, Command, add_book, book_folder
from build_tools.commands.usage_error import UsageError

if TYPE_CHECKING:
    from build_tools.book.book import Book
    from build_tools.book.calls import CallResult
    from calculators.declaration import Calculator, Input, Output


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of ``compute``."""
    parser.add_argument("calculator", nargs="?", metavar="CALCULATOR", help="its name; left out, all are listed")
    parser.add_argument("inputs", nargs="*", metavar="NAME=VALUE", help="an input with its unit, like ring='1-1/2 in'")
    parser.add_argument("--json", action="store_true", help="the answer as JSON, for programs")
    add_book(parser)


def run(arguments: argparse.Namespace) -> int:
    """Print the answer; a value that the calculator refuses is wrong usage."""
    from build_tools.book.calls import call
    from build_tools.book.load import load_book

    if arguments.calculator is None:
        return _list()
    calculator = _find(arguments.calculator)
    written = _inputs(calculator, arguments.inputs)
    book = load_book(book_folder(arguments)).book
    called = call(book, calculator, written)
    if called.answer is None:
        raise UsageError("\n".join(_complaints(calculator, called, book, shown=not written)))
    answer = _as_data(calculator, called, called.answer, book)
    if arguments.json:
        print(printable_lines(json.dumps(answer, indent=2, ensure_ascii=False)))
    else:
        print(printable_lines(_as_text(calculator, answer)))
    return SUCCESS


def _list() -> int:
    from calculators.registry import CALCULATORS

    for trade in dict.fromkeys(calculator.trade for calculator in CALCULATORS.values()):
        print(f"{trade}:")
        for name, calculator in CALCULATORS.items():
            if calculator.trade == trade:
                print(f"    {name:24} {calculator.title}")
    return SUCCESS


def _find(name: str) -> Calculator:
    from build_tools.book.diagnostics import did_you_mean
    from calculators.registry import CALCULATORS

    if name not in CALCULATORS:
        hint = did_you_mean(name, CALCULATORS) or "'compute' without a name lists the calculators"
        raise UsageError(f"there is no calculator '{name}'\n    {hint}")
    return CALCULATORS[name]


def _inputs(calculator: Calculator, words: list[str]) -> dict[str, str]:
    written: dict[str, str] = {}
    for word in words:
        name, equals, value = word.partition("=")
        if not equals:
            raise UsageError(
                f"'{word}' is not NAME=VALUE: write an input with its value, like {calculator.inputs[0].name}=..."
            )
        if name in written:
            raise UsageError(f"'{name}' is given twice")
        written[name] = value
    return written


def _complaints(calculator: Calculator, called: CallResult, book: Book, *, shown: bool) -> list[str]:
    """What is wrong with each input; all inputs with their limits when one is missing, or where that is wanted."""
    lines = []
    for complaint in called.complaints:
        lines.append(complaint.message)
        lines += [f"    {complaint.hint}"] if complaint.hint else []
    missing = [one.name for one in calculator.inputs if one.name not in called.values and one.default is None]
    if shown or missing:
        lines += ["", f"the inputs of '{calculator.name}':", *_described(calculator, book)]
    return lines


def _described(calculator: Calculator, book: Book) -> list[str]:
    """The inputs in a table: name, what it is, in which unit, what it starts at, its limits or choices."""
    from build_tools.book.calls import settle, shown_input
    from build_tools.book.references import figure_of

    starts = settle(book, calculator, {}).settled
    rows = []
    for declared in calculator.inputs:
        start = "must be given"
        if settled := starts.get(declared.name):
            start = str(settled.value) if declared.choices else shown_input(declared, settled.value)
            if settled.by == "standard":
                start = f"{figure_of(settled.standard, book)} (crew standard)"
        rows.append([declared.name, declared.label, start, _limits(declared)])
    return _table(rows)


def _limits(declared: Input) -> str:
    from build_tools.book.calls import shown_input

    if declared.choices:
        return " | ".join(choice.name for choice in declared.choices)
    if declared.columns:
        return f"rows parted by ';', each {', '.join(column.name for column in declared.columns)}"
    if declared.quantity == "yes-no":
        return "yes | no"
    parts = []
    if declared.least is not None:
        parts.append(f"from {shown_input(declared, declared.least)}")
    if declared.most is not None:
        parts.append(f"to {shown_input(declared, declared.most)}")
    return " ".join(parts)


def _as_data(calculator: Calculator, called: CallResult, answer: Mapping[str, Any], book: Book) -> dict[str, Any]:
    from build_tools.book.calls import shown_input
    from calculators.declaration import INSIDE_UNIT
    from calculators.run import shown

    texts = shown(calculator, answer)
    values = {declared.name: called.values.get(declared.name, declared.default) for declared in calculator.inputs}

    def entry(declared: Input | Output, value: Any, text: Any) -> dict[str, Any]:
        unit = INSIDE_UNIT.get(declared.quantity, "")
        return {"label": declared.label, "shown": text, "value": value, "unit": unit}

    return {
        "calculator": calculator.name,
        "inputs": {
            declared.name: entry(declared, values[declared.name], shown_input(declared, values[declared.name]))
            | {"by": called.settled[declared.name].by if declared.name in called.settled else "default"}
            for declared in calculator.inputs
        },
        "outputs": {
            declared.name: entry(declared, answer[declared.name], texts[declared.name])
            for declared in calculator.outputs
        },
        "working": list(answer["working"]),
        "cautions": list(answer["cautions"]),
        "cannot_decide": calculator.cannot_decide,
        "sources": [_source(book, citation.source, citation.clause) for citation in calculator.sources],
    }


def _source(book: Book, id: str, clause: str) -> str:
    title = book.sources[id].item.title.inside(book.language) if id in book.sources else id
    return f"{title}, {clause}" if clause else title


def _as_text(calculator: Calculator, answer: dict[str, Any]) -> str:
    inputs = [
        [name, given["label"], f"{given['shown']}{' (crew standard)' * (given['by'] == 'standard')}"]
        for name, given in answer["inputs"].items()
    ]
    lines = [calculator.title, "", "inputs:", *_table(inputs), "", "answer:"]
    for declared in calculator.outputs:
        given = answer["outputs"][declared.name]
        if declared.quantity == "rows":
            heads = [column.label for column in declared.columns]
            rows = [[str(row[column.name]) for column in declared.columns] for row in given["shown"]]
            lines += [f"    {given['label']}:", *("    " + line for line in _table([heads, *rows]))]
        else:
            lines.append(f"    {given['label']}: {given['shown']}")
    for name in ("cautions", "working", "sources"):
        if answer[name]:
            lines += ["", f"{name}:", *map(_wrapped, answer[name])]
    if calculator.cannot_decide:
        lines += ["", "not settled by this:", _wrapped(calculator.cannot_decide)]
    return "\n".join(lines)


def _wrapped(text: str) -> str:
    return textwrap.fill(text, 100, initial_indent="    ", subsequent_indent="      ")


def _table(rows: list[list[str]]) -> list[str]:
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    return ["    " + "  ".join(map(str.ljust, row, widths)).rstrip() for row in rows]


COMMAND = Command(
    name="compute",
    help="ask a calculator",
    description="Asks a calculator and prints the answer with its working, cautions and sources. Inputs are written\n"
    "as people write them; what is left out starts at the crew's standard, or at the calculator's own default.\n"
    "Without a name it lists the calculators.",
    add_arguments=add_arguments,
    run=run,
    examples=(
        "compute",
        "compute wax-ring rise='1/2 in floor above flange' ring='1 in'",
        "compute wax-ring recess='3/4 in' --json",
    ),
)
