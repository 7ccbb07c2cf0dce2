"""The page of one calculator: a worked example, what it takes and gives, its formula and sources."""

from __future__ import annotations

from typing import Any

from build_tools.book.calls import shown_input
from build_tools.pages.helpers import NOTHING, Helpers
from build_tools.pages.page import Heading, Page, SearchEntry
from build_tools.pages.plots import plots_of
from build_tools.pages.renderer import Renderer
from calculators.declaration import Calculator, Input, Output
from calculators.writing_units import write


def calculator_page(renderer: Renderer, calculator: Calculator) -> Page:
    """The page of a calculator."""
    url = f"calculators/{calculator.name}.html"
    helpers = renderer.helpers(url)
    standards = renderer.book.standards(calculator.name)
    example = example_of(calculator, standards)
    called = renderer.context.call_with(calculator.name, example)
    title = "work_it_out_here" if calculator.on_site else "worked_example"
    content = renderer.render(
        "calculator.html",
        helpers,
        calculator=calculator,
        example_title=title,
        example=helpers.worked(called, calculator.name, example),
        plots=plots_of(renderer.context, calculator, renderer.plots),
        inputs=[_input(helpers, declared, standards, renderer.words) for declared in calculator.inputs],
        outputs=[
            {"label": output.label, "help": output.help, "comes": _comes(output, renderer.words)}
            for output in calculator.outputs
        ],
        formula=helpers.prose(calculator.formula),
        cannot_decide=helpers.prose(calculator.cannot_decide) if calculator.cannot_decide else "",
        sources=helpers.sources(calculator),
        used_in=helpers.used_in("calculator", calculator.name),
        live=renderer.live(helpers, [calculator]),
    )
    names = (title, "example"), ("takes", "takes"), ("gives", "gives"), ("formula", "formula")
    headings = [Heading(renderer.words[word], id) for word, id in names]
    headings += [Heading(renderer.words[word], id) for word, id in (("sources", "sources"), ("used_in", "used-in"))]
    found = SearchEntry(url, calculator.title, calculator.summary, calculator.other_names, boost=2)
    return Page(url, calculator.title, content, calculator.summary, tuple(headings), (found,))


def example_of(calculator: Calculator, standards: dict[str, str]) -> dict[str, Any]:
    """The example of a calculator, at the crew's standards where an input has one."""
    return {name: standards.get(name, written) for name, written in calculator.example.items()}


def _input(helpers: Helpers, declared: Input, standards: dict[str, str], words: dict[str, str]) -> dict[str, Any]:
    """An input: where it starts, the usual range and the hard limits, as people write them."""
    standard = standards.get(declared.name)
    default = (
        shown_input(declared, declared.default) if declared.default not in (None, [], "") else words["you_give_it"]
    )
    usual = _range(declared, *declared.usual) if declared.usual else ""
    choices = ", ".join(choice.label for choice in declared.choices)
    limits = choices or _range(declared, declared.least, declared.most)
    if rule := declared.rule:
        low, high = (rule.limit, None) if rule.side == "least" else (None, rule.limit)
        stated = f"{_range(declared, low, high)}, {rule.source}"
        usual, limits = (usual, f"{limits}; {stated}") if rule.weight == "law" else (stated, limits)
    return {
        "label": declared.label,
        "help": declared.help,
        "standard": helpers.written(standard) if standard else default,
        "usual": usual or NOTHING,
        "limits": limits or NOTHING,
    }


def _range(declared: Input, least: float | None, most: float | None) -> str:
    low = shown_input(declared, least) if least is not None else ""
    high = shown_input(declared, most) if most is not None else ""
    return f"{low} to {high}" if low and high else f"at least {low}" if low else f"at most {high}" if high else ""


def _comes(output: Output, words: dict[str, str]) -> str:
    """What an output is, or how it is rounded: ``Rounded up to 1/4 cu yd``."""
    kinds = {"rows": "as_table", "text": "in_words", "choice": "in_words", "yes-no": "yes_or_no"}
    if output.quantity in kinds:
        return words[kinds[output.quantity]]
    if output.quantity == "count" and output.rounds == "nearest":
        return words["whole_number"]
    return (
        f"{words['rounded']} {_rounding(output)}"
        if output.step or output.quantity == "count"
        else words["four_figures"]
    )


def _rounding(output: Output) -> str:
    """How an output is rounded: ``up to 1/4 cu yd``."""
    if output.quantity == "count":
        return f"{output.rounds} to a whole one"
    unit = "in" if output.unit == "ft-in" else output.unit
    step = f"{write_step(output.step)} {unit}".strip()
    if output.rounds == "tape":
        return f"to the nearest {step}, or {write_step(output.step / 2)} {unit} where that decides"
    return f"{output.rounds} to {step}" if output.rounds != "nearest" else f"to the nearest {step}"


def write_step(step: float) -> str:
    """A rounding step as a fraction of the tape where it is one.

    >>> write_step(0.0625), write_step(0.25), write_step(0.1), write_step(1)
    ('1/16', '1/4', '0.1', '1')
    """
    if step < 1 and (step * 64).is_integer():
        return write(step, "length", "in", step, "nearest").removesuffix(" in")
    return f"{step:g}"


def calculators_page(renderer: Renderer) -> Page:
    """The calculators by trade."""
    url = "calculators/index.html"
    helpers = renderer.helpers(url)
    trades = [
        {
            "id": id,
            "title": helpers.title("trade", id),
            "calculators": [
                {"url": helpers.url("calculator", name), "title": calculator.title, "summary": calculator.summary}
                for name, calculator in renderer.context.calculators.items()
                if calculator.trade == id
            ],
        }
        for id in renderer.trades()
    ]
    content = renderer.render("calculators.html", helpers, trades=trades)
    headings = tuple(Heading(str(trade["title"]), str(trade["id"])) for trade in trades if trade["calculators"])
    return Page(url, renderer.words["calculators"], content, renderer.words["calculators_lead"], headings)
