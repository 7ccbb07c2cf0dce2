"""The entries that procedures refer to. Each file of ``procedures/reference/<kind>/`` maps ids to entries."""

from __future__ import annotations

from typing import Annotated, Literal, NamedTuple

from pydantic import Field

from build_tools.book.model.base import Basis, Measure, Part, PersonId, ProcedureId, Prose, TermId, Text, ToolId, Words


class Trade(Part):
    """A trade of the book: a folder of procedures.

    ``reserved``: the law or the utility keeps part of this trade for licensed people, so each of its procedures says
    who may do what.
    """

    title: Text
    summary: Prose
    order: int
    reserved: bool = False


class Value(Part):
    """A crew standard: a figure written once.

    ``default_of`` names the calculator inputs that start at it (``wax-ring.recess``), with its way where the input
    has ways (``wax-ring.rise flange above floor``).
    """

    title: Text
    quantity: Measure
    basis: Basis
    means: Prose
    default_of: list[Annotated[str, Field(pattern=r"^[a-z0-9-]+\.[a-z0-9_]+( [a-z ]+)?$")]] = []

    def starts(self) -> list[Start]:
        """What ``default_of`` names.

        >>> Value.model_construct(default_of=["wax-ring.rise flange above floor"]).starts()
        [Start(calculator='wax-ring', input='rise', way='flange above floor')]
        """
        found = []
        for place in self.default_of:
            name, _, way = place.partition(" ")
            calculator, _, input = name.partition(".")
            found.append(Start(calculator, input, way))
        return found


class Start(NamedTuple):
    """An input of a calculator that starts at a crew standard; ``way`` is empty where it has no ways."""

    calculator: str
    input: str
    way: str


class Term(Part):
    """A word of the trade and what it means."""

    title: Text
    means: Prose
    other_names: list[Text] = []
    see: list[TermId] = []


class Tool(Part):
    """A tool or a piece of protection, with what it is for. ``size`` stands behind its title, as a material's does."""

    title: Text
    size: Measure | None = None
    use: Prose
    other_names: list[Text] = []
    protects: bool = False
    rented: bool = False


class Material(Part):
    """A material, with the unit it is counted in and what to look for when buying it.

    ``size`` stands behind the title (``Casing, 2-1/4 in``), so that a size that is a crew standard changes with it.
    ``sold_by`` is how much comes in a pack (``100 each``, ``1/4 cu yd``); an order is whole packs, and where nothing is
    said whole units. ``stock`` are the lengths that it is sold in, for what is cut to length, and ``spare`` is the part
    that is bought beside the sticks that the pieces take. ``keeps: no`` is for what cannot wait on site (concrete in a
    truck): it comes to each task by itself.
    """

    title: Text
    size: Measure | None = None
    counted_in: Words
    buy: Prose
    other_names: list[Text] = []
    supplier: Text
    sold_by: Measure | None = None
    stock: list[Measure] = []
    spare: Measure | None = None
    keeps: bool = True


class Source(Part):
    """A published source."""

    title: Text
    publisher: Text
    edition: str = ""
    address: str = ""
    note: Prose | None = None


Role = Literal["owner", "lead", "helper", "friend"]


class Inspection(Part):
    """Somebody looks before work goes on: who, what at, and how long ahead to call.

    ``by``: somebody of the crew, or from outside, who has to be called and comes on working days. ``called``: ahead, so
    that he comes when the work is ready, or only when it is ready for him. ``roles`` and ``people``: whose look counts
    of the crew; where neither is said, the lead's at what the crew looks at, and nobody's at what comes from outside.
    """

    title: Text
    who: Text
    roles: list[Role] = []
    people: list[PersonId] = []
    notice: Measure
    looks_at: Prose
    by: Literal["crew", "outside"]
    called: Literal["ahead", "when ready"] = "ahead"


class Protection(Part):
    """One thing that protects: what to do or wear, with the gear, and where the rule comes from."""

    do: Prose
    tools: list[ToolId] = []
    basis: Basis


class Danger(Part):
    """Something that hurts people on a job: what it does, what protects, strongest first, and what to do after.

    ``emergency``: what somebody types when it has happened; the search answers with ``afterwards`` first.
    """

    title: Text
    hazard: Prose
    harm: Prose
    protects: Annotated[list[Protection], Field(min_length=1)]
    afterwards: Prose
    emergency: list[Text] = []
    other_names: list[Text] = []


class Person(Part):
    """Somebody of the crew, and the procedures that he may do alone.

    ``notice``: how long ahead a friend wants to be asked for a day.
    """

    name: Words
    role: Role
    notice: Measure | None = None
    trained_in: list[ProcedureId] = []
    note: Prose | None = None


KINDS: dict[str, type[Part]] = {
    "trades": Trade,
    "values": Value,
    "terms": Term,
    "tools": Tool,
    "materials": Material,
    "sources": Source,
    "inspections": Inspection,
    "dangers": Danger,
}
"""Folder of ``procedures/reference`` to the model of its entries."""

__all__ = [
    "KINDS",
    "Danger",
    "Inspection",
    "Material",
    "Person",
    "PersonId",
    "Source",
    "Term",
    "Tool",
    "Trade",
    "Value",
]
