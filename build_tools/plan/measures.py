"""The sizes of the spaces of a job, and the texts of a task that take them (``space:kitchen.length``)."""

from __future__ import annotations

import re

from build_tools.book.model.base import Written
from build_tools.book.model.job import Job, Space
from calculators.polygons import perimeter_in
from calculators.reading import Unreadable, read
from calculators.shapes import plan_area_sq_ft, read_plan
from calculators.writing import write

REFERENCE = re.compile(r"space:([a-z0-9]+(?:-[a-z0-9]+)*)(?:\.([a-z0-9]+(?:[-_][a-z0-9]+)*))?")


class Unknown(Exception):
    """A reference to a space or a measure that the job does not have; ``known`` are those that it has."""

    def __init__(self, message: str, name: str, known: list[str]) -> None:
        super().__init__(message)
        self.message, self.name, self.known = message, name, known


def sizes(space: Space) -> dict[str, str]:
    """Every measure of a space by its name, as people write it.

    Raises Unreadable where a length or the rooms cannot be read.

    >>> made = sizes(Space(title="Kitchen", length="12 ft", width="10 ft 6 in"))
    >>> made["area"], made["perimeter"], made["rooms"]
    ('126 sq ft', '45 ft', 'Kitchen: 12 ft x 10 ft 6 in')
    """
    found: dict[str, str] = {}
    if space.length:
        found["length"] = space.length
    if space.width:
        found["width"] = space.width
    rooms = space.rooms
    if rooms is None and space.length and space.width:
        for side in (space.length, space.width):
            read(side, "length", "ft")
        rooms = f"{space.title.inside()}: {space.length} x {space.width}"
    if rooms:
        plan = read_plan(rooms)
        around = sum(perimeter_in(shape["points"]) for shape in plan if not shape["less"])
        found["rooms"] = rooms
        found["area"] = write(plan_area_sq_ft(plan), "area", "sq ft", 0.1, "nearest")
        found["perimeter"] = write(around, "length", "ft", 0.1, "nearest")
    return found | space.measures


def put_in(written: Written, job: Job, space: str) -> Written:
    """A text, or rows of texts, with each reference to a measure replaced by that measure.

    ``space`` is the task's own space. Raises :class:`Unknown`.
    """
    if isinstance(written, str):
        return REFERENCE.sub(lambda found: _measure(found, job, space), written)
    return [
        {name: REFERENCE.sub(lambda found: _measure(found, job, space), text) for name, text in row.items()}
        for row in written
    ]


def inputs_of(job: Job, task: str, calculator: str) -> dict[str, Written]:
    """What a task gives a calculator, with the sizes of spaces put in. Raises :class:`Unknown`."""
    one = job.tasks[task]
    return {name: put_in(written, job, one.space) for name, written in one.inputs.get(calculator, {}).items()}


def _measure(found: re.Match[str], job: Job, own: str) -> str:
    first, second = found.groups()
    name, measure = (first, second) if second else (own, first)
    space = job.spaces.get(name)
    if space is None:
        raise Unknown(f"there is no space '{name}'", name, list(job.spaces))
    known = known_sizes(space)
    if measure not in known:
        raise Unknown(f"the space '{name}' has no '{measure}'", measure, list(known))
    return known[measure]


def known_sizes(space: Space) -> dict[str, str]:
    """The same as :func:`sizes`; of a space that cannot be read those that are written out."""
    try:
        return sizes(space)
    except Unreadable:
        return space.measures
