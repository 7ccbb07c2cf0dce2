"""What tasks take of spaces and openings."""

from __future__ import annotations

import pytest

from build_tools.book.load import load_book
from build_tools.commands.site import BOOK
from build_tools.plan.measures import UnknownMeasure, columns_of, inputs_of, substitute_measures
from calculators.registry import CALCULATORS

JOB = load_book(BOOK).book.jobs["garden-studio"].item
TRIM, LOCKS = CALCULATORS["trim-take-off"], CALCULATORS["lock-schedule"]
COLUMNS = columns_of(TRIM, "openings")


def test_a_row_takes_what_its_list_has_columns_for() -> None:
    """A width for the trim and a use for the lock, each from the one line of the opening."""
    trim = substitute_measures([{"opening": "bath-door", "sides": "2"}], JOB, "room", COLUMNS)
    sizes = {"name": "Bath door", "kind": "door", "width": "30 in", "height": "80 in", "count": "1"}
    assert trim == [{**sizes, "sides": "2"}]
    assert inputs_of(JOB, "lock-bath", LOCKS) == {"openings": [{"name": "Bath door", "use": "bathroom"}]}


def test_what_the_row_says_stands() -> None:
    """Over what the opening says."""
    rows = substitute_measures([{"opening": "garden-window", "width": "50 in"}], JOB, "room", COLUMNS)
    assert rows == [{"name": "Garden window", "kind": "window", "width": "50 in", "height": "48 in", "count": "1"}]


def test_a_list_with_such_a_column_keeps_it() -> None:
    """Then it is the list's own."""
    assert substitute_measures([{"opening": "3 in"}], JOB, "room", ["opening"]) == [{"opening": "3 in"}]


def test_an_opening_that_is_not_there() -> None:
    """It is named, and those that are known."""
    with pytest.raises(UnknownMeasure, match="no opening 'bathdoor'") as refused:
        substitute_measures([{"opening": "bathdoor"}], JOB, "room", COLUMNS)
    assert "bath-door" in refused.value.known


@pytest.mark.parametrize("job", ["garden-studio", "three-cottages"])
def test_no_demo_job_types_an_opening_twice(job: str) -> None:
    """The lists of the trim and of the locks name openings."""
    for task in load_book(BOOK).book.jobs[job].item.tasks.values():
        for given in task.inputs.values():
            rows = given.get("openings", [])
            assert all("opening" in row and "width" not in row for row in rows if isinstance(row, dict))
