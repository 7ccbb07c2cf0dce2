"""A record of one procedure in one place, as a page hands it over: ``record.schema.json``. A file has one or a list.

It says by itself what was to be done (the steps, the measurements with their limits, the hold points), so that it can
be read years later without the book. What was entered are items, each hanging on the id of a step, with its time, its
name, and the print of the step as it was then.
"""

from __future__ import annotations

import json
from datetime import datetime
from functools import lru_cache
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, TypeAdapter

_MINUTE = r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}"


def _in_the_calendar(text: str) -> str:
    """The text of a time, where there is such a day and minute."""
    if text:
        try:
            time = datetime.fromisoformat(text)
        except ValueError:
            raise ValueError("no such time in the calendar") from None
        if not text.startswith(time.isoformat(timespec="minutes")[:16]):
            raise ValueError("no such time in the calendar")
    return text


Time = Annotated[str, Field(pattern=rf"^{_MINUTE}:[0-9]{{2}}\.[0-9]{{3}}Z$"), AfterValidator(_in_the_calendar)]
"""A time in UTC to the millisecond, always so written: the later one is also the later text."""
LocalTime = Annotated[str, Field(pattern=rf"^({_MINUTE})?$"), AfterValidator(_in_the_calendar)]
"""A time in that of the place, to the minute; empty where it was taken back."""


class RecordModel(BaseModel):
    """A mapping of the file. Unknown fields are passed over, so that a later book may add some."""

    model_config = ConfigDict(frozen=True, strict=True)


class Named(RecordModel):
    """Something of the book or the job; both empty where none was chosen."""

    id: str
    title: str


class Done(Named):
    """The procedure in the revision that the page had."""

    revision: int


class Measured(RecordModel):
    """A measurement that a step asks for; ``name`` is known inside its step."""

    name: str
    what: str
    limits: str


class Step(Named):
    """A step as the page had it; the checks at the end are one more, named ``acceptance``."""

    print: str
    measures: list[Measured]
    hold: str | None


class Item(RecordModel):
    """What somebody entered at a step, when, by which name, and the revision and the print that he had before him."""

    step: str
    at: Time
    by: str
    revision: int
    print: str


class Tick(Item):
    """The step was done, or the tick was taken back."""

    kind: Literal["tick"]
    done: bool


class Reading(Item):
    """A reading as it was typed, with the limits that it was held against; ``value`` is in the unit of the inside."""

    kind: Literal["reading"]
    name: str
    what: str
    limits: str
    text: str
    value: Annotated[float, Field(allow_inf_nan=False)] | None
    verdict: Literal["pass", "outside", "unread"]


class Hold(Item):
    """Somebody looked at a hold point and it passed, or that was taken back. ``when`` is in the time of the place.

    ``role``: where the look was not his, what he is not ("not the crew lead").
    """

    kind: Literal["hold"]
    passed: bool
    looked: str
    role: str = ""
    when: LocalTime


class Note(Item):
    """A note at a step; an empty one was struck out."""

    kind: Literal["note"]
    text: str


Entry = Annotated[Tick | Reading | Hold | Note, Field(discriminator="kind")]


class Record(RecordModel):
    """One procedure in one space of one job, with all that was entered on one device, finished or not."""

    format: Literal["crew-methods-record"]
    version: Literal[1]
    taken: Time
    job: Named
    space: Named
    procedure: Done
    steps: list[Step]
    items: list[Entry]


Records = Annotated[list[Record], Field(min_length=1)]
"""All that lies on a device, or all of a job: a record each."""


@lru_cache
def record_schema() -> str:
    """The JSON Schema of the file."""
    file: TypeAdapter[Any] = TypeAdapter(Record | Records)
    schema = {"$schema": "https://json-schema.org/draft/2020-12/schema", **file.json_schema()}
    return json.dumps(schema, indent=1)
