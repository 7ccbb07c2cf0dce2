"""The small types that every part of the model is made of.

Each scalar arrives as the text that was written (see ``book.yaml_reader``), and the type here says what it means.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, RootModel, WithJsonSchema
from pydantic_core import PydanticCustomError

from build_tools.book.visible_text import has_words

LANGUAGE = r"^[a-z]{2}(-[A-Z]{2})?$"
IDENTIFIER = r"^[a-z0-9]+(-[a-z0-9]+)*$"


class Part(BaseModel):
    """A mapping of the book: unknown fields are mistakes, and nothing changes after reading."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True)


def _with_a_word(text: str) -> str:
    if not has_words(text):
        raise PydanticCustomError("no_word", "there is no word in it")
    return text


LONGEST_TEXT = 20_000
Words = Annotated[
    str,
    Field(max_length=LONGEST_TEXT),
    AfterValidator(_with_a_word),
    WithJsonSchema({"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT}),
]
"""A text with a letter or a digit in it: a blank one tells nobody anything, and one of ten pages is no step."""

_Languages = Annotated[dict[Annotated[str, Field(pattern=LANGUAGE)], Words], Field(min_length=1)]


class Text(RootModel[Words | _Languages]):
    """Words for people: a plain string, or one string a language (``{en: ..., es: ...}``)."""

    model_config = ConfigDict(frozen=True)

    def inside(self, language: str = "en") -> str:
        """The words in that language; where it has none, in the first language given."""
        if isinstance(self.root, str):
            return self.root
        return self.root.get(language) or next(iter(self.root.values()), "")


class Prose(Text):
    """Words that may carry Markdown and references (``[](value:approach-thickness)``)."""


@dataclass(frozen=True, slots=True)
class RefersTo:
    """Marks an identifier field with the scheme that it refers to, for the reference check."""

    scheme: str


_NAME = Field(pattern=IDENTIFIER)
ProcedureId = Annotated[str, _NAME, RefersTo("procedure")]
ValueId = Annotated[str, _NAME, RefersTo("value")]
TermId = Annotated[str, _NAME, RefersTo("term")]
ToolId = Annotated[str, _NAME, RefersTo("tool")]
MaterialId = Annotated[str, _NAME, RefersTo("material")]
CalculatorId = Annotated[str, _NAME, RefersTo("calculator")]
InspectionId = Annotated[str, _NAME, RefersTo("inspection")]
SourceId = Annotated[str, _NAME, RefersTo("source")]
DangerId = Annotated[str, _NAME, RefersTo("danger")]
PersonId = Annotated[str, _NAME, RefersTo("person")]


@dataclass(frozen=True, slots=True)
class IsMeasure:
    """Marks a text that is a number with its unit, or ``value:NAME``."""


ISO_DATE = re.compile(r"(\d{4})-(\d{2})-(\d{2})", re.ASCII)
AMERICAN_DATE = re.compile(r"(\d{1,2})/(\d{1,2})/(\d{4})", re.ASCII)


def read_date(given: Any) -> Any:
    """A day written as ``2026-03-14`` or ``3/14/2026``; what is no text as it is. Raises ValueError.

    >>> read_date("2026-03-14") == read_date("3/14/2026")
    True
    """
    if not isinstance(given, str):
        return given
    iso, american = ISO_DATE.fullmatch(given), AMERICAN_DATE.fullmatch(given)
    parts = iso.groups() if iso else american.group(3, 1, 2) if american else ()
    try:
        return date(*map(int, parts))
    except (TypeError, ValueError):
        raise ValueError(f"'{given}' is not a date: {A_DATE}") from None


A_DATE = "write it like 2026-03-14 or 3/14/2026"
Date = Annotated[
    date,
    BeforeValidator(read_date),
    WithJsonSchema({"type": "string", "pattern": f"^({ISO_DATE.pattern}|{AMERICAN_DATE.pattern})$", "title": "Date"}),
]
"""A day of the calendar."""

NUMBER_OR_TEXT: dict[str, Any] = {"anyOf": [{"type": "string"}, {"type": "number"}]}

Measure = Annotated[
    str,
    IsMeasure(),
    Field(max_length=LONGEST_TEXT),
    WithJsonSchema({**NUMBER_OR_TEXT, "title": "Number with its unit, or value:NAME"}),
]
"""A number with its unit as people write it (``1/4 in``, ``24 h``, ``2 %``), or ``value:NAME``.

Where a figure goes two ways, the words of its way stand behind it: ``1/4 in flange above floor``, ``value:NAME flange
above floor``.
"""

Few = Annotated[int, Field(ge=1, le=100)]
"""How many people or crews: no job of this book has more in one place."""
Count = Annotated[int, Field(ge=1, le=10_000)]
"""How many there are of a thing, or which edition it is."""

Row = dict[str, Measure]
Written = Measure | list[Row]
"""What an input of a calculator takes: text, or a list of rows."""


class Cited(Part):
    """A published source of the book with the clause, table or page."""

    source: SourceId
    clause: str = ""


Label = Literal["common practice", "this crew's rule"]
Basis = Label | Cited
"""Where a figure comes from: every figure has one."""


def one_field(name: str, either: Any) -> BeforeValidator:
    """Let a bare string stand for a mapping whose one field it is; ``either`` is both, for the schema."""
    return BeforeValidator(
        lambda given: {name: given} if isinstance(given, str) else given, json_schema_input_type=either
    )
