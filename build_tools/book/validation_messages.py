"""The mistakes that the model finds in the fields of a file, in the words of the book."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from pydantic import BaseModel, ValidationError

from build_tools.book.diagnostics import Diagnostic, did_you_mean
from build_tools.book.model.base import A_DATE, LANGUAGE, Part
from build_tools.book.yaml_reader import Document, Location

FIELDS = "fields are wanted, one 'name: ...' to a line"
WANTED = {
    "string_type": "a text is wanted",
    "list_type": "a list is wanted, each item after a hyphen and a space",
    "dict_type": FIELDS,
    "model_type": FIELDS,
    "int_type": "a whole number is wanted",
    "int_parsing": "a whole number is wanted",
    "int_parsing_size": "a smaller number is wanted",
    "greater_than_equal": "a number above nought is wanted",
    "date_type": A_DATE,
    "bool_type": "true or false is wanted",
    "bool_parsing": "true or false is wanted",
}
"""What is wanted in place of what stands there, by the kind of mistake."""


def validation_diagnostics(
    document: Document, at: Location, mistakes: ValidationError, model: type[Part], data: Any
) -> list[Diagnostic]:
    """Every mistake of an entry, which stands at that location of its file and is of that model."""
    return [_diagnostic(document, at, mistake, model, data) for mistake in _once(mistakes, data)]


def _once(mistakes: ValidationError, data: Any) -> list[dict[str, Any]]:
    """Pydantic's mistakes, one a field: of a field that may take several shapes, the one that came nearest."""
    kept: dict[Location, dict[str, Any]] = {}
    around: set[Location] = set()
    for mistake in mistakes.errors(include_url=False):
        where = _existing(data, mistake["loc"])
        if mistake["type"] == "missing":
            where = (*where, str(mistake["loc"][-1]))
        if where not in kept:
            kept[where] = dict(mistake)
            around.update(where[:length] for length in range(len(where)))
    return [mistake for where, mistake in kept.items() if where not in around]


def _diagnostic(document: Document, at: Location, mistake: dict[str, Any], model: type[Part], data: Any) -> Diagnostic:
    """Pydantic's mistake in the words of the book."""
    location = _existing(data, mistake["loc"])
    given = mistake.get("input")
    last = str(mistake["loc"][-1]) if mistake["loc"] else ""
    match mistake["type"]:
        case "extra_forbidden":
            known = _fields_at(model, mistake["loc"][:-1])
            hint = did_you_mean(last, known) or (f"known here: {', '.join(sorted(known))}" if known else "")
            return document.error((*at, *location, ""), f"there is no field '{last}' here", hint)
        case "missing":
            where = f" of '{location[-1]}'" if location and isinstance(location[-1], str) else ""
            return document.error((*at, *location), f"the field '{last}'{where} is missing")
        case "literal_error":
            expected = mistake["ctx"]["expected"]
            words = re.findall(r"'((?:[^'\\]|\\.)*?)'(?:,| or|$)", expected)
            if given is None:
                return document.error((*at, *location), f"'{_field(location)}' is blank: {expected} is wanted")
            return document.error(
                (*at, *location), f"'{given}' is not one of {expected}", did_you_mean(str(given), words)
            )
        case "string_pattern_mismatch":
            return _no_match(document, (*at, *location), location, mistake)
        case "no_word":
            return document.error((*at, *location), f"there is no word in '{_field(location)}'")
        case "string_too_long":
            most = mistake["ctx"]["max_length"]
            return document.error((*at, *location), f"'{_field(location)}' is too long: at most {most:,} letters")
        case "value_error":
            return document.error((*at, *location), str(mistake["ctx"]["error"]))
        case "less_than_equal":
            most = mistake["ctx"]["le"]
            return document.error((*at, *location), f"'{given}' is too many for '{_field(location)}': at most {most:,}")
        case "too_short":
            return document.error((*at, *location), f"'{last}' is empty; at least one is wanted")
    wanted = WANTED.get(mistake["type"], str(mistake["msg"]).lower())
    if given is None:
        return document.error((*at, *location), f"'{_field(location)}' is blank: {wanted}")
    shown = f"'{given}'" if isinstance(given, str) else "a list" if isinstance(given, list) else "a group of fields"
    return document.error((*at, *location), f"{shown} does not fit '{_field(location)}': {wanted}")


def _no_match(document: Document, at: Location, location: Location, mistake: Mapping[str, Any]) -> Diagnostic:
    """A word that is no language, a name with other signs than names have."""
    pattern, given = mistake["ctx"]["pattern"], mistake["input"]
    if pattern == LANGUAGE:
        hint = "put text that holds ': ' in quotes; a translation is named by its language, like 'es'"
        return document.error(at, f"a text is wanted here, and '{given}' is no language of one", hint)
    return document.error(at, f"'{given}' is not a name here: small letters, digits and single hyphens are wanted")


def _field(location: Location) -> str:
    return ".".join(str(part + 1) if isinstance(part, int) else part for part in location) or "file"


def _existing(data: Any, loc: tuple[Any, ...]) -> Location:
    """The part of pydantic's location that names fields which were written."""
    location: list[str | int] = []
    for part in loc:
        in_list = isinstance(data, list) and isinstance(part, int) and part < len(data)
        if in_list or (isinstance(data, dict) and part in data):
            location.append(part)
            data = data[part]
    return tuple(location)


def _fields_at(model: type[BaseModel], loc: tuple[Any, ...]) -> list[str]:
    """The names of the fields that may stand at that location of a model."""
    models = [model]
    for part in loc:
        if isinstance(part, int):
            continue
        models = _models_below(models, part) or models
    names = []
    for found in models:
        names += [field.alias or name for name, field in found.model_fields.items()]
    return names


def _models_below(models: list[type[BaseModel]], part: str) -> list[type[BaseModel]]:
    found: list[type[BaseModel]] = []
    for model in models:
        if model.__name__ == part:
            return [model]
        for name, declared in model.model_fields.items():
            if part in (name, declared.alias):
                found += _models_in(declared.annotation)
    return found


def _models_in(annotation: Any) -> list[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [annotation]
    return [model for inner in getattr(annotation, "__args__", ()) for model in _models_in(inner)]
