"""What the plans of a book are made from, so that a preview plans again only after an edit that a plan can see.

Most edits are of the words of a step. A plan reads who works, how long, with what and what holds a task up; it never
reads a sentence of a step. So those alone are left out, and any other edit of the book has its jobs planned again.
"""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import replace
from datetime import date
from functools import partial
from typing import Any

from pydantic import BaseModel

from build_tools.book.book import ProcedureEntry
from build_tools.book.checks.context import Context
from build_tools.book.model.base import Text
from build_tools.book.model.procedure import Procedure
from build_tools.plan.standards import context_of
from build_tools.plan.whole import Whole


def read_by_plans(context: Context, today: date) -> Hashable:
    """Equal for two books whose jobs have the same plans, problems included."""
    read: list[object] = [today, context.book.language]
    for scheme, entry in context.book.entries():
        if isinstance(entry, ProcedureEntry):
            unworded = context.memo.of("unworded", entry.item, (), partial(_unworded, entry.item))
            read.append((entry.id, entry.trade, unworded))
        elif scheme == "job":
            read.append(entry)  # with its lines, which its problems name
        else:
            read.append((scheme, entry.id, entry.item))
    return tuple(read)


def _unworded(procedure: Procedure) -> object:
    """A procedure without the words of its steps."""
    return procedure.model_copy(update={"steps": []}), _bare(procedure.steps)


def _bare(part: Any) -> object:
    """A part of a step without its texts."""
    if isinstance(part, Text):
        return None
    if isinstance(part, BaseModel):
        return type(part), [_bare(value) for _, value in part]
    return [_bare(each) for each in part] if isinstance(part, list) else part


def as_written_now(jobs: dict[str, Whole], context: Context) -> dict[str, Whole]:
    """Plans of before with the words of the book as it is now, which their pages show."""
    return {id: _as_written_now(whole, context) for id, whole in jobs.items()}


def _as_written_now(whole: Whole, context: Context) -> Whole:
    here = context_of(context, whole.plan.entry)
    others = [replace(one, plan=one.plan and replace(one.plan, context=here)) for one in whole.variants]
    return replace(whole, plan=replace(whole.plan, context=here), variants=others)
