"""What the crew's build leaves out of a job."""

from __future__ import annotations

import re

import pytest

from build_tools.book.book import Book, Entry
from build_tools.book.model import job as model
from build_tools.book.model.base import Part
from build_tools.book.model.job import Job
from build_tools.book.yaml_reader import Document
from build_tools.plan.for_crew import without_private

SECRET = "9137 dollars"
JOB = Job.model_validate(
    {
        "title": "Shed",
        "summary": "A shed.",
        "start": "2026-12-07",
        "deadline": "2026-12-11",
        "dwellings": {"shed": {"title": "Shed"}},
        "spaces": {"room": {"title": "Room"}},
        "people": [
            {"person": "wren-okafor", "rate": SECRET, "note": f"Asked for {SECRET}."},
            {"person": "ida-marsh", "days": ["friday"]},
        ],
        "prices": [{"material": "oak", "price": SECRET, "per": "1 bundle", "lead_time": "3 days"}],
        "money": {"budget": SECRET, "labour_rate": SECRET},
        "private_note": SECRET,
        "tasks": {"nail": {"procedure": "floor-nailing", "space": "room", "note": "Start at the door."}},
        "variants": {
            "more": {"title": "More", "why": "Why.", "more_people": [{"person": "bram-tolle", "rate": SECRET}]}
        },
    }
)
BOOK = Book(jobs={"shed": Entry("shed", JOB, Document("shed.yaml", ""))})


def test_nothing_private_is_left() -> None:
    assert SECRET not in without_private(BOOK).jobs["shed"].item.model_dump_json()


def test_what_the_plan_needs_is_left() -> None:
    made = without_private(BOOK).jobs["shed"].item
    assert made.prices[0].lead_time == "3 days"
    assert made.tasks == JOB.tasks
    assert [hand.days for hand in made.people] == [hand.days for hand in JOB.people]
    assert "days" not in made.people[0].model_fields_set  # so that the days of the job hold


def test_the_book_itself_keeps_everything() -> None:
    without_private(BOOK)
    assert BOOK.jobs["shed"].item.money is not None


PARTS = [
    each
    for each in vars(model).values()
    if isinstance(each, type) and issubclass(each, Part) and each.__module__ == model.__name__
]


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part.__name__)
def test_a_field_that_sounds_private_is_private(part: type[Part]) -> None:
    within = {"Money": set(part.model_fields)}  # hidden as a whole
    hidden = set(getattr(part, "PRIVATE", ())) | within.get(part.__name__, set())
    sounds = {name for name in part.model_fields if re.search(r"rate|price$|^per$|money|budget|cost|private", name)}
    assert sounds <= hidden
