"""The trap arm: its five limits, the longest at a slope, and what is said."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.plumbing.trap_arm import longest_for, trap_arm

codes = st.sampled_from(["ipc", "irc", "upc"])
sizes = st.sampled_from([1.25, 1.5, 2.0, 3.0, 4.0])
slopes = st.floats(0, 1)
runs = st.floats(1, 240)


def results(answer: dict[str, object]) -> dict[str, str]:
    """The result of each row by what it is."""
    rows = answer["checks"]
    assert isinstance(rows, list)
    return {row["what"]: row["result"] for row in rows}


def test_a_short_arm_at_the_standard_passes() -> None:
    answer = trap_arm()
    assert answer["result"] == "passes"
    assert answer["fall"] == pytest.approx(0.5)
    assert (answer["longest"], answer["shortest"], answer["cautions"]) == (72.0, 3.0, [])


def test_each_limit_fails_by_itself() -> None:
    assert results(trap_arm(run=84, slope=0.2 / 12))["weir to vent, longest"] == "over by 12 in"
    assert results(trap_arm(run=2))["weir to vent, shortest"] == "short by 1 in"
    assert results(trap_arm(run=48, slope=0.125 / 12))["fall over the arm, least"] == "short by 1/2 in"
    assert results(trap_arm(run=48, slope=0.5 / 12))["fall over the arm, most"] == "over by 1/2 in"
    assert results(trap_arm(drop=25))["outlet down to the weir"] == "over by 1 in"
    assert trap_arm(drop=25)["result"] == "does not pass"


def test_a_steep_slope_shortens_the_arm() -> None:
    assert trap_arm(slope=0.5 / 12)["longest"] == pytest.approx(36)
    assert trap_arm(slope=0.5 / 12, code="upc")["longest"] == pytest.approx(36)
    assert "no length passes" in trap_arm(slope=1)["cautions"][0]


def test_a_size_between_goes_by_the_smaller_one() -> None:
    assert longest_for(1.75, "ipc") == longest_for(1.5, "ipc")
    assert trap_arm(pipe=1.75)["cautions"] == [
        "1.75 in is no size that drain pipe is sold in: read the mark on it.",
    ]


def test_a_level_arm_has_the_length_of_the_table_and_fails() -> None:
    answer = trap_arm(slope=0)
    assert answer["longest"] == 72.0
    assert answer["result"] == "does not pass"


@given(code=codes, pipe=sizes, slope=slopes)
def test_the_longest_arm_is_at_its_limits(code: str, pipe: float, slope: float) -> None:
    longest = trap_arm(code=code, pipe=pipe, slope=slope)["longest"]
    assert longest <= longest_for(pipe, code)
    assert longest * slope <= pipe * (1 + 1e-12)


@given(code=codes, pipe=sizes, run=runs, slope=slopes, drop=st.floats(0, 60))
def test_it_passes_only_where_every_row_does(code: str, pipe: float, run: float, slope: float, drop: float) -> None:
    answer = trap_arm(code=code, pipe=pipe, run=run, slope=slope, drop=drop)
    assert (answer["result"] == "passes") == all(result == "passes" for result in results(answer).values())
    assert answer["fall"] == pytest.approx(run * slope)


@given(pipe=sizes, run=runs, slope=slopes)
def test_what_passes_by_the_upc_passes_by_the_ipc(pipe: float, run: float, slope: float) -> None:
    if trap_arm(code="upc", pipe=pipe, run=run, slope=slope)["result"] == "passes":
        assert trap_arm(code="ipc", pipe=pipe, run=run, slope=slope)["result"] == "passes"
