"""The boards that a room is laid from, and the pieces cut from them. Lengths are whole sixteenths of an inch."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

SIXTEENTHS = 16
GRAIN = 4
"""Sixteenths: drawn boards come in quarter inches."""
MODULUS = 2147483647
MULTIPLIER = 48271
"""The minimal standard generator of Park and Miller: the same numbers on every machine."""


@dataclass(frozen=True, slots=True)
class Board:
    """A board of the pile: tongue and groove at both ends."""

    number: int
    length: int


@dataclass(frozen=True, slots=True)
class Piece:
    """What is laid of a board: from ``start`` to ``end`` of its ``length``, measured from its left end.

    An end keeps its tongue or groove where it is the board's own: ``start`` 0 at the left, ``end`` the board's length
    at the right.
    """

    board: int
    start: int
    end: int
    length: int

    @property
    def laid(self) -> int:
        """How long the piece is."""
        return self.end - self.start

    @property
    def is_cut(self) -> bool:
        """Whether the saw touched it."""
        return self.start > 0 or self.end < self.length

    def mirrored(self) -> Piece:
        """The piece as the room shows it from the other side."""
        return Piece(self.board, self.length - self.end, self.length - self.start, self.length)


class Lot:
    """Numbers drawn by lot from a seed, each the same for the same seed."""

    def __init__(self, seed: int) -> None:
        self._state = (seed * 7919 + 12345) % (MODULUS - 1) + 1
        for _ in range(8):
            self.next()

    def next(self) -> float:
        """The next number, from 0 up to but not 1."""
        self._state = self._state * MULTIPLIER % MODULUS
        return (self._state - 1) / (MODULUS - 1)

    def shuffle(self, boards: list[Board]) -> list[Board]:
        """The boards in an order drawn by lot."""
        shuffled = list(boards)
        for at in range(len(shuffled) - 1, 0, -1):
            other = int(self.next() * (at + 1))
            shuffled[at], shuffled[other] = shuffled[other], shuffled[at]
        return shuffled


def drawn_pile(lineal: int, shortest: int, longest: int, average: int, seed: int) -> list[Board]:
    """Boards drawn by lot until they come to the lineal sixteenths asked for.

    Lengths are shortest + (longest - shortest) x u^k with u even between 0 and 1 and k chosen so that they average
    ``average``: many short boards and few long ones, as the common grades are delivered. This spread is common
    practice, no source.

    >>> pile = drawn_pile(16 * 12 * 1000, 9 * 16, 84 * 16, 33 * 16, 1)
    >>> round(sum(board.length for board in pile) / len(pile) / 16)
    33
    """
    lot = Lot(seed)
    spread = longest - shortest
    power = spread / (average - shortest) - 1 if spread > 0 else 1.0
    boards: list[Board] = []
    total = 0
    while total < lineal:
        drawn = shortest + spread * lot.next() ** power
        length = max(shortest, min(longest, int(drawn / GRAIN + 0.5) * GRAIN))
        boards.append(Board(len(boards) + 1, length))
        total += length
    return boards


def counted_pile(rows: Iterable[tuple[int, int]], seed: int) -> list[Board]:
    """The boards of a counted pile, length and count, in an order drawn by lot, as bundles are opened and shuffled."""
    boards = [Board(0, length) for length, count in rows for _ in range(count)]
    shuffled = Lot(seed).shuffle(boards)
    return [Board(number, board.length) for number, board in enumerate(shuffled, start=1)]
