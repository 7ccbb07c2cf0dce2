"""Floor finish against what is printed elsewhere."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

import pytest

from calculators.flooring.floor_finish import floor_finish
from calculators.flooring.floor_inputs import CUBIC_FEET_A_GALLON
from calculators.run import run


def finish(**inputs: Any) -> dict[str, Any]:
    """The answer with these changes to the defaults."""
    defaults = {declared.name: declared.default for declared in floor_finish.inputs}
    return run(floor_finish, {**defaults, **inputs})


# Common practice (from memory): a gallon of floor finish covers 400 to 600 sq ft, one coat. So a floor of 1,000 sq ft
# in three coats takes 5 to 7-1/2 gallons in the tray.
@pytest.mark.parametrize(("coverage", "gallons"), [(400, 7.5), (500, 6), (600, 5)])
def test_gallons_by_coverage(coverage: float, gallons: float) -> None:
    answer = finish(measured_area=1000, coats=3, coverage=coverage, waste=0)
    assert answer["finish"] / CUBIC_FEET_A_GALLON == pytest.approx(gallons)


# Waits added on a calendar by the standard library: three coats begun at 8 in the morning, a day apart, socks a day
# after the last was begun at the same place.
def test_waits_on_a_calendar() -> None:
    first = datetime(2026, 11, 2, 8)
    answer = finish(measured_area=400, coats=3, recoat_wait=24, walk_wait=24)
    assert [first + timedelta(hours=row["start"]) for row in answer["schedule"]] == [
        datetime(2026, 11, 2, 8),
        datetime(2026, 11, 3, 8),
        datetime(2026, 11, 4, 8),
    ]
    assert first + timedelta(hours=answer["closed"]) == datetime(2026, 11, 5, 8)
