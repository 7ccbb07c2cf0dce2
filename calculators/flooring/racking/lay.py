"""Laying one run of boards so that every joint is lawful and as little as possible falls to the saw.

A beam search: from the left wall, a handful of the most promising beginnings is carried on board by board. At each
beginning the end is looked up, not searched: every sum of two open boards is known, so that two that fill the rest of
the run without a cut are found at once; else one board fills it, or is cut, and what falls off is weighed by whether a
later row can start with it. All lengths in sixteenths of an inch.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass

from calculators.flooring.racking.pile import Board, Lot, Piece
from calculators.flooring.racking.rules import Rules
from calculators.flooring.racking.stock import Stock

KEPT = 0.2
"""What an offcut that is kept costs, as a part of its length: it may yet be thrown away."""
LAST = 6
"""Over the last so many runs the cost of a kept offcut rises to the whole of its length: nothing comes after."""
SAW = 12.0
"""What a cut costs beside its dust: a walk to the saw."""
WAITED = 2.0
"""What laying the board that has waited longest is worth."""
BALANCE = 10.0
"""What a short board is worth while the open ones are shorter than the pile was, and a long one while they are longer.
Without it one sort is left over, and the last rows are nests of it."""
SHORT = 288
NEST = 4.0
"""What a board shorter than SHORT costs beside another one in a row: short boards are spread out."""
SPREAD = 0.03
"""What each sixteenth of distance to the joints of the row before is worth."""
FAR = 192
"""Sixteenths: joints farther apart than this are all alike."""
WIDE = 6
"""How many beginnings are carried on."""
TRIM = 4
"""A sum of two boards may be this much too long: it is trimmed at the wall."""


@dataclass(frozen=True, slots=True)
class Way:
    """A beginning of a run: how far it reaches, the lengths of whole boards in it, the offcut it starts with, its cost.

    ``joints`` are the places of its joints from the run's left end; the last one is where it ends.
    """

    reach: int
    lengths: tuple[int, ...]
    first: Piece | None
    joints: tuple[int, ...]
    cost: float


@dataclass(frozen=True, slots=True)
class Laid:
    """A run that is laid: its pieces from left to right, and what it cost."""

    pieces: list[Piece]
    cost: float


class Search:
    """The search for one run."""

    def __init__(
        self, length: int, marks: bytearray, near: list[int], stock: Stock, rules: Rules, later: int, lot: Lot
    ) -> None:
        self.length = length
        self.marks = marks
        self.near = near
        self.stock = stock
        self.rules = rules
        self.kept = 1 - (1 - KEPT) * min(later, LAST) / LAST
        self.lot = lot
        self.hard = False
        self.best: Laid | None = None
        self._open(False)

    def _open(self, every: bool) -> None:
        self.open = self.stock.open_boards(every)
        self.lengths = sorted(self.open)
        count = max(1, sum(len(boards) for boards in self.open.values()))
        places = {board.number: place for place, board in enumerate(self.stock.boards)}
        lineal = sum(length * len(boards) for length, boards in self.open.items())
        tilt = BALANCE * (1 - lineal / count / self.stock.mean)
        self.worth = {
            length: WAITED * (1 - places[boards[0].number] / count) + tilt * (1 - length / self.stock.mean)
            for length, boards in self.open.items()
        }
        self.pairs: dict[int, list[tuple[int, int]]] = {}
        for at, one in enumerate(self.lengths):
            for other in self.lengths[at:]:
                if one != other or len(self.open[one]) > 1:
                    self.pairs.setdefault(one + other, []).append((one, other))

    def run(self) -> Laid | None:
        """The best way found to lay the run, or None where there is none."""
        self._one_piece()
        self._beam(WIDE)
        if self.best is None:
            self.hard = True
            self._open(True)
            self._beam(WIDE * 4)
        return self.best

    # beginnings

    def _beam(self, wide: int) -> None:
        ways = self._first_ways()
        while ways:
            for way in ways:
                self._finish(way)
            following: dict[int, tuple[float, Way]] = {}
            for way in ways:
                self._carry_on(way, following)
            ranked = sorted(following.values(), key=lambda ranked: ranked[0])
            ways = [way for _, way in ranked[:wide]]

    def _first_ways(self) -> list[Way]:
        ways = [Way(0, (), None, (), 0.0)]
        for piece in self.stock.starts:
            reach = self._lawful_below(piece.laid)
            if reach >= self.rules.least:
                short = piece.laid - reach
                cost = short + (SAW if short else 0.0) - piece.laid * self.kept
                used = Piece(piece.board, piece.end - reach, piece.end, piece.length)
                ways.append(Way(reach, (), used, (reach,), cost))
        return ways + self._cut_starts() if self.hard else ways

    def _cut_starts(self) -> list[Way]:
        """Boards cut at the wall end so that their joint is lawful: the last resort."""
        ways = []
        for length in self.lengths:
            reach = self._lawful_below(length - self.rules.kerf)
            while reach >= self.rules.least:
                board = self.open[length][0]
                left = length - reach - self.rules.kerf
                cost = SAW + self.rules.kerf + (left * self.kept if left >= self.rules.least else left)
                ways.append(Way(reach, (), Piece(board.number, length - reach, length, length), (reach,), cost))
                reach = self._lawful_below(reach - 32)
        return ways

    def _lawful_below(self, reach: int) -> int:
        """The farthest lawful joint up to a place that leaves room for an end piece; 0 for none."""
        reach = min(reach, self.length - self.rules.least)
        while reach > 0 and self.marks[reach]:
            reach -= 1
        return max(reach, 0)

    def _carry_on(self, way: Way, following: dict[int, tuple[float, Way]]) -> None:
        most = self.length - self.rules.least
        for length in self.lengths:
            reach = way.reach + length
            if reach > most:
                break
            if self.marks[reach]:
                continue
            cost = way.cost - self.worth[length] + self._nest(way, length)
            rank = cost + self.lot.next() * WAITED
            if (reach not in following or rank < following[reach][0]) and self._has(way, length):
                carried = Way(reach, (*way.lengths, length), way.first, (*way.joints, reach), cost)
                following[reach] = (rank, carried)

    @staticmethod
    def _nest(way: Way, length: int) -> float:
        """What it costs that a short board comes to lie beside another."""
        return NEST if length < SHORT and way.lengths and way.lengths[-1] < SHORT else 0.0

    def _has(self, way: Way, length: int, more: int = 1) -> bool:
        """Whether so many more boards of a length lie open than the way has used."""
        boards = self.open[length]
        left = len(boards) - way.lengths.count(length) - more
        if way.first is not None and way.first.length == length and any(b.number == way.first.board for b in boards):
            left -= 1
        return left >= 0

    # ends

    def _finish(self, way: Way) -> None:
        rest = self.length - way.reach
        for sum_of_two in range(rest, rest + TRIM):
            for one, other in self.pairs.get(sum_of_two, ()):
                for first, last in ((one, other), (other, one)):
                    self._two(way, first, last, sum_of_two - rest)
        at = bisect_left(self.lengths, rest)
        for length in self.lengths[at:]:
            if way.reach > 0 and self._has(way, length):
                self._one(way, length, rest)
        for piece in self.stock.ends:
            if way.reach > 0 and piece.laid >= rest:
                used = Piece(piece.board, 0, rest, piece.length)
                cost = way.cost + (SAW if piece.laid > rest else 0.0) + piece.laid * (1 - self.kept) - rest
                self._offer(way, (), used, cost)

    def _two(self, way: Way, first: int, last: int, over: int) -> None:
        joint = way.reach + first
        if joint >= len(self.marks) or self.marks[joint]:
            return
        if not (self._has(way, first) and self._has(way, last, 2 if first == last else 1)):
            return
        cost = way.cost + over + (SAW if over else 0.0) - self.worth[first] - self.worth[last]
        cost += self._nest(way, first) + (NEST if first < SHORT and last < SHORT else 0.0)
        end = Piece(0, 0, last - over, last)
        self._offer(Way(joint, (*way.lengths, first), way.first, (*way.joints, joint), way.cost), (last,), end, cost)

    def _one(self, way: Way, length: int, rest: int) -> None:
        self._offer(way, (length,), Piece(0, 0, rest, length), way.cost + self._cut_cost(length - rest))

    def _cut_cost(self, over: int) -> float:
        """What it costs that so much is cut off a board's right end."""
        if over == 0:
            return 0.0
        left = over - self.rules.kerf
        return SAW + (self.rules.kerf + left * self.kept if left >= self.rules.least else over)

    def _one_piece(self) -> None:
        """The whole run from one piece."""
        nothing = Way(0, (), None, (), 0.0)
        for length in self.lengths[bisect_left(self.lengths, self.length) :]:
            self._one(nothing, length, self.length)
        for piece in (*self.stock.starts, *self.stock.ends):
            if piece.laid >= self.length:
                start = piece.end - self.length if piece.start == 0 else piece.start
                used = Piece(piece.board, start, start + self.length, piece.length)
                self._offer(nothing, (), used, piece.laid * (1 - self.kept) - self.length + SAW)

    def _offer(self, way: Way, last: tuple[int, ...], end: Piece, cost: float) -> None:
        """Take a finished run if it is the best so far; ``end`` with number 0 is an open board of the last length."""
        if self.best is not None and cost - SPREAD * FAR >= self.best.cost:
            return
        cost -= self._spread(way.joints)
        if self.best is not None and cost >= self.best.cost:
            return
        taken: dict[int, int] = {}
        skip = way.first.board if way.first is not None else 0
        pieces = [way.first] if way.first is not None else []
        for length in (*way.lengths, *last):
            board = self._next(length, taken, skip)
            pieces.append(Piece(board.number, 0, length, length))
        if last:
            pieces[-1] = Piece(pieces[-1].board, end.start, end.end, end.length)
        else:
            pieces.append(end)
        self.best = Laid(pieces, cost)

    def _next(self, length: int, taken: dict[int, int], skip: int) -> Board:
        boards = [board for board in self.open[length] if board.number != skip]
        at = taken.get(length, 0)
        taken[length] = at + 1
        return boards[at]

    def _spread(self, joints: tuple[int, ...]) -> float:
        """What the distances to the joints of the row before are worth, taken over the joints of this run."""
        if not self.near or not joints:
            return 0.0
        total = 0
        for joint in joints:
            at = bisect_left(self.near, joint)
            right = self.near[at] - joint if at < len(self.near) else FAR
            left = joint - self.near[at - 1] if at else FAR
            total += min(left, right, FAR)
        return SPREAD * total / len(joints)
