"""The page's scripts in a script engine of its own (V8), and the same work in Python."""

from __future__ import annotations

import json
from functools import lru_cache
from math import isclose
from typing import Any

from py_mini_racer import MiniRacer

from build_tools.browser.compiler.bundle import compile_calculators
from build_tools.browser.declarations import declaration
from build_tools.browser.in_script import data_in_script
from build_tools.pages.live import field_of
from build_tools.pages.words import words
from calculators.answering import filled, keep_limits, read_one, read_rows, shown_lines, split_rows, with_cautions
from calculators.declaration import Calculator, Input, Refused
from calculators.registry import CALCULATORS
from calculators.run import run
from tests.script_engine import new_engine

ON_SITE = {name: each for name, each in CALCULATORS.items() if each.on_site}

LABEL = """
function label(name, given) {
  var parts = JSON.parse(given), declared = crew.calculators[name].declaration;
  function choices(pairs) { return pairs.map(function (one) { return { name: one[0], label: one[1] }; }); }
  declared.inputs.forEach(function (input, at) {
    input.label = parts[0][at].label;
    input.choices = choices(parts[0][at].choices);
    input.columns.forEach(function (column, place) {
      column.label = parts[0][at].columns[place].label;
      column.choices = choices(parts[0][at].columns[place].choices);
    });
  });
  declared.outputs.forEach(function (output, at) { output.label = parts[1][at].label; });
  return true;
}
"""
HARNESS = """
function answerAll(name, cases) {
  return JSON.stringify(JSON.parse(cases).map(function (one) {
    var values = one.values, read = {}, given = Object.keys(one.texts);
    given.forEach(function (input) {
      var found = crew.readInput(name, input, one.texts[input], one.metric);
      read[input] = found;
      if (found.message === undefined) values[input] = found.value;
    });
    var outcome = crew.run(name, values, one.metric), shown = null, sheet = null;
    if (outcome.answer) {
      shown = crew.shown(name, outcome.answer, one.metric);
      if (one.draws) sheet = crew.drawing(name, values, outcome.answer);
    }
    return { read: read, outcome: outcome, shown: shown, sheet: sheet };
  }));
}
function each(work, cases) {
  return JSON.stringify(JSON.parse(cases).map(function (one) { return eval(work).apply(null, one); }));
}
"""


@lru_cache
def engine() -> MiniRacer:
    """An engine with the shared script and every calculator's."""
    scripts = compile_calculators(ON_SITE.values())
    made = new_engine()
    made.eval(scripts.core)
    made.eval(LABEL)
    for name, functions in scripts.functions.items():
        made.eval(functions.replace("DECLARATION", data_in_script(declaration(CALCULATORS[name], {})), 1))
        label(made, CALCULATORS[name])
    made.eval(scripts.draw)
    made.eval(HARNESS)
    return made


def label(engine: MiniRacer, calculator: Calculator) -> None:
    """Put in the labels and choices that a form takes from its page."""
    inputs = [field_of(each, words()) for each in calculator.inputs]
    outputs = [{"label": each.label} for each in calculator.outputs]
    engine.call("label", calculator.name, json.dumps([inputs, outputs]))


def in_script(name: str, cases: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What the page makes of the cases of a calculator."""
    found = engine().call("answerAll", name, json.dumps(cases, allow_nan=False))
    return json.loads(str(found))  # type: ignore[no-any-return]


def each_in_script(work: str, cases: list[list[Any]]) -> list[Any]:
    """What a function of the page's script gives for each list of arguments."""
    return json.loads(str(engine().call("each", work, json.dumps(cases, allow_nan=False))))  # type: ignore[no-any-return]


def in_python(calculator: Calculator, case: dict[str, Any]) -> dict[str, Any]:
    """The same by the functions themselves."""
    values, read, metric = dict(case["values"]), {}, case["metric"]
    for name, text in case["texts"].items():
        item = calculator.input(name)
        assert item is not None
        try:
            values[name] = _read(item, text, metric)
            read[name] = {"value": values[name]}
        except Refused as refused:
            read[name] = {"input": refused.input, "message": refused.message}
    made: dict[str, Any] = {"read": read, "outcome": None, "shown": None, "sheet": None}
    try:
        answer = _run(calculator, values, metric)
    except Refused as refused:
        made["outcome"] = {"input": refused.input, "message": refused.message}
        return made
    made["outcome"] = {"answer": answer}
    made["shown"] = shown_lines(calculator.outputs, answer, metric)
    if case["draws"] and calculator.drawing is not None:
        made["sheet"] = calculator.drawing(filled(calculator.inputs, values), answer)
    return made


def _read(item: Input, given: Any, metric: bool) -> Any:
    if item.quantity != "rows":
        return read_one(item, given, item.name, item.label, metric)
    rows = split_rows(item, given, item.name, item.label) if isinstance(given, str) else given
    return read_rows(item, rows, item.name, item.label, metric)


def _run(calculator: Calculator, values: dict[str, Any], metric: bool) -> dict[str, Any]:
    if not metric:
        return run(calculator, values)
    complete = filled(calculator.inputs, values)
    keep_limits(calculator.inputs, complete, True)
    return with_cautions(calculator.inputs, complete, dict(calculator.function(**complete)), True)


def difference(ours: Any, theirs: Any, where: str = "") -> str:
    """The first place where two results are not the same, numbers to 1e-9; nothing where there is none."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        if ours.keys() != theirs.keys():
            return f"{where}: {sorted(ours)} and {sorted(theirs)}"
        pairs = [(f"{where}.{key}", ours[key], theirs[key]) for key in ours]
    elif isinstance(ours, list | tuple) and isinstance(theirs, list):
        if len(ours) != len(theirs):
            return f"{where}: {ours} and {theirs}"
        pairs = [(f"{where}[{at}]", one, other) for at, (one, other) in enumerate(zip(ours, theirs, strict=True))]
    else:
        return "" if _same(ours, theirs) else f"{where}: {ours!r} and {theirs!r}"
    return next((found for place, one, other in pairs if (found := difference(one, other, place))), "")


def _same(ours: Any, theirs: Any) -> bool:
    numbers = [isinstance(each, int | float) and not isinstance(each, bool) for each in (ours, theirs)]
    if all(numbers):
        return isclose(ours, theirs, rel_tol=1e-9, abs_tol=1e-9)
    return type(ours) is type(theirs) and bool(ours == theirs)
