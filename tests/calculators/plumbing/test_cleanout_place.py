"""Cleanouts: the size, the room in front, and how many by length."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.plumbing.cleanout_place import cleanout_place, cleanouts_by_length, least_front_for, turns_in_words

sizes = st.sampled_from([1.25, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 15.0])
codes = st.sampled_from(["ipc", "irc", "upc"])


def test_our_standard_passes_in_every_code() -> None:
    for code in ("ipc", "irc", "upc"):
        answer = cleanout_place(code=code)
        assert (answer["result"], answer["passes"], answer["short"], answer["cautions"]) == ("passes", True, 0.0, [])


def test_room_that_passes_in_one_code_is_cautioned_for_the_other() -> None:
    assert cleanout_place(front=18)["cautions"] == ["Where the UPC rules this room is too little."]
    assert cleanout_place(front=17)["cautions"] == []
    assert cleanout_place(front=18, code="upc")["result"] == "too little room in front"


def test_a_small_opening_fails_before_the_room_does() -> None:
    answer = cleanout_place(opening=2, front=3, code="upc")
    assert (answer["result"], answer["passes"]) == ("opening too small", False)
    assert "smaller (from memory)" in answer["cautions"][0]


def test_an_opening_larger_than_the_pipe_is_read_again() -> None:
    assert cleanout_place(opening=4)["cautions"] == ["The opening is larger than the pipe: read both again."]


def test_working_says_the_three_readings() -> None:
    assert cleanout_place(run=1500, front=20)["working"] == [
        "IPC 708.1.9, 3 in pipe: at least 18 in in front; there are 20 in",
        "opening as large as the pipe, 4 in at most: 3 in; it has 3 in",
        "by length: 125 ft / 100 ft, rounded up = 2",
    ]


def test_turns_go_by_the_code() -> None:
    assert "45 degrees" in turns_in_words("irc")
    assert "135 degrees" in turns_in_words("upc")


@given(run=st.floats(12, 12000), pipe=sizes, opening=st.floats(1, 15), front=st.floats(0, 240), code=codes)
def test_it_passes_where_both_are_reached(run: float, pipe: float, opening: float, front: float, code: str) -> None:
    answer = cleanout_place(run=run, pipe=pipe, opening=opening, front=front, code=code)
    assert answer["passes"] == (answer["result"] == "passes")
    assert front + answer["short"] >= least_front_for(pipe, code) - 1e-6
    if answer["passes"]:
        assert answer["short"] == pytest.approx(0, abs=1e-6)
    assert answer["least_opening"] <= min(pipe, 4)


@given(run=st.floats(12, 11000), more=st.floats(0, 1000))
def test_a_longer_run_never_has_fewer(run: float, more: float) -> None:
    assert cleanouts_by_length(run + more) >= cleanouts_by_length(run)
    assert run / cleanouts_by_length(run) <= 1200 + 1e-6
