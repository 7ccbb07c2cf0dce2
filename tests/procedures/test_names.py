"""Names in the book and in the tests' small books: things by what they are, people by full names that were invented."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml

from build_tools.commands.site import BOOK

ROOT = BOOK.parent
BRANDS = re.compile(
    r"\b(wacker|allen (key|wrench)|crescent( wrench)?|visqueen|spackle|wire[- ]nut|redi-mix|quick cut|john(ny bolt)?|"
    r"sheetrock|romex|channel ?locks?|skil ?saw|sawzall|vise-?grips?|shop-vac|speed square|sharkbite|"
    r"styrofoam|teflon|velcro|plexiglas|formica|drano|sharpie|jersey barrier)s?\b",
    re.IGNORECASE,
)
"""What a trade calls a thing by the name of its maker, and a nickname that is a person's. Each has a plain name."""

PEOPLE = sorted([BOOK / "crew/people.yaml", *ROOT.glob("tests/**/people.yaml")])


def test_no_thing_is_called_by_its_maker() -> None:
    files = [*BOOK.rglob("*.yaml"), *(ROOT / "calculators").rglob("*.py")]
    found = {
        f"{file.relative_to(ROOT)}:{number}: {match.group()}"
        for file in files
        for number, line in enumerate(file.read_text("utf-8").splitlines(), 1)
        for match in BRANDS.finditer(line)
    }
    assert len(files) > 100
    assert found == set()


@pytest.mark.parametrize("file", PEOPLE, ids=lambda file: str(file.relative_to(ROOT)))
def test_a_person_has_a_full_name_and_goes_by_it(file: Path) -> None:
    for id, person in yaml.load(file.read_text("utf-8"), yaml.BaseLoader).items():
        first, last = person["name"].split()
        assert id == f"{first}-{last}".lower()
