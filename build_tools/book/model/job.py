"""A job: a file ``procedures/jobs/<job>.yaml``. One or several dwellings being built, until the keys are handed over.

A room's size is typed once, in its space. A task takes it from there: ``space:length`` is the length of the task's own
space, ``space:kitchen.length`` that of the kitchen; either may stand inside a longer text.

Money and private notes are for the owner: each part lists such fields under ``PRIVATE``, and a build for the crew
leaves them out before anything is made from the job. An amount of money is a number and a word: ``52 dollars``.
"""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from pydantic import BeforeValidator, Field, model_validator

from build_tools.book.model.base import (
    IDENTIFIER,
    CalculatorId,
    Count,
    Date,
    Few,
    InspectionId,
    MaterialId,
    Measure,
    Part,
    PersonId,
    ProcedureId,
    Prose,
    Text,
    ToolId,
    ValueId,
    Written,
)
from calculators.rooms import plan_text

Name = Annotated[str, Field(pattern=IDENTIFIER)]
"""A name that is known inside the job alone: a dwelling, a space, an opening, a task, a variant."""

Day = Literal["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]
WORKING_WEEK: list[Day] = ["monday", "tuesday", "wednesday", "thursday", "friday"]


class Different(Part):
    """A crew standard that is another one on this job, and why."""

    value: ValueId
    is_: Annotated[Measure, Field(alias="is")]
    why: Prose


class Dwelling(Part):
    """A house or a flat with a front door of its own."""

    title: Text


Rooms = Annotated[
    str,
    BeforeValidator(
        lambda given: plan_text(given) if isinstance(given, list) else given,
        json_schema_input_type=str | list[dict[str, Measure]],
    ),
]
"""A plan, or a list of rooms with their sizes, which is made one."""


class Space(Part):
    """A room, or a part of the ground outside.

    ``length`` and ``width`` give ``area``, ``perimeter`` and ``rooms`` too; ``rooms`` written out is for a floor that
    is no plain rectangle, as a plan or as a list of rooms with their sizes. ``measures`` holds whatever else its tasks
    take. ``reached_through`` names the spaces that lie on the only way in. ``crews`` is how many crews find room in it.
    """

    title: Text
    dwelling: Name | None = None
    length: Measure | None = None
    width: Measure | None = None
    rooms: Rooms | None = None
    measures: dict[str, Measure] = {}
    holds: list[Text] = []
    reached_through: list[Name] = []
    crews: Few = 1


class Opening(Part):
    """A door or a window, or ``count`` alike, and the space that it belongs to.

    ``lock`` is the use of the door, by which its lock is chosen; one key opens locks with the same ``key_group``. A row
    of a task's list takes all of it with ``opening: NAME``.
    """

    title: Text
    space: Name
    kind: Literal["door", "window"] = "door"
    lock: str | None = None
    key_group: str | None = None
    width: Measure | None = None
    height: Measure | None = None
    count: Count = 1


class Hand(Part):
    """Somebody who works on this job. ``skills`` are procedures beyond those that he is trained in already.

    ``days`` are his working days; where nothing is said, those of the job. ``rate`` is what an hour of his costs.
    """

    PRIVATE: ClassVar[tuple[str, ...]] = ("rate", "note")

    person: PersonId
    days: Annotated[list[Day], Field(min_length=1)] = WORKING_WEEK
    off: list[Date] = []
    skills: list[ProcedureId] = []
    rate: Measure | None = None
    note: Prose | None = None


class Done(Part):
    """What is finished already and is no task of this job. ``space`` or ``dwelling`` says where; none, everywhere."""

    procedure: ProcedureId
    space: Name | None = None
    dwelling: Name | None = None
    why: Prose | None = None


class Price(Part):
    """What a material or a rented tool costs here, and how long it takes to come.

    ``price`` is that of ``per`` (``1 cu yd``); where nothing is said, of a material as it is sold, and of a tool's day.
    """

    PRIVATE: ClassVar[tuple[str, ...]] = ("price", "per")

    material: MaterialId | None = None
    tool: ToolId | None = None
    price: Measure | None = None
    per: Measure | None = None
    lead_time: Measure | None = None

    @model_validator(mode="after")
    def _one_of_them(self) -> Price:
        if (self.material is None) == (self.tool is None):
            raise ValueError("a price is that of either a 'material' or a rented 'tool'")
        return self


class Visit(Part):
    """An inspection of this job that is called another way than the book says."""

    inspection: InspectionId
    notice: Measure
    why: Prose


class Task(Part):
    """A procedure to be done somewhere: how many or how much, and what its calculators take.

    ``quantity`` is in the unit that the hours of the procedure are counted for (``126 sq ft``), ``count`` is how many.
    ``inputs`` are by calculator: those of one of them, but a list (openings) is the list of all. ``serves`` says how
    much the whole task has of what a material goes by (``doorways: '2'``); what it leaves out is the measure of that
    name of its space. ``after`` names tasks of the job that come first beside those that the book says. ``done`` is the
    day on which it was finished; ``started`` the day on which it was begun, with ``left`` still to do.
    """

    procedure: ProcedureId
    space: Name
    opening: Name | None = None
    count: Count = 1
    quantity: Measure | None = None
    inputs: dict[CalculatorId, dict[str, Written]] = {}
    serves: dict[Name, Measure] = {}
    people: Few | None = None
    hours: Measure | None = None
    who: list[PersonId] = []
    after: list[Name] = []
    not_before: Date | None = None
    done: Date | None = None
    started: Date | None = None
    left: Measure | None = None
    note: Prose | None = None


class Change(Part):
    """What a variant changes in one task."""

    task: Name
    after: list[Name] | None = None
    people: Few | None = None
    not_before: Date | None = None


class Variant(Part):
    """The same job done another way, to be laid beside the plan."""

    title: Text
    why: Prose
    tasks: list[Change] = []
    more_people: list[Hand] = []
    more_days: list[Day] = []
    without: list[PersonId] = []


class Money(Part):
    """What the job may cost. ``labour_rate`` is what an hour costs of whoever has no rate of his own."""

    budget: Measure
    labour_rate: Measure | None = None


class Job(Part):
    """One job, from the first stake to the keys."""

    PRIVATE: ClassVar[tuple[str, ...]] = ("money", "private_note")

    title: Text
    summary: Prose
    start: Date
    deadline: Date
    begins: str = "7:30"
    hours: Measure = "8 h"
    days: Annotated[list[Day], Field(min_length=1)] = WORKING_WEEK
    holidays: list[Date] = []
    standards: list[Different] = []
    dwellings: dict[Name, Dwelling]
    spaces: Annotated[dict[Name, Space], Field(min_length=1)]
    openings: dict[Name, Opening] = {}
    people: Annotated[list[Hand], Field(min_length=1)]
    already_done: list[Done] = []
    prices: list[Price] = []
    visits: list[Visit] = []
    money: Money | None = None
    tasks: Annotated[dict[Name, Task], Field(min_length=1)]
    variants: dict[Name, Variant] = {}
    private_note: Prose | None = None
