"""Who of a job's people may do which task."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations

from build_tools.book.book import Book, Entry
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.model.job import Hand, Job, Task

ROLES = {
    "helper": {"owner", "lead", "helper", "friend"},
    "lead": {"owner", "lead", "friend"},
    "licensed person": {"friend"},
}
"""Who a procedure is for, and the roles of those who may lead it."""


def hands_of(job: Job) -> list[Hand]:
    """The people of a job with their working days: where nothing is said for one of them, those of the job."""
    return [
        hand if "days" in hand.model_fields_set else hand.model_copy(update={"days": job.days}) for hand in job.people
    ]


@dataclass(frozen=True, slots=True)
class EligibleCrew:
    """How many people a task takes, who may be among them, and who may lead it: at least one of these is there."""

    size: int
    eligible: list[str]
    leads: list[str]


def eligible_crew(book: Book, hands: list[Hand], task: Task) -> EligibleCrew:
    """Who may do a task.

    Who leads is trained in the procedure and in a role that it is for. The others may be anybody of the crew; a
    specialist friend comes only for what he is trained in.
    """
    procedure = book.procedures[task.procedure].item
    size = task.people or procedure.labour.people
    eligible, leads = [], []
    for hand in hands:
        if task.who and hand.person not in task.who:
            continue
        person = book.people[hand.person].item
        trained = task.procedure in person.trained_in or task.procedure in hand.skills
        if trained and person.role in ROLES[procedure.who]:
            leads.append(hand.person)
        if person.role != "friend" or trained:
            eligible.append(hand.person)
    return EligibleCrew(size, leads if size == 1 else eligible, leads)


def understaffed_tasks(book: Book, entry: Entry[Job]) -> Iterator[Diagnostic]:
    """Tasks for which the job has not the people."""
    job = entry.item
    hands = hands_of(job)
    for id, task in job.tasks.items():
        if task.done:
            continue
        found = eligible_crew(book, hands, task)
        place = "people" if task.people else "who" if task.who else "procedure"
        if not found.leads:
            who = book.procedures[task.procedure].item.who
            yield entry.error(
                ("tasks", id, place),
                f"nobody on this job may do '{task.procedure}': it wants a {who} who is trained in it",
                "add somebody to 'people', or the procedure to the 'skills' of one who has learned it",
            )
        elif len(found.eligible) < found.size:
            yield entry.error(
                ("tasks", id, place),
                f"'{task.procedure}' takes {found.size} people at once, and this job has {len(found.eligible)} for it",
                "add somebody to 'people', or write 'people' at the task where fewer do",
            )
        elif not any(common_days(team) for team in teams(found, hands)):
            yield entry.error(
                ("tasks", id, place),
                f"'{task.procedure}' takes {found.size} people at once, and those who may do it never work on one day",
                "give them a day of the week in common, or name somebody else",
            )


def teams(found: EligibleCrew, hands: list[Hand]) -> Iterator[tuple[Hand, ...]]:
    """Every team that may do a task."""
    for team in combinations([hand for hand in hands if hand.person in found.eligible], found.size):
        if any(hand.person in found.leads for hand in team):
            yield team


def common_days(team: Iterable[Hand]) -> set[str]:
    """The days of the week on which all of a team work."""
    return set.intersection(*({*map(str, hand.days)} for hand in team))
