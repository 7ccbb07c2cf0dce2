"""The fall of the ground from a house against the model code."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.concrete.ground_fall import ground_fall
from calculators.declaration import Answer
from calculators.run import run


def fall(**changes: Any) -> Answer:
    """The answer for the standard inputs with these changes."""
    return run(ground_fall, changes)


def test_six_inches_in_ten_feet() -> None:
    """IRC R401.3 (seen quoted): the grade falls 6 in at least within the first 10 ft."""
    answer = fall(room=240)
    assert (answer["drop_wanted"], answer["slope"]) == (6, pytest.approx(0.05))


@pytest.mark.parametrize(("feet", "inches"), [(3, 1.8), (5, 3.0), (8, 4.8)])
def test_less_room_keeps_five_per_cent(feet: float, inches: float) -> None:
    """IRC R401.3, exception (seen quoted): where lot lines or walls are in the way, 5 % to drains or swales."""
    answer = fall(room=feet * 12)
    assert answer["drop_wanted"] == pytest.approx(inches)
    assert answer["way"] == "to a swale or a drain"


def test_paving_and_swales_two_per_cent() -> None:
    """IRC R401.3, exception (seen quoted): paving and swales within 10 ft of the house fall 2 % at least."""
    answer = fall(paved=True, swale=120)
    assert answer["drop_wanted"] == pytest.approx(2.4)
    assert answer["swale_drop"] == pytest.approx(2.4)
