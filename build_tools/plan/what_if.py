"""The same job done another way: the variants that its file names, and what would bring in a late end."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from build_tools.book.book import Entry
from build_tools.book.checks.context import Context
from build_tools.book.model.base import Prose, Text
from build_tools.book.model.job import Hand, Job, Variant, Visit
from build_tools.book.model.reference import Person
from build_tools.plan.crew import hands_of
from build_tools.plan.plan import Plan
from build_tools.plan.standards import with_people

ONE_MORE = "one-more-helper"
"""The id of the helper who is tried and not there."""


@dataclass(frozen=True, slots=True)
class VariantPlan:
    """A variant with its plan, or with the reason why there is none."""

    id: str
    title: str
    why: Text
    plan: Plan | None
    trouble: str = ""


@dataclass(frozen=True, slots=True)
class Acceleration:
    """Something that might bring in the end: what, and when the job would end then."""

    what: str
    plan: Plan | None

    def days_sooner(self, than: Plan) -> int:
        """Days by the calendar by which the job would end sooner."""
        return (than.end.date() - self.plan.end.date()).days if self.plan else 0


def varied(entry: Entry[Job], variant: Variant) -> Entry[Job]:
    """The job as a variant has it."""
    job = entry.item
    tasks = dict(job.tasks)
    for change in variant.tasks:
        if change.task in tasks:
            given = {
                name: getattr(change, name)
                for name in ("after", "people", "not_before")
                if getattr(change, name) is not None
            }
            tasks[change.task] = tasks[change.task].model_copy(update=given)
    there = [hand for hand in job.people if hand.person not in variant.without] + variant.more_people
    more = variant.more_days
    people = [
        hand.model_copy(update={"days": list(dict.fromkeys([*hand.days, *more]))})
        for hand in hands_of(job.model_copy(update={"people": there}))
    ]
    days = list(dict.fromkeys([*job.days, *more]))
    return replace(entry, item=job.model_copy(update={"tasks": tasks, "people": people, "days": days}))


def accelerations(context: Context, entry: Entry[Job]) -> Iterator[tuple[str, Entry[Job], Context]]:
    """What might let a job end sooner: in words, the job so changed, and the book for it."""
    job = entry.item
    trained = sorted({id for hand in job.people for id in context.book.people[hand.person].item.trained_in})
    helper = Person(name="One more helper", role="helper", trained_in=trained)
    people = [*job.people, Hand(person=ONE_MORE, days=job.days)]
    more = replace(entry, item=job.model_copy(update={"people": people}))
    yield "one helper more, trained in what the crew does", more, with_people(context, {ONE_MORE: helper})
    if "saturday" not in job.days:
        yield (
            "work on Saturdays",
            varied(entry, Variant(title=Text("Saturdays"), why=Prose("tried"), more_days=["saturday"])),
            context,
        )
    sooner = [
        Visit(inspection=id, notice="0 h", why=Prose("tried"))
        for id, inspection in context.book.inspections.items()
        if inspection.item.by == "outside"
    ]
    yield (
        "inspections called ahead, so that nobody waits",
        replace(entry, item=job.model_copy(update={"visits": sooner})),
        context,
    )
