"""How the pages of a job name its tasks and places."""

from __future__ import annotations

from build_tools.book.model.job import Job
from build_tools.pages.helpers import Helpers


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
