"""The schemas that editors use: there, agreeing with the book, and as strict as the book's own checks."""

from __future__ import annotations

import copy
import json
import re
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator

from build_tools.book.schema import FOLDER, schema_files, schemas, write_schemas
from build_tools.book.yaml_reader import read_document
from build_tools.commands.new import starting_text
from build_tools.commands.site import BOOK
from build_tools.pipeline import Options, read_checked
from calculators.registry import CALCULATORS
from tests.builds import SMALL, copy_book

MODELINE = "# yaml-language-server: $schema="
PROCEDURES = sorted(path for path in BOOK.glob("*/*.yaml") if path.parent.name not in ("reference", "crew", "jobs"))
ENTRIES = [*sorted((BOOK / "reference").glob("*/*.yaml")), BOOK / "crew" / "people.yaml"]


class AsAnEditor(yaml.SafeLoader):
    """YAML as editors read it, by the core schema of YAML 1.2: ``4`` is a number, ``no`` and ``1:48`` are text."""

    yaml_implicit_resolvers: dict[str, Any] = {}


for kind, pattern, signs in (
    ("null", r"^(~|null|)$", ["~", "n", ""]),
    ("bool", r"^(true|false)$", ["t", "f"]),
    ("int", r"^[-+]?[0-9]+$", list("-+0123456789")),
    ("float", r"^[-+]?(\.[0-9]+|[0-9]+\.[0-9]*)([eE][-+]?[0-9]+)?$", list("-+.0123456789")),
):
    AsAnEditor.add_implicit_resolver(f"tag:yaml.org,2002:{kind}", re.compile(pattern), signs)


def validator(name: str) -> Draft202012Validator:
    """The validator of a schema."""
    return Draft202012Validator(json.loads(schema_files()[name]))


def mistakes(name: str, data: Any) -> list[str]:
    """What a schema has against some data."""
    return [f"{'.'.join(map(str, mistake.path))}: {mistake.message}" for mistake in validator(name).iter_errors(data)]


def test_checking_a_book_puts_its_schemas_there(tmp_path: Path) -> None:
    """Where the first line of its files says; an older one is replaced, and a book that is read only does without."""
    book = copy_book(tmp_path, SMALL)
    read_checked(book, Options(tmp_path / "cache"))
    written = {path.name: path.read_text(encoding="utf-8") for path in (book / FOLDER).iterdir()}
    assert written == schema_files()
    (book / FOLDER / "job.json").write_text("older", encoding="utf-8")
    write_schemas(book)
    assert (book / FOLDER / "job.json").read_text(encoding="utf-8") == schema_files()["job.json"]
    write_schemas(book / "plumbing" / "set-bowl.yaml")


def test_schemas_go_nowhere_but_into_a_book(tmp_path: Path) -> None:
    """A folder that holds no book is left as it is, and so is one that a link in a book leads to."""
    write_schemas(tmp_path)
    book, elsewhere = copy_book(tmp_path, SMALL), tmp_path / "elsewhere"
    elsewhere.mkdir()
    (book / FOLDER).symlink_to(elsewhere)
    write_schemas(book)
    assert not (tmp_path / FOLDER).exists()
    assert not list(elsewhere.iterdir())


@pytest.mark.parametrize("name", sorted(schemas(CALCULATORS)))
def test_each_schema_is_a_schema(name: str) -> None:
    """Each is sound JSON Schema of the draft that it names."""
    Draft202012Validator.check_schema(validator(name).schema)


@pytest.mark.slow
@pytest.mark.parametrize("path", PROCEDURES + ENTRIES, ids=lambda path: path.relative_to(BOOK).as_posix())
def test_the_book_agrees_with_its_schema(path: Path) -> None:
    """An editor marks nothing in a file that the book takes."""
    names = {"reference": f"{path.parent.name}.json", "crew": "people.json"}
    name = names.get(path.relative_to(BOOK).parts[0], "procedure.json")
    assert mistakes(name, yaml.load(path.read_text(encoding="utf-8"), AsAnEditor)) == []


@pytest.mark.parametrize("path", PROCEDURES, ids=lambda path: path.stem)
def test_each_procedure_names_its_schema(path: Path) -> None:
    """The first line tells the editor where the schema will be."""
    first = path.read_text(encoding="utf-8").splitlines()[0]
    assert first.startswith(MODELINE)
    assert (path.parent / first.removeprefix(MODELINE)).resolve() == BOOK / FOLDER / "procedure.json"


def test_a_new_procedure_agrees() -> None:
    """The file that ``new`` writes begins with the same line, and an editor marks nothing in it."""
    text = starting_text("Hang a door", "ida-marsh", date(2026, 3, 2))
    assert text.startswith(MODELINE)
    assert mistakes("procedure.json", yaml.load(text, AsAnEditor)) == []


def good() -> dict[str, Any]:
    """A procedure of the book that calls calculators in every way, as the book's own reader reads it."""
    data = read_document(BOOK / "plumbing" / "toilet-set.yaml", "toilet-set.yaml").data
    assert isinstance(data, dict)
    data["revision"]["number"] = int(data["revision"]["number"])
    data["labour"]["people"] = int(data["labour"]["people"])
    return data


def test_the_book_as_it_reads_itself_agrees() -> None:
    """Read by the book's own reader, with its two counts as numbers, a procedure agrees as well."""
    assert mistakes("procedure.json", good()) == []


def step_with(data: dict[str, Any], field: str) -> dict[str, Any]:
    """The first step that has a field."""
    return next(step for step in data["steps"] if field in step)


def wrong_input(data: dict[str, Any]) -> None:
    form = step_with(data, "calculator")["calculator"]
    form["inputs"] = {"cod": "ipc-irc"}


def wrong_fixed(data: dict[str, Any]) -> None:
    step_with(data, "table")["table"]["fixed"] = {"reces": "1/2 in"}


def wrong_output(data: dict[str, Any]) -> None:
    step_with(data, "table")["table"]["show"] = ["squeze"]


def wrong_amount(data: dict[str, Any]) -> None:
    next(line for line in data["materials"] if "output" in line["quantity"])["quantity"]["output"] = "rings"


def wrong_calculator(data: dict[str, Any]) -> None:
    step_with(data, "table")["table"]["calculator"] = "wax-rings"


def wrong_field(data: dict[str, Any]) -> None:
    data["steps"][0]["key_point"] = []


def wrong_word(data: dict[str, Any]) -> None:
    data["safety"][0]["word"] = "BEWARE"


def missing_why(data: dict[str, Any]) -> None:
    del data["steps"][0]["key_points"][0]["why"]


def no_steps(data: dict[str, Any]) -> None:
    data["steps"] = []


@pytest.mark.parametrize(
    "spoil",
    [
        wrong_input,
        wrong_fixed,
        wrong_output,
        wrong_amount,
        wrong_calculator,
        wrong_field,
        wrong_word,
        missing_why,
        no_steps,
    ],
    ids=lambda spoil: spoil.__name__,
)
def test_the_schema_refuses(spoil: Any) -> None:
    """An editor marks a wrong name of an input, an output or a field, and what is missing."""
    data = copy.deepcopy(good())
    spoil(data)
    assert mistakes("procedure.json", data) != []
