"""Which task of a job comes after which: the book's ``before`` between tasks, by how far each link reaches."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter
from itertools import pairwise

from build_tools.book.book import Book, Entry
from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.model.job import Job
from build_tools.book.model.procedure import Before, Where


@dataclass(frozen=True, slots=True)
class TaskPrecedence:
    """Task ``successor`` comes after task ``predecessor``. ``asked``: the job says so itself, not the book."""

    predecessor: str
    successor: str
    asked: bool = False


def dwelling_of(job: Job, space: str) -> str:
    """The dwelling that a space belongs to; a dwelling named as a space is its own. Empty where there is none."""
    if space in job.spaces:
        return job.spaces[space].dwelling or ""
    return space if space in job.dwellings else ""


def closed_places(job: Job, space: str, where: Where) -> list[str]:
    """The places that a closing in ``space`` reaches, and those that are reached only through them.

    A task whose space is a dwelling is in all of its spaces.
    """
    places = [*job.spaces, *job.dwellings]
    if where == "whole job":
        shut = set(places)
    elif where == "same dwelling" or space not in job.spaces:
        dwelling = dwelling_of(job, space)
        shut = {name for name in places if dwelling_of(job, name) == dwelling} | {space}
    else:
        shut = {space}
    while more := {n for n, each in job.spaces.items() if n not in shut and set(each.reached_through) & shut}:
        shut |= more
    return sorted(shut)


def precedences(book: Book, job: Job) -> list[TaskPrecedence]:
    """Every link between tasks of the job, once each."""
    by_procedure: dict[str, list[str]] = defaultdict(list)
    for id, task in job.tasks.items():
        by_procedure[task.procedure].append(id)
    found: dict[tuple[str, str], TaskPrecedence] = {}
    for id, task in job.tasks.items():
        for line in book.procedures[task.procedure].item.before:
            for other in by_procedure.get(line.procedure or "", []):
                if other != id and reaches(job, line, task.space, job.tasks[other].space):
                    found[other, id] = TaskPrecedence(other, id)
        for other in task.after:
            if other in job.tasks:
                found.setdefault((other, id), TaskPrecedence(other, id, asked=True))
    return list(found.values())


def reaches(job: Job, line: Before, here: str, there: str) -> bool:
    """Whether a task in ``there`` counts for the ``before`` of a task in ``here``."""
    match line.where:
        case "whole job":
            return True
        case "same dwelling":
            one, other = dwelling_of(job, here), dwelling_of(job, there)
            return one == other or not one or not other
        case _:
            return here == there


def missing_predecessors(book: Book, entry: Entry[Job]) -> Iterator[Diagnostic]:
    """What a procedure must have before it and the job has neither as a task nor as done."""
    job = entry.item
    for id, task in job.tasks.items():
        for line in book.procedures[task.procedure].item.before:
            if line.procedure is None or line.needed != "always" or task.done:
                continue
            there = any(
                other.procedure == line.procedure and reaches(job, line, task.space, other.space)
                for other in job.tasks.values()
            )
            if not there and not _done(job, line, task.space):
                where = {"same space": f" in '{task.space}'", "same dwelling": " in its dwelling"}.get(line.where, "")
                yield entry.error(
                    ("tasks", id, "procedure"),
                    f"'{task.procedure}' comes after '{line.procedure}', which this job does not have{where}",
                    "add the task, or name it in 'already_done' where it is finished",
                )


def _done(job: Job, line: Before, here: str) -> bool:
    return any(
        done.procedure == line.procedure
        and (done.space in (None, here) or line.where != "same space")
        and (done.dwelling in (None, dwelling_of(job, here)) or line.where == "whole job")
        for done in job.already_done
    )


def unknown_tasks(entry: Entry[Job]) -> Iterator[Diagnostic]:
    """Tasks that an ``after`` names and the job does not have."""
    tasks = entry.item.tasks
    for id, task in tasks.items():
        for index, other in enumerate(task.after):
            if other == id:
                yield entry.error(("tasks", id, "after", index), "it cannot come after itself", "leave it out")
            elif other not in tasks:
                yield entry.error(
                    ("tasks", id, "after", index), f"there is no task '{other}'", did_you_mean(other, tasks)
                )


def cycles(entry: Entry[Job], found: list[TaskPrecedence]) -> Iterator[Diagnostic]:
    """The first circle of tasks, named at one that the job asked for itself where there is one."""
    graph: dict[str, list[str]] = {id: [] for id in entry.item.tasks}
    for link in found:
        graph[link.successor].append(link.predecessor)
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as cycle:
        around: list[str] = list(reversed(cycle.args[1]))
        asked = {(link.successor, link.predecessor) for link in found if link.asked}
        pairs = list(pairwise(around))
        later, earlier = next((pair for pair in pairs if pair in asked), pairs[0])
        at = ("tasks", later, "after") if (later, earlier) in asked else ("tasks", later)
        yield entry.error(
            at,
            "these come before each other in a circle: " + " after ".join(f"'{id}'" for id in around),
            "leave out one of the 'after'",
        )
