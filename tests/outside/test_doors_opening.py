"""The rough opening against the trade's rule of thumb, and the clear width against what a way out needs."""

from __future__ import annotations

import pytest

from calculators.doors.door_opening import door_opening


@pytest.mark.parametrize("width", [24, 28, 30, 32, 36])
def test_two_inches_wider_and_two_and_a_half_higher(width: float) -> None:
    """Common practice, printed in many guides: width + 2 in, height + 2-1/2 in over the subfloor."""
    answer = door_opening(width=width, height=80)
    assert answer["rough_width"] == pytest.approx(width + 2, abs=0.125)
    assert answer["rough_height"] == pytest.approx(82.5, abs=0.125)


@pytest.mark.parametrize(("width", "enough"), [(32, False), (34, False), (36, True)])
def test_the_clear_width_of_a_way_out(width: float, enough: bool) -> None:
    """IRC R311.2: 32 in clear with the door at 90 degrees. A 36 in door 1-3/4 in thick has it, a 34 in door has not."""
    assert (door_opening(width=width, thickness=1.75)["clear_width"] >= 32) == enough
