"""The book as it holds on one job: with the crew standards that this job sets differently."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from build_tools.book.book import Book, Entry
from build_tools.book.checks.context import Context
from build_tools.book.memo import Memo
from build_tools.book.model.base import Text
from build_tools.book.model.job import Job
from build_tools.book.model.reference import Person, Value


@dataclass(frozen=True, slots=True)
class Changed:
    """A standard of the crew, and what it is on this job."""

    value: str
    usual: str
    here: str
    why: Text


def changed(book: Book, job: Job) -> list[Changed]:
    """The standards that a job sets differently."""
    return [
        Changed(each.value, book.values[each.value].item.quantity, each.is_, each.why)
        for each in job.standards
        if each.value in book.values
    ]


def context_of(context: Context, entry: Entry[Job]) -> Context:
    """The context for one job: the same where the job changes nothing."""
    job = entry.item
    if not job.standards:
        return context
    values: dict[str, Entry[Value]] = dict(context.book.values)
    for each in job.standards:
        if each.value in values:
            kept = values[each.value]
            values[each.value] = replace(kept, item=kept.item.model_copy(update={"quantity": each.is_}))
    memo = context.memo.named(f"job {entry.id}", job.standards, Memo)  # a preview's next build finds what was made
    return Context.of(replace(context.book, values=values, _standards=None), memo, context.calculators)


def with_people(context: Context, more: Mapping[str, Person]) -> Context:
    """The same book with more people in the crew, to try what they would bring."""
    like = next(iter(context.book.people.values()))
    people = {**context.book.people, **{id: Entry(id, person, like.document, like.at) for id, person in more.items()}}
    return replace(context, book=replace(context.book, people=people, _standards=None))
