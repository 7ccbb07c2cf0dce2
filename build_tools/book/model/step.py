"""One step of a procedure, and what may stand beside it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from build_tools.book.model.base import (
    IDENTIFIER,
    Basis,
    DangerId,
    InspectionId,
    MaterialId,
    Measure,
    Part,
    Prose,
    Text,
    ToolId,
)
from build_tools.book.model.table import Amount, Form, Table

StepId = Annotated[str, Field(pattern=IDENTIFIER)]


class KeyPoint(Part):
    """What makes or breaks the step, and the reason for it."""

    point: Prose
    why: Prose


class Message(Part):
    """A graded safety message (ANSI Z535): the hazard, what it does, how to avoid it.

    ``guards`` names the step it protects when that is not the step it stands at; a message stands at that step or
    before it, never after. ``danger`` names the entry of the dangers that it belongs to.
    """

    word: Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
    hazard: Prose
    harm: Prose | None = None
    avoid: Prose
    guards: StepId | None = None
    danger: DangerId | None = None

    @model_validator(mode="after")
    def _says_the_harm(self) -> Message:
        if self.word != "NOTICE" and self.harm is None:
            raise ValueError(f"a {self.word} says what the hazard does to a person, in 'harm'")
        return self


class Way(Part):
    """One of the two ways that a reading goes from nothing (``floor above flange``), and what passes that way.

    ``target`` with ``within``; or ``least``, ``most`` or both; a way that has none of them never passes. A limit that
    follows from crew standards is what a calculator answers: it moves with them.
    """

    way: Text
    target: Measure | None = None
    within: Measure | None = None
    least: Amount | None = None
    most: Amount | None = None

    @property
    def never_passes(self) -> bool:
        """Whether nothing passes this way."""
        return self.target is None and self.least is None and self.most is None

    @model_validator(mode="after")
    def _has_one_tolerance(self) -> Way:
        both = self.target is not None and (self.least is not None or self.most is not None)
        if (self.target is None) != (self.within is None) or both:
            raise ValueError("a way has a 'target' with 'within', or 'least', 'most' or both")
        return self


class Measurement(Part):
    """A reading with its tolerance, and what to do when it is outside.

    Either ``target`` with ``within`` (the same both ways) or with ``plus`` and ``minus``; or ``least``, ``most`` or
    both. A reading whose sign somebody could take the other way has ``ways`` instead: its way is picked in words, and
    the figure has no sign. ``name`` is what the form of a step calls it by.
    """

    name: Annotated[str, Field(pattern=IDENTIFIER)] | None = None
    what: Prose
    ways: list[Way] = []
    target: Measure | None = None
    within: Measure | None = None
    plus: Measure | None = None
    minus: Measure | None = None
    least: Amount | None = None
    most: Amount | None = None
    outside: Prose
    basis: Basis

    @property
    def sides(self) -> list[Measurement | Way]:
        """What may have limits: the reading itself, and each of its ways."""
        return [self, *self.ways]

    @model_validator(mode="after")
    def _has_a_tolerance(self) -> Measurement:
        sided = self.plus is not None and self.minus is not None
        others = (self.target, self.within, self.plus, self.minus, self.least, self.most)
        if self.ways:
            if len(self.ways) != 2 or any(other is not None for other in others):
                raise ValueError("'ways' are two, each with its own limits, and no limits stand beside them")
            if all(way.never_passes for way in self.ways):
                raise ValueError("one of the 'ways' at least says what passes")
        elif self.target is not None:
            if (self.within is not None) == sided or self.least is not None or self.most is not None:
                raise ValueError("a 'target' takes either 'within', or both 'plus' and 'minus'")
        elif self.least is None and self.most is None:
            raise ValueError("a measurement says its tolerance: 'target' with 'within', or 'least', 'most' or both")
        return self


class Check(Part):
    """A sign or a test that somebody can see, with what to do when it fails."""

    check: Prose
    passes: Prose
    outside: Prose


class Hold(Part):
    """Work stops here until an inspection has been made."""

    inspection: InspectionId
    stops: Prose


class Picture(Part):
    """A photo or a drawing: a file beside the YAML file, with words that say the same."""

    file: str
    alt: Text
    caption: Text | None = None


class Step(Part):
    """One action, with key points and reasons, dangers, measurements, and the hold point after it."""

    id: StepId
    do: Prose
    detail: Prose | None = None
    key_points: list[KeyPoint] = []
    messages: list[Message] = []
    tools: list[ToolId] = []
    materials: list[MaterialId] = []
    measurements: list[Measurement] = []
    checks: list[Check] = []
    calculator: Form | None = None
    table: Table | None = None
    photo: Picture | None = None
    drawing: Picture | None = None
    hold: Hold | None = None
