"""Whether a laid floor is lawful, judged from its pieces alone and by nothing of the code that laid it.

Lengths are whole sixteenths of an inch. A board is a piece of wood with a tongue at its left end and a groove at its
right; a joint in the field needs both, and the walls take any end.
"""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise
from typing import NamedTuple


class Cut(NamedTuple):
    """A piece where it lies: row, from, to; and what it is: the board's number and length, from and to on it."""

    row: int
    left: int
    right: int
    board: int
    whole: int
    start: int
    end: int


class Wanted(NamedTuple):
    """What is lawful: distances in sixteenths."""

    apart: int
    in_line: int
    stair: int
    least: int
    kerf: int


def faults(cuts: list[Cut], walls: list[tuple[int, int, int]], pile: dict[int, int], wanted: Wanted) -> list[str]:
    """Everything unlawful. ``walls`` are (row, from, to) of each stretch; ``pile`` is each board's length by number."""
    found = _covers(cuts, walls)
    joints: dict[int, list[int]] = defaultdict(list)
    for row, left, right in walls:
        pieces = sorted(cut for cut in cuts if cut.row == row and left <= cut.left < right)
        for one, other in pairwise(pieces):
            joints[row].append(one.right)
            if one.end != one.whole:
                found.append(f"row {row}: the saw's end of board {one.board} in the field")
            if other.start != 0:
                found.append(f"row {row}: the saw's start of board {other.board} in the field")
        if len(pieces) > 1 and min(piece.right - piece.left for piece in pieces) < wanted.least:
            found.append(f"row {row}: a piece shorter than {wanted.least}")
    return found + _boards(cuts, pile, wanted.kerf) + _joints(joints, wanted)


def _covers(cuts: list[Cut], walls: list[tuple[int, int, int]]) -> list[str]:
    found = []
    left_over = set(cuts)
    for row, left, right in walls:
        at = left
        for cut in sorted(cut for cut in cuts if cut.row == row and left <= cut.left < right):
            left_over.discard(cut)
            if cut.left != at:
                found.append(f"row {row}: open or overlapping at {at}")
            at = cut.right
        if at != right:
            found.append(f"row {row}: ends at {at}, the wall's gap is at {right}")
    return found + [f"row {cut.row}: a piece outside the floor" for cut in left_over]


def _boards(cuts: list[Cut], pile: dict[int, int], kerf: int) -> list[str]:
    found = []
    by_board: dict[int, list[Cut]] = defaultdict(list)
    for cut in cuts:
        by_board[cut.board].append(cut)
        if pile.get(cut.board) != cut.whole:
            found.append(f"board {cut.board} of {cut.whole} is not in the pile")
        if not 0 <= cut.start < cut.end <= cut.whole or cut.end - cut.start != cut.right - cut.left:
            found.append(f"board {cut.board}: {cut.start} to {cut.end} is no piece of it that fits there")
    for number, pieces in by_board.items():
        for one, other in pairwise(sorted(pieces, key=lambda piece: piece.start)):
            if other.start - one.end < kerf:
                found.append(f"board {number} is laid twice, or the saw took nothing")
    return found


def _joints(joints: dict[int, list[int]], wanted: Wanted) -> list[str]:
    found = []
    for row, places in joints.items():
        found += [
            f"row {row}: joint at {one} is {abs(one - other)} from one of the row before"
            for one in places
            for other in joints.get(row - 1, [])
            if abs(one - other) < wanted.apart
        ]
        found += [
            f"row {row}: H at {one}"
            for one in places
            for other in joints.get(row - 2, [])
            if abs(one - other) < wanted.in_line
        ]
        found += [
            f"row {row}: stair up to {d}"
            for a in joints.get(row - 3, [])
            for b in joints.get(row - 2, [])
            for c in joints.get(row - 1, [])
            for d in places
            if _is_stair([b - a, c - b, d - c], wanted)
        ]
    return found


def _is_stair(shifts: list[int], wanted: Wanted) -> bool:
    if not (all(shift > 0 for shift in shifts) or all(shift < 0 for shift in shifts)):
        return False
    return max(map(abs, shifts)) <= wanted.stair and max(shifts) - min(shifts) < wanted.in_line
