"""Cleanouts against the model codes: UPC 2021 707.9, IPC 708.1.9 and 708.1.1, and the older IPC 708.7 and 708.8.

The rows of 707.9 and 708.8 were read in public extracts; those of 708.1.5 and of the IRC are from memory.
"""

from __future__ import annotations

import pytest

from calculators.plumbing.cleanout_place import cleanout_place


@pytest.mark.parametrize(
    ("code", "pipe", "least"),
    [
        ("upc", 1.5, 18),
        ("upc", 2, 18),
        ("upc", 2.5, 24),
        ("upc", 4, 24),
        ("ipc", 3, 18),
        ("ipc", 6, 18),
        ("ipc", 8, 36),
        ("irc", 3, 18),
    ],
)
def test_room_in_front_goes_by_size_and_code(code: str, pipe: float, least: float) -> None:
    assert cleanout_place(pipe=pipe, opening=pipe, front=least, code=code)["passes"]
    assert not cleanout_place(pipe=pipe, opening=pipe, front=least - 0.25, code=code)["passes"]


@pytest.mark.parametrize(("pipe", "least"), [(1.5, 1.5), (3, 3), (4, 4), (6, 4), (8, 4)])
def test_the_opening_is_the_pipes_size_up_to_four_inches(pipe: float, least: float) -> None:
    assert cleanout_place(pipe=pipe, opening=least, front=36)["result"] == "passes"
    assert cleanout_place(pipe=pipe, opening=least - 0.25, front=36)["result"] == "opening too small"


@pytest.mark.parametrize(("feet", "count"), [(20, 1), (100, 1), (101, 2), (200, 2), (250, 3)])
def test_one_for_each_hundred_feet_or_part_of_it(feet: float, count: int) -> None:
    assert cleanout_place(run=feet * 12)["count"] == count
