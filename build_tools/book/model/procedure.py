"""One procedure: a file ``procedures/<trade>/<procedure>.yaml``.

Its identity is the name of the file and its trade the name of the folder, so neither is written twice.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from build_tools.book.model.base import (
    IDENTIFIER,
    Basis,
    Cited,
    Count,
    Date,
    Few,
    MaterialId,
    Measure,
    Part,
    PersonId,
    ProcedureId,
    Prose,
    Text,
    ToolId,
    one_field,
)
from build_tools.book.model.step import Check, Message, Step
from build_tools.book.model.table import Amount


class Revision(Part):
    """Which edition of the procedure this is, what changed in it, and who approved it."""

    number: Count
    date: Date
    changed: Text
    approved_by: PersonId


TripName = Annotated[str, Field(pattern=IDENTIFIER)]
"""The name of a trip inside its procedure."""


class Trip(Part):
    """The crew comes for a part of a work that has to wait in between: a coat, the grout after the tile.

    ``title`` is what a foreman calls it: ``grout``; of several ``times`` alike it becomes ``2nd coat``. ``part`` is the
    share of the hours, all ``times`` of it together. ``wait`` goes before it, counted from the end of the trip before
    or of the one that ``since`` names; with ``counted_from: start`` from its start, since every place is come to
    again after the same time. ``shut``: what the work closes to everybody is closed in that wait already.
    ``in_one_day``: it is done in one go, and not left overnight.
    """

    title: Text
    part: Measure
    times: Measure = "1"
    wait: Measure | None = None
    since: TripName | None = None
    counted_from: Literal["start", "end"] = "end"
    shut: bool = False
    in_one_day: bool = False


class Labour(Part):
    """People at work together and the labour hours of all of them, for a stated quantity of work.

    ``in_one_day``: it is not left overnight, like concrete that is placed. ``trips`` are for work that cannot be done
    in one sitting, since something dries, sets or settles before it goes on.
    """

    people: Few
    hours: Amount
    per: Measure
    basis: Basis
    in_one_day: bool = False
    trips: dict[TripName, Trip] = {}


Where = Literal["same space", "same dwelling", "whole job"]
"""How far a link between two tasks of a job reaches."""


class Before(Part):
    """What must be done first: a procedure of the book, or a state of the work in words.

    ``where`` says whose task of that procedure counts: the one in the same space, all in the same dwelling, or all of
    the job. ``needed`` says whether a job must have it, or whether it only goes first where the job has it.
    """

    procedure: ProcedureId | None = None
    state: Prose | None = None
    where: Where = "same space"
    needed: Literal["always", "if planned"] = "always"
    why: Prose

    @model_validator(mode="after")
    def _one_of_them(self) -> Before:
        if (self.procedure is None) == (self.state is None):
            raise ValueError("'before' takes either 'procedure' or 'state'")
        return self


class Closes(Part):
    """What is closed off after the work, and for how long.

    ``shuts_out`` says whom: ``everybody`` (nobody works there), ``next work`` (what comes after this waits, others may
    work beside it) or ``users`` (it is not used yet; no work waits). ``where`` says how far it reaches. The time counts
    from the end of the work, or of the trip that ``after`` names.
    """

    what: Prose
    shuts_out: Literal["everybody", "next work", "users"]
    where: Where = "same space"
    time: Annotated[Measure, Field(alias="for")]
    after: TripName | None = None
    why: Prose
    basis: Basis


class ToolLine(Part):
    """A tool that the work needs."""

    tool: ToolId
    note: Text | None = None


class MaterialLine(Part):
    """A material that the work uses, with its quantity; ``per`` says in words for how much work that is.

    ``work`` says the same as a figure in the unit that the hours are counted for (``40 ft``), so that a job can take
    its share. Without it the quantity is that of one: one toilet, one opening.
    ``serves`` is for what goes by something else than the work: ``doorways``, ``wall-ends``. A task says how many or
    how much it has of them, and the quantity is for one, or for ``work`` of them.
    ``cut`` is for what is cut to length: the calculator lists ``pieces``, and those whose ``stock`` is this word are of
    this material. A job packs them into the lengths that are sold.
    """

    material: MaterialId
    quantity: Amount
    per: Text
    work: Measure | None = None
    serves: Annotated[str, Field(pattern=IDENTIFIER)] | None = None
    cut: str | None = None
    note: Prose | None = None


class Question(Part):
    """What a learner is asked, and the answer that shows he knows."""

    ask: Prose
    answer: Prose


class Procedure(Part):
    """A standard method: who, with what, in which steps, and how the result is accepted.

    ``label`` says where a printed label is stuck that opens it on a phone: ``inside the panel door``.
    """

    title: Text
    other_names: list[Text] = []
    label: Text | None = None
    summary: Prose
    revision: Revision
    who: Literal["helper", "lead", "licensed person"]
    alone: Prose
    reserved: Prose | None = None
    labour: Labour
    before: list[Before] = []
    closes: list[Closes] = []
    safety: list[Message] = []
    tools: list[Annotated[ToolLine, one_field("tool", ToolId | ToolLine)]] = []
    materials: list[MaterialLine] = []
    steps: Annotated[list[Step], Field(min_length=1)]
    acceptance: Annotated[list[Check], Field(min_length=1)]
    questions: list[Question] = []
    sources: list[Cited] = []
