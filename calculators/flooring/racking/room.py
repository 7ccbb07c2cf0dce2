"""Laying a whole room, row by row, and what came of it. Lengths in sixteenths of an inch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from calculators.flooring.racking.lay import Search
from calculators.flooring.racking.pile import SIXTEENTHS, Board, Lot, Piece
from calculators.flooring.racking.rows import Run
from calculators.flooring.racking.rules import Rules, blocked
from calculators.flooring.racking.short_rows import FEWEST, MOST, short_rows
from calculators.flooring.racking.stock import Stock

WINDOW = 160 * 12 * SIXTEENTHS
"""What lies open before the racker: 160 ft of boards, about 50."""
GOOD = 0.0015
"""Waste, as a part of what is laid, that is not worth another attempt."""
CUTS = 1.5
"""So many cuts a row are not worth another attempt either."""
EFFORT = 160
"""Runs that may be laid in all attempts together; the first attempt always lays all."""


@dataclass(frozen=True, slots=True)
class LaidRun:
    """A run with its pieces from left to right."""

    run: Run
    pieces: list[Piece]

    @property
    def joints(self) -> list[int]:
        """Where piece meets piece, from the plan's left."""
        places = []
        reach = self.run.start
        for piece in self.pieces[:-1]:
            reach += piece.laid
            places.append(reach)
        return places


@dataclass(frozen=True, slots=True)
class Layout:
    """A laid room: its runs, the boards that stay whole, and where it stuck (None where all is laid)."""

    laid: list[LaidRun]
    left: list[Board]
    offcuts: list[Piece]
    stuck: Run | None

    @property
    def laid_length(self) -> int:
        """What the rows come to."""
        return sum(laid.run.length for laid in self.laid)

    def used(self, boards: list[Board]) -> list[Board]:
        """The boards of the pile that were laid or cut."""
        numbers = {piece.board for laid in self.laid for piece in laid.pieces}
        return [board for board in boards if board.number in numbers]

    def used_length(self, boards: list[Board]) -> int:
        """What the used boards came to as whole ones."""
        return sum(board.length for board in self.used(boards))


def lay_room(runs: list[Run], boards: list[Board], rules: Rules, seed: int, effort: int = EFFORT) -> Layout:
    """The runs laid in their order, each joint lawful beside those of the rows before.

    Laid again with other numbers drawn by lot, and the boards in another order, while a room is stuck or more than
    ``GOOD`` is wasted and the ``effort`` lasts; the best is kept. A large room is nearly always good at once. Where
    rows are short the dust of their cuts alone is more than that.
    """
    dust = rules.kerf * len(runs) / sum(run.length for run in runs)
    good = max(GOOD, CUTS * dust)
    best = _lay_once(runs, boards, rules, Lot(seed))
    effort -= len(runs)
    attempt = 1
    while effort > 0 and _waste(best, boards) > good:
        lot = Lot(seed + 1000003 * attempt)
        other = _lay_once(runs, lot.shuffle(boards) if best.stuck else boards, rules, lot)
        if (len(other.laid), -_waste(other, boards)) > (len(best.laid), -_waste(best, boards)):
            best = other
        effort -= len(runs)
        attempt += 1
    return best


def _waste(layout: Layout, boards: list[Board]) -> float:
    """What is thrown away as a part of what is laid; a room that is stuck wastes all."""
    return 1.0 if layout.stuck is not None else layout.used_length(boards) / layout.laid_length - 1


def _lay_run(
    run: Run, marks: bytearray, near: list[int], stock: Stock, rules: Rules, later: int, lot: Lot
) -> list[Piece] | None:
    """One run, searched from the left wall or, by lot, from the right one: both ends of a room get a like mix."""
    if lot.next() < 0.5:
        found = Search(run.length, marks, near, stock, rules, later, lot).run()
        return None if found is None else found.pieces
    turned = sorted(run.length - joint for joint in near)
    found = Search(run.length, marks[::-1], turned, stock.mirrored(), rules, later, lot).run()
    return None if found is None else [piece.mirrored() for piece in reversed(found.pieces)]


def _lay_once(runs: list[Run], boards: list[Board], rules: Rules, lot: Lot) -> Layout:
    mean = sum(board.length for board in boards) / max(1, len(boards))
    stock = Stock(list(boards), WINDOW, mean)
    laid: list[LaidRun] = []
    joints: dict[int, list[int]] = {}
    for alike in _alike(runs):
        rows = _lay_short(alike, _before(alike[0], joints), stock, rules, lot)
        for at, run in enumerate(alike):
            if rows is None:
                before = _before(run, joints)
                marks = blocked(0, run.length, before, rules)
                pieces = _lay_run(run, marks, before[0], stock, rules, len(runs) - 1 - len(laid), lot)
                if pieces is None:
                    return Layout(laid, stock.boards, [*stock.starts, *stock.ends], run)
                stock.take(pieces, rules.least, rules.kerf)
            else:
                pieces = rows[at]
            laid.append(LaidRun(run, pieces))
            joints.setdefault(run.row, []).extend(laid[-1].joints)
    return Layout(laid, stock.boards, [*stock.starts, *stock.ends], None)


def _alike(runs: list[Run]) -> Iterator[list[Run]]:
    """The runs in their order: those that fill row after row between the same walls, alone in their rows, together."""
    alone = Counter(run.row for run in runs)
    alike: list[Run] = []
    for run in runs:
        if alike and (alone[run.row] > 1 or run.ends != alike[0].ends or len(alike) == MOST):
            yield alike
            alike = []
        alike.append(run)
    if alike:
        yield alike


def _before(run: Run, joints: dict[int, list[int]]) -> list[list[int]]:
    """The joints of the three rows before, the last one first, from the left end of the run."""
    return [sorted(joint - run.start for joint in joints.get(run.row - back, [])) for back in (1, 2, 3)]


def _lay_short(
    alike: list[Run], before: list[list[int]], stock: Stock, rules: Rules, lot: Lot
) -> list[list[Piece]] | None:
    """Rows that are alike and shorter than the longest open board, from one chain; None where they are not."""
    if len(alike) < FEWEST or alike[0].length >= max(stock.open_boards(), default=0):
        return None
    found = short_rows(alike[0].length, len(alike), before, stock, rules, lot)
    if found is None:
        return None
    rows, items = found
    stock.take_chain(rows, items, rules.least, rules.kerf)
    return rows
