"""The sizes of spaces and openings, and what tasks take of them (``space:kitchen.length``, ``opening: front``)."""

from __future__ import annotations

import re
from collections.abc import Collection

from build_tools.book.model.base import Row, Written
from build_tools.book.model.job import Job, Opening, Space
from calculators.declaration import Calculator
from calculators.polygons import perimeter_in
from calculators.reading import Unreadable, read
from calculators.rooms import plan_text
from calculators.shapes import plan_area_sq_ft, read_plan
from calculators.writing_units import write

REFERENCE = re.compile(r"space:([a-z0-9]+(?:-[a-z0-9]+)*)(?:\.([a-z0-9]+(?:[-_][a-z0-9]+)*))?")


class UnknownMeasure(Exception):
    """A reference to a space, a measure or an opening that the job does not have; ``known`` are those that it has."""

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
        rooms = plan_text([{"name": space.title.inside(), "length": space.length, "width": space.width}])
    if rooms:
        plan = read_plan(rooms)
        around = sum(perimeter_in(shape["points"]) for shape in plan if not shape["less"])
        found["rooms"] = rooms
        found["area"] = write(plan_area_sq_ft(plan), "area", "sq ft", 0.1, "nearest")
        found["perimeter"] = write(around, "length", "ft", 0.1, "nearest")
    return found | space.measures


def substitute_measures(written: Written, job: Job, space: str, columns: Collection[str] = ()) -> Written:
    """A text, or rows of texts, with each reference to a measure replaced by that measure.

    ``space`` is the task's own space. A row with ``opening`` takes of that opening what fits the ``columns`` of its
    list; what the row says itself stands. Raises :class:`UnknownMeasure`.
    """
    if isinstance(written, str):
        return REFERENCE.sub(lambda found: _measure(found, job, space), written)
    return [
        {name: REFERENCE.sub(lambda found: _measure(found, job, space), text) for name, text in row.items()}
        for row in (_with_opening(row, job, columns) for row in written)
    ]


def _with_opening(row: Row, job: Job, columns: Collection[str]) -> Row:
    if "opening" not in row or "opening" in columns:
        return row
    name = row["opening"]
    if name not in job.openings:
        raise UnknownMeasure(f"there is no opening '{name}'", name, list(job.openings))
    own = {column: text for column, text in row.items() if column != "opening"}
    return {column: text for column, text in of_opening(job.openings[name]).items() if column in columns} | own


def of_opening(opening: Opening) -> dict[str, str]:
    """What an opening says, by the columns that the calculators' lists of openings have.

    >>> of_opening(Opening(title="Bath door", space="bath", lock="bathroom", width="30 in"))
    {'name': 'Bath door', 'kind': 'door', 'count': '1', 'use': 'bathroom', 'width': '30 in'}
    """
    found = {
        "name": opening.title.inside(),
        "kind": opening.kind,
        "count": str(opening.count),
        "use": opening.lock,
        "group": opening.key_group,
        "width": opening.width,
        "height": opening.height,
    }
    return {column: text for column, text in found.items() if text is not None}


def inputs_of(job: Job, task: str, calculator: Calculator) -> dict[str, Written]:
    """What a task gives a calculator, with what it takes of spaces and openings put in.

    Raises :class:`UnknownMeasure`.
    """
    given = job.tasks[task].inputs.get(calculator.name, {})
    return {
        name: substitute_measures(written, job, job.tasks[task].space, columns_of(calculator, name))
        for name, written in given.items()
    }


def columns_of(calculator: Calculator, name: str) -> list[str]:
    """The columns of an input that is a list; none of another one."""
    item = calculator.input(name)
    return [column.name for column in item.columns] if item else []


def _measure(found: re.Match[str], job: Job, own: str) -> str:
    first, second = found.groups()
    name, measure = (first, second) if second else (own, first)
    space = job.spaces.get(name)
    if space is None:
        raise UnknownMeasure(f"there is no space '{name}'", name, list(job.spaces))
    known = known_sizes(space)
    if measure not in known:
        raise UnknownMeasure(f"the space '{name}' has no '{measure}'", measure, list(known))
    return known[measure]


def known_sizes(space: Space) -> dict[str, str]:
    """The same as :func:`sizes`; of a space that cannot be read those that are written out."""
    try:
        return sizes(space)
    except Unreadable:
        return space.measures
