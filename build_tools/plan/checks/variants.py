"""A variant of a job names what is there, and is a job that can be planned."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.model.job import Job, Variant
from build_tools.plan.crew import understaffed_tasks
from build_tools.plan.precedence import cycles, precedences
from build_tools.plan.what_if import varied


def of_variants(context: Context, entry: Entry[Job]) -> Iterator[Diagnostic]:
    """The mistakes of every variant."""
    for name, variant in entry.item.variants.items():
        found = list(_names(entry, name, variant))
        yield from found or _fits(context, entry, name, variant)


def _names(entry: Entry[Job], name: str, variant: Variant) -> Iterator[Diagnostic]:
    job = entry.item
    people = [hand.person for hand in job.people]
    for index, change in enumerate(variant.tasks):
        at = ("variants", name, "tasks", index)
        if change.task not in job.tasks:
            message = f"there is no task '{change.task}' in this job"
            yield entry.error((*at, "task"), message, did_you_mean(change.task, job.tasks))
        for number, other in enumerate(change.after or []):
            if other not in job.tasks:
                message = f"there is no task '{other}' in this job"
                yield entry.error((*at, "after", number), message, did_you_mean(other, job.tasks))
    for index, person in enumerate(variant.without):
        if person not in people:
            message = f"there is no person '{person}' in this job"
            yield entry.error(("variants", name, "without", index), message, did_you_mean(person, people))
    for index, hand in enumerate(variant.more_people):
        if hand.person in people and hand.person not in variant.without:
            yield entry.error(("variants", name, "more_people", index), f"'{hand.person}' is on this job already")


def _fits(context: Context, entry: Entry[Job], name: str, variant: Variant) -> Iterator[Diagnostic]:
    """The job as the variant has it has the people and makes no circle."""
    other = varied(entry, variant)
    line, column = entry.document.place(("variants", name, ""))
    for diagnostic in (
        *cycles(other, precedences(context.book, other.item)),
        *understaffed_tasks(context.book, other),
    ):
        yield replace(diagnostic, line=line, column=column, message=f"in the variant '{name}': {diagnostic.message}")
