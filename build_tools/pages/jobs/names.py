"""How the pages of a job name its tasks and places."""

from __future__ import annotations

from build_tools.book.model.job import Job
from build_tools.pages.helpers import Helpers
from build_tools.plan.plan import Plan

NTH = {1: "nth_1", 2: "nth_2", 3: "nth_3"}


def place(helpers: Helpers, job: Job, task: str) -> str:
    """Where a task is done: its opening or its space, and the dwelling where the job has several."""
    one = job.tasks[task]
    if one.space not in job.spaces:
        return helpers.say(job.dwellings[one.space].title)
    space = job.spaces[one.space]
    names = [helpers.say(space.title)]
    if one.opening:
        names.insert(0, helpers.say(job.openings[one.opening].title))
    if space.dwelling and len(job.dwellings) > 1:
        names.append(helpers.say(job.dwellings[space.dwelling].title))
    return ", ".join(names)


def task_name(helpers: Helpers, job: Job, task: str) -> str:
    """A task by its procedure and its place: ``Tile floor (Bath)``."""
    return f"{helpers.title('procedure', job.tasks[task].procedure)} ({place(helpers, job, task)})"


def trip_name(helpers: Helpers, plan: Plan, task: str, number: int, say: dict[str, str]) -> str:
    """What a foreman calls a trip: ``grout``, ``2nd coat``; empty where the task is done in one."""
    trip = plan.prepared.trips[task][number]
    if trip.title is None:
        return ""
    title = helpers.say(trip.title)
    return say["trip_nth"].format(nth=ordinal(trip.nth, say), title=title) if trip.nth else title


def ordinal(n: int, say: dict[str, str]) -> str:
    """A number in its order, as the language writes it.

    >>> from build_tools.pages.words import words
    >>> [ordinal(n, words()) for n in (1, 2, 3, 4, 11, 12, 13, 21, 102)]
    ['1st', '2nd', '3rd', '4th', '11th', '12th', '13th', '21st', '102nd']
    """
    last = 0 if n // 10 % 10 == 1 else n % 10
    return say[NTH.get(last, "nth")].format(n=n)


def task_and_trip(helpers: Helpers, plan: Plan, task: str, number: int, say: dict[str, str]) -> str:
    """A task by its procedure, its place and its trip: ``Finish a floor (Room), 2nd coat``."""
    trip = trip_name(helpers, plan, task, number, say)
    name = task_name(helpers, plan.job, task)
    return say["task_trip"].format(task=name, trip=trip) if trip else name
