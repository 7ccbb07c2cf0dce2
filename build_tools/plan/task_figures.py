"""The calculators and tables of a procedure's steps with the figures of one task: this job's own numbers."""

from __future__ import annotations

from build_tools.book.calls import CallResult
from build_tools.book.model.base import Written
from build_tools.book.model.table import Axis, Form, Table
from build_tools.plan.example import settings_of
from build_tools.plan.measures import inputs_of
from build_tools.plan.plan import Plan


def worked(plan: Plan, task: str, form: Form) -> CallResult | None:
    """A step's calculator with the inputs of a task and the settings of the book.

    None where the book gives an example and the task gives nothing: those are not the numbers of this job.
    """
    given = inputs_of(plan.job, task, plan.context.calculators[form.calculator])
    if form.inputs and not given:
        return None
    settings = settings_of(plan.context.book, plan.context.calculators[form.calculator], form.inputs)
    return plan.context.call_with(form.calculator, {**settings, **given})


def table_here(plan: Plan, task: str, table: Table) -> Table:
    """A step's table for a task: what the task gives is fixed, and an axis that it gives shrinks to that one line."""
    given = inputs_of(plan.job, task, plan.context.calculators[table.calculator])
    fixed: dict[str, Written] = {**table.fixed, **given}
    axes = {}
    for side in ("down", "across"):
        axis: Axis | None = getattr(table, side)
        if axis is not None:
            text = fixed.pop(axis.input, None)
            axes[side] = Axis(input=axis.input, values=[text], ours=axis.ours) if isinstance(text, str) else axis
    return table.model_copy(update={"fixed": fixed, **axes})


def settled(plan: Plan, task: str, form: Form | None, table: Table) -> bool:
    """Whether a step's calculator answers for the task what its table would be read for."""
    return form is not None and form.calculator == table.calculator and worked(plan, task, form) is not None
