"""The fall of a drain: arithmetic, and what is said about the slope."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.plumbing.drain_fall import drain_fall, least_slope_for

runs = st.floats(1, 12000)
slopes = st.floats(0, 1)
sizes = st.sampled_from([1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0])
codes = st.sampled_from(["ipc", "irc", "upc"])


def test_a_ten_foot_run_at_the_standard_falls_two_and_a_half_inches() -> None:
    answer = drain_fall()
    assert answer["fall"] == pytest.approx(2.5)
    assert answer["lower_invert"] == pytest.approx(-2.5)
    assert (answer["result"], answer["cautions"]) == ("passes", [])


def test_working_says_the_arithmetic() -> None:
    assert drain_fall(run=240, upper_invert=-18)["working"] == [
        "fall = run x slope: 20 ft x 0.25 in/ft = 5 in",
        "lower invert = 18 in below the mark, 5 in down = 23 in below the mark",
        "IPC Table 704.1, 3 in pipe: at least 0.125 in/ft, 2-1/2 in over this run",
    ]


def test_a_two_inch_pipe_serves_no_toilet() -> None:
    assert drain_fall(pipe=2.0)["result"] == "pipe too small for a water closet"
    assert drain_fall(pipe=2.0, water_closet=False)["result"] == "passes"


def test_a_flat_slope_in_the_upc_needs_approval() -> None:
    answer = drain_fall(slope=0.125 / 12, code="upc")
    assert answer["result"] == "passes only with the inspector's approval"
    assert "ask which one rules" in answer["cautions"][0]
    assert drain_fall(slope=0.125 / 12, code="upc", pipe=4)["cautions"] == []


def test_a_steep_slope_is_cautioned_not_failed() -> None:
    answer = drain_fall(slope=1 / 12)
    assert answer["result"] == "passes"
    assert answer["cautions"][0].startswith("Steeper than 0.5 in/ft.")
    assert "disputed" in answer["cautions"][0]


def test_a_size_that_is_not_sold_is_cautioned() -> None:
    assert drain_fall(pipe=7)["cautions"] == ["7 in is no size that drain pipe is sold in: read the mark on it."]


@given(run=runs, slope=slopes, upper=st.floats(-1200, 1200))
def test_the_ends_differ_by_the_fall(run: float, slope: float, upper: float) -> None:
    answer = drain_fall(run=run, slope=slope, upper_invert=upper)
    assert upper - answer["lower_invert"] == pytest.approx(answer["fall"], abs=1e-9)


@given(run=runs, pipe=sizes, code=codes)
def test_a_pipe_laid_at_its_least_slope_passes(run: float, pipe: float, code: str) -> None:
    answer = drain_fall(run=run, pipe=pipe, code=code, slope=least_slope_for(pipe, code), water_closet=False)
    assert answer["result"] == "passes"
    assert answer["fall"] == answer["least_fall"]


@given(slope=slopes, pipe=sizes, code=codes)
def test_more_slope_never_fails_where_less_passed(slope: float, pipe: float, code: str) -> None:
    flatter = drain_fall(slope=slope / 2, pipe=pipe, code=code, water_closet=False)
    steeper = drain_fall(slope=slope, pipe=pipe, code=code, water_closet=False)
    assert not (flatter["result"] == "passes" and steeper["result"] != "passes")
