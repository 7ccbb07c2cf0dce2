"""What is lawful for the joints of a row beside those of the rows before it. All lengths in sixteenths of an inch."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Rules:
    """The rules of a layout.

    ``apart``: the least distance of a joint to those of the next rows. ``in_line``: nearer than this two joints two
    rows apart are in line (an H), and shifts that differ by less than this are one shift. ``stair``: shifts up to this
    make a stair when four rows climb by them. ``least``: the shortest piece that is laid. ``kerf``: what a cut takes.
    """

    apart: int
    in_line: int
    stair: int
    least: int
    kerf: int


def blocked(start: int, end: int, before: list[list[int]], rules: Rules) -> bytearray:
    """For each place of a run, 1 where no joint may be; ``before`` has the joints of earlier rows, the last row first.

    Joints are sorted places on the plan; the answer counts from the run's start.

    >>> list(blocked(0, 8, [[4]], Rules(2, 1, 0, 1, 0)))
    [0, 0, 0, 1, 1, 1, 0, 0, 0]
    """
    marks = bytearray(end - start + 1)
    rows = [*before[:3], [], [], []]
    for joint in rows[0]:
        _mark(marks, joint - rules.apart + 1 - start, joint + rules.apart - 1 - start)
    if rules.in_line > 0:
        for joint in rows[1]:
            _mark(marks, joint - rules.in_line + 1 - start, joint + rules.in_line - 1 - start)
        for low, high in stair_ends(rows[0], rows[1], rows[2], rules):
            _mark(marks, low - start, high - start)
    return marks


def stair_ends(last: list[int], second: list[int], third: list[int], rules: Rules) -> list[tuple[int, int]]:
    """Where a joint would be the fourth step of a stair: its three shifts to one side and alike."""
    found = []
    for middle in second:
        for lower in _within(third, middle, rules.stair):
            first_shift = middle - lower
            if first_shift == 0:
                continue
            for upper in _within(last, middle + first_shift, rules.in_line - 1):
                shift = upper - middle
                if shift * first_shift <= 0 or abs(shift) > rules.stair:
                    continue
                low = max(shift, first_shift) - rules.in_line + 1
                high = min(shift, first_shift) + rules.in_line - 1
                if first_shift > 0:
                    low, high = max(low, 1), min(high, rules.stair)
                else:
                    low, high = max(low, -rules.stair), min(high, -1)
                if low <= high:
                    found.append((upper + low, upper + high))
    return found


def _within(joints: list[int], place: int, reach: int) -> list[int]:
    return joints[bisect_left(joints, place - reach) : bisect_right(joints, place + reach)]


def _mark(marks: bytearray, low: int, high: int) -> None:
    low, high = max(low, 0), min(high, len(marks) - 1)
    if low <= high:
        marks[low : high + 1] = b"\x01" * (high - low + 1)
