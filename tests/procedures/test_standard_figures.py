"""The figure of a crew standard stands in one place: no label, constant or page of the book holds it a second time."""

from __future__ import annotations

import ast
import re
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

import calculators
from build_tools.book.amounts import read_figure
from build_tools.book.calls import settle, shown_input
from build_tools.book.model.table import Call, Form, Table
from build_tools.book.references import figure_of, named_value
from build_tools.book.traverse import traverse
from build_tools.pages.calculator_page import example_of
from calculators.declaration import Refused
from calculators.run import read_input, run
from tests.standards import context, given, probes


def test_no_page_types_the_figure_of_a_standard() -> None:
    """A call, form or table that writes out what the input starts at anyway would stay behind when that changes."""
    typed = []
    for procedure, entry in context().book.procedures.items():
        for _, _, part in traverse(entry.item):
            if not isinstance(part, Call | Form | Table):
                continue
            calculator = context().calculators[part.calculator]
            inputs = part.fixed if isinstance(part, Table) else part.inputs
            values = settle(context().book, calculator, {}).values
            for name in context().book.standards(calculator.name):
                written = inputs.get(name)
                item = calculator.input(name)
                if isinstance(written, str) and "value:" not in written and item is not None:
                    typed += [f"{procedure}: {name} {written}"] * (read_input(item, written) == values[name])
    assert typed == []


FIXED = {
    "alarm-bath-least", "alarm-cooking-least", "alarm-cooking-wanted", "alarm-door-most", "alarm-peak-most",
    "backset-long", "cleanout-apart", "cleanout-largest", "handle-reach-least", "handle-reach-most", "tailpiece-most",
    "toilet-front-least", "toilet-side-least", "trap-arm-ours", "trench-engineer-from", "trench-guard-from",
    "trench-ladder-above", "trench-ladder-from", "trench-ladder-reach", "gfci-water-most", "front-least-upc",
    "lavatory-front-least", "lavatory-side-least", "pendant-bath-least",
}  # fmt: skip
"""Standards that are a law's or a published standard's own figure, which a calculator holds as it is published."""
SMALL = {"least", "most", "from", "under", "above", "over", "with", "large"}


def words(text: str) -> set[str]:
    """The words of a name that tell what it is of."""
    return {word.rstrip("s") for word in re.split(r"[^a-z]+", text.lower()) if len(word) > 3} - SMALL


@lru_cache
def constants() -> list[tuple[str, str, set[float]]]:
    """Module, name and figures of every constant of the calculators; what is drawn alone is left out."""
    found = []
    for path in sorted(Path(calculators.__path__[0]).glob("*/*.py")):
        for line in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(line, ast.Assign | ast.AnnAssign) and line.value is not None and "drawing" not in path.stem:
                name = getattr(line.target if isinstance(line, ast.AnnAssign) else line.targets[0], "id", "")
                values = [each.value for each in ast.walk(line.value) if isinstance(each, ast.Constant)]
                figures = {float(each) for each in values if isinstance(each, int | float)}
                found.append((f"{path.parent.stem}/{path.stem}", str(name), figures))
    return [each for each in found if each[1].isupper()]


def test_no_constant_of_a_calculator_holds_what_the_crew_settles() -> None:
    """A ring, a backset or a bar that is a constant would stay as it is when its standard changes."""
    held = set()
    for id, entry in context().book.values.items():
        number = read_figure(entry.item.quantity)[0]
        trade = Path(entry.document.file).stem.replace("tile", "flooring")
        for module, name, figures in constants():
            same = module.startswith(trade) and words(name) & words(f"{id} {entry.item.title.inside()}")
            if same and number in figures and not entry.item.default_of and id not in FIXED:
                held.add(f"{module}.{name}: {id}")
    assert held == set()


PUBLISHED = {
    ("approach-concrete", "grade_break"), ("drain-fall", "slope"), ("joint-spacing", "formula"),
    ("lock-preparation", "faceplate"), ("lumen-layout", "work_plane"), ("strip-floor-take-off", "formula"),
    ("tile-take-off", "lippage_most"), ("trap-arm", "slope"), ("wax-ring", "flange_above_subfloor"),
}  # fmt: skip
"""Figures of a published rule, or examples, that are the same as a standard of the crew by chance."""


@pytest.mark.parametrize("name", sorted(context().calculators))
def test_no_label_of_a_calculator_holds_the_figure_of_a_standard(name: str) -> None:
    """A label, a choice or a formula stays as it is when the standard changes: it may not say the figure."""
    calculator = context().calculators[name]
    texts = [("title", calculator.title), ("summary", calculator.summary), ("formula", calculator.formula)]
    texts += [("plot", plot.title) for plot in calculator.plots]
    for each in calculator.inputs:
        texts += [(each.name, text) for text in (each.label, each.help, *(choice.label for choice in each.choices))]
    texts += [(each.name, text) for each in calculator.outputs for text in (each.label, each.help)]
    values = settle(context().book, calculator, {}).values
    for input, standard in context().book.standards(name).items():
        item = calculator.input(input)
        assert item is not None
        for figure in {shown_input(item, values[input]), figure_of(standard, context().book) or ""}:
            pattern = re.compile(rf"(?<![\d/.-]){re.escape(figure)}(?![\w/])")
            wrong = [(at, text) for at, text in texts if re.search(r"[a-z%]", figure) and pattern.search(text)]
            assert [each for each in wrong if (name, each[0]) not in PUBLISHED] == [], (input, figure)


@pytest.mark.parametrize("name", sorted(context().calculators))
def test_no_answer_holds_the_old_figures(name: str) -> None:
    """With every standard of a calculator changed at once, no text of an answer says one of the old figures.

    Only figures that stood in the answer before, and that nothing else of it gives, are looked for.
    """
    calculator = context().calculators[name]
    standards = context().book.standards(name)
    new = {input: given(named_value(standard) or "")[f"{name}.{input}"] for input, standard in standards.items()}
    for values in probes(name)[:8]:
        start = {**values, **{input: settle(context().book, calculator, {}).values[input] for input in standards}}
        try:
            before, after = run(calculator, start), run(calculator, {**start, **new})
        except Refused:
            continue
        old = {
            shown_input(item, start[item.name])
            for item in calculator.inputs
            if item.name in standards and item.quantity == "length" and start[item.name]
        }
        kept = {
            shown_input(item, {**start, **new}[item.name]) for item in calculator.inputs if item.name not in standards
        }
        for figure in old - kept:
            pattern = re.compile(rf"(?<![\d/.\"'-]){re.escape(figure)}(?![\w/])")
            said = [text for text in texts_of(before) if pattern.search(text)]
            assert not [text for text in texts_of(after) if text in said], figure


def texts_of(answer: dict[str, Any]) -> list[str]:
    """The cautions of an answer and its outputs that are words; not what is said of an unusual input."""
    cautions = [text for text in answer["cautions"] if "outside the usual" not in text and "looser than" not in text]
    return [*cautions, *(each for each in answer.values() if isinstance(each, str))]


@pytest.mark.parametrize("name", sorted(context().calculators))
def test_an_example_is_worked_at_the_standards(name: str) -> None:
    """Each input of an example that has a crew standard stands at it, and there is an answer."""
    standards = context().book.standards(name)
    example = example_of(context().calculators[name], standards)
    called = context().call_with(name, example)
    assert called.answer is not None
    start = settle(context().book, context().calculators[name], {}).values
    assert {each: called.values[each] for each in example if each in standards} == {
        each: start[each] for each in example if each in standards
    }
