"""The short form of a procedure for a day's sheet: what to tick, to heed, to measure, and this job's own numbers."""

from __future__ import annotations

from math import ceil
from typing import Any

from build_tools.book.calls import CallResult, departures
from build_tools.book.model.procedure import Procedure
from build_tools.book.model.step import Message, Step
from build_tools.book.model.table import Form
from build_tools.pages.helpers import NOTHING, Helpers, in_order_of
from build_tools.plan.plan import Plan
from build_tools.plan.task_figures import settled, table_here, worked
from calculators.run import shown
from calculators.writing import decimal

ROWS = 12
"""Rows of a list on a sheet; what is longer stands on the page."""


def sheet_steps(helpers: Helpers, plan: Plan, procedure: Procedure, tasks: list[str]) -> list[dict[str, Any]]:
    """The steps of a procedure for tasks of one day. ``tasks`` are all of that procedure."""
    return [
        {
            "step": step,
            "number": number,
            "messages": [*_guarding(procedure, step), *step.messages],
            "numbers": _numbers(helpers, plan, step, tasks),
            "tables": _tables(helpers, plan, step, tasks),
        }
        for number, step in enumerate(procedure.steps, 1)
    ]


def general_messages(procedure: Procedure) -> list[Message]:
    """The messages that guard no single step."""
    known = {step.id for step in procedure.steps}
    return [message for message in procedure.safety if message.guards not in known]


def _guarding(procedure: Procedure, step: Step) -> list[Message]:
    return [message for message in procedure.safety if message.guards == step.id]


def _numbers(helpers: Helpers, plan: Plan, step: Step, tasks: list[str]) -> list[dict[str, Any]]:
    """The calculator of a step for each task; the same answer for several stands once, and so without a letter."""
    form = step.calculator
    if form is None:
        return []
    made: list[dict[str, Any]] = []
    for index, task in enumerate(tasks):
        called = worked(plan, task, form)
        if called is not None and called.answer is not None:
            answer = _answer(helpers, form, called)
            same = next((one for one in made if {**one, "of": []} == {**answer, "of": []}), None)
            (same or answer)["of"].append(index)
            if same is None:
                made.append(answer)
    for one in made:
        if len(one["of"]) == len(tasks):
            one["of"] = []
    if made:
        return made
    return [{"title": helpers.title("calculator", form.calculator), "of": [], "open": True}]


def _answer(helpers: Helpers, form: Form, called: CallResult) -> dict[str, Any]:
    calculator, answer = called.calculator, called.answer or {}
    texts = shown(calculator, answer)
    lines, lists = [], []
    for output in in_order_of(calculator.outputs, form.show):
        text = texts[output.name]
        if output.quantity == "rows":
            rows = [[row[column.name] or NOTHING for column in output.columns] for row in text]
            heads = [column.label for column in output.columns]
            if rows:
                lists.append({"label": output.label, "heads": heads, "rows": rows[:ROWS], "more": len(rows) - ROWS})
        elif text and not (output.quantity == "count" and answer[output.name] == 0):
            lines.append((output.label, text))
    return {
        "title": calculator.title,
        "of": [],
        "open": False,
        "given": list(departures(helpers.context.book, called)),
        "lines": lines,
        "lists": lists,
        "cautions": list(answer.get("cautions", [])),
    }


def _tables(helpers: Helpers, plan: Plan, step: Step, tasks: list[str]) -> list[dict[str, Any]]:
    """The table of a step, once for all tasks that have the same; none where the numbers answer already."""
    if step.table is None:
        return []
    made: list[dict[str, Any]] = []
    for task in tasks:
        if settled(plan, task, step.calculator, step.table):
            continue
        table = helpers.table(table_here(plan, task, step.table))
        if table["rows"] and table not in made:
            made.append(table)
    return made


def line_count(made: list[dict[str, Any]], tasks: list[str]) -> float:
    """About how many printed lines the steps of a method take, to see whether a day is a full one."""
    total = 7.0
    for each in made:
        step = each["step"]
        total += 1.3 + 3.1 * len(each["messages"]) + 1.4 * len(step.measurements) + (3.5 if step.hold else 0)
        for one in each["numbers"]:
            rows = [] if one["open"] else [len(each["rows"]) + 2 for each in one["lists"]]
            total += 1.2 if one["open"] else 1 + 0.4 * (len(one["given"]) + len(one["lines"])) + sum(rows)
        total += sum(len(table["rows"]) + 3.5 for table in each["tables"])
    return total + 0.6 * len(tasks)


def materials(plan: Plan, tasks: list[str]) -> list[dict[str, Any]]:
    """What the tasks use, summed by material and rounded up to what can be counted out."""
    found: dict[str, dict[str, Any]] = {}
    for task in tasks:
        for line in plan.prepared.take_offs[task].materials:
            one = found.setdefault(line.material, {"id": line.material, "number": 0.0})
            one["number"] += line.number
    for one in found.values():
        unit = plan.context.book.materials[one["id"]].item.counted_in
        one["text"] = f"{counted(one['number'])} {unit.removeprefix('each')}".strip()
    return [one for one in found.values() if one["number"]]


def counted(number: float) -> str:
    """A quantity rounded up: to the tenth below ten, to the whole above.

    >>> counted(4.3097), counted(3.0), counted(42.01)
    ('4.4', '3', '43')
    """
    step = 10 if number < 10 else 1
    return decimal(ceil(round(number * step, 6)) / step, 1)
