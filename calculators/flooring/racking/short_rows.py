"""Rows of one length that are shorter than the longest boards: cut from one chain of boards, then put in order.

The boards are thought end to end, and the chain is sawn wherever a row is full. What is left of a board starts the next
row, and of a long one whole rows besides, so that little but the dust of the saw is lost. The rows are alike, so each
may lie anywhere among them: they are put in an order in which their joints are lawful. A row of one piece has no joint
and fits beside any other. All lengths in sixteenths of an inch.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice

from calculators.flooring.racking.pile import Lot, Piece
from calculators.flooring.racking.rules import Rules, blocked
from calculators.flooring.racking.stock import Stock

Row = list[Piece]

FEWEST = 6
"""So few rows of one length leave no choice of their order."""
MOST = 100
"""Rows that are cut and put in order at once."""
TRIES = 2
"""Chains that are cut until the rows of one can be put in order."""
SEEN = 30
"""How many of the open boards are tried at each place of the chain."""
WIDE = 8
"""How many beginnings of the chain are carried on."""
SHUT = 16.0
"""What a row costs whose joints leave no place for one in the rows beside it; each try weighs it once more. One that
leaves half of the places costs half of that."""
NOISE = 2.0
"""Lots drawn up to this, in sixteenths, part ways that are as good."""
CHOICES = 4
"""Rows that are tried at each place of the order."""
STEPS = 1500
"""Rows that may be tried in all before the chain is cut anew."""


@dataclass(frozen=True, slots=True)
class Chain:
    """A beginning of the chain: its boards and offcuts, the full rows, how far the open one reaches, what is lost.

    ``joints`` are those of the open row; its last piece ends at the last one.
    """

    items: tuple[Piece, ...] = ()
    rows: int = 0
    joints: tuple[int, ...] = ()
    lost: int = 0

    @property
    def reach(self) -> int:
        """How far the open row reaches; 0 where none is open."""
        return self.joints[-1] if self.joints else 0


def short_rows(
    length: int, count: int, before: list[list[int]], stock: Stock, rules: Rules, lot: Lot
) -> tuple[list[Row], list[Piece]] | None:
    """So many rows of that length in a lawful order, and the boards and offcuts that they are cut from.

    ``before`` has the joints of the rows before, the last row first, from the left end of these. None where no chain
    could be cut or put in order.
    """
    for attempt in range(TRIES):
        chain = _chain(length, count, stock, rules, lot, SHUT * (1 + attempt))
        if chain is None:
            return None
        rows = _sawn(chain, length, rules)[:count]
        ordered = _ordered(rows, length, before, rules, lot)
        if ordered is not None:
            return ordered, list(chain.items)
    return None


def _chain(length: int, count: int, stock: Stock, rules: Rules, lot: Lot, shut: float) -> Chain | None:
    """The chain of so many rows that loses least: a beam search, board by board."""
    best: Chain | None = None
    chains = [Chain()]
    while chains:
        ranked: dict[tuple[int, int], tuple[float, Chain]] = {}
        for chain in chains:
            for item in _open(chain, stock):
                longer = _carried_on(chain, item, length, rules)
                if longer is None:
                    continue
                if longer.rows >= count:
                    beyond = (longer.rows - count) * length + longer.reach
                    ended = Chain(longer.items, count, (), longer.lost + beyond)
                    best = ended if best is None or ended.lost < best.lost else best
                    continue
                rank = longer.lost + shut * _taken(longer.joints, length, rules) + lot.next() * NOISE
                place = (longer.rows, longer.reach)
                if place not in ranked or rank < ranked[place][0]:
                    ranked[place] = (rank, longer)
        chains = [chain for _, chain in sorted(ranked.values(), key=lambda each: each[0])[:WIDE]]
        chains = [chain for chain in chains if best is None or chain.lost < best.lost]
    return best


def _open(chain: Chain, stock: Stock) -> Iterator[Piece]:
    """What may come next: the offcuts, and one of each length of the boards that have waited longest."""
    taken = {item.board for item in chain.items}
    yield from (piece for piece in (*stock.starts, *stock.ends) if piece.board not in taken)
    boards = islice((board for board in stock.boards if board.number not in taken), SEEN)
    for board in {board.length: board for board in boards}.values():
        yield Piece(board.number, 0, board.length, board.length)


def _carried_on(chain: Chain, item: Piece, length: int, rules: Rules) -> Chain | None:
    """The chain with one board or offcut more, or None where that is not lawful."""
    pieces = _pieces(item, chain.reach, length, rules)
    if not pieces:
        return None
    laid = sum(piece.laid for piece in pieces)
    rows, reach = divmod(chain.reach + laid, length)
    joints = (*(chain.joints if rows == 0 else ()), reach) if reach else ()
    return Chain((*chain.items, item), chain.rows + rows, joints, chain.lost + item.laid - laid)


def _taken(joints: tuple[int, ...], length: int, rules: Rules) -> float:
    """Which part of the places of a joint in the next row these joints take.

    >>> rules = Rules(apart=96, in_line=16, stair=288, least=96, kerf=2)
    >>> _taken((), 376, rules), _taken((188,), 376, rules), round(_taken((96,), 376, rules), 2)
    (0.0, 1.0, 0.52)
    """
    free = 0
    at = rules.least
    for joint in joints:
        free += max(0, joint - rules.apart - at + 1)
        at = max(at, joint + rules.apart)
    free += max(0, length - rules.least - at + 1)
    return 1 - free / max(1, length - 2 * rules.least + 1)


def _pieces(item: Piece, reach: int, length: int, rules: Rules) -> Row:
    """What a board or an offcut gives when its row has come to ``reach``: the first piece goes on with that row.

    Each further piece begins a row of its own; the last one may leave it open. None of them is shorter than the least,
    and the joint is made of ends that the mill has cut. Nothing where the item does not go there.
    """
    own_right = item.end == item.length
    if reach and item.start > 0:
        return []
    if item.laid < length - reach:
        fits = rules.least <= item.laid <= length - reach - rules.least
        return [item] if own_right and fits else []
    pieces = []
    at, end = item.start, item.start + length - reach
    while end <= item.end:
        pieces.append(Piece(item.board, at, end, item.length))
        at, end = end + rules.kerf, end + rules.kerf + length
    at = max(at, item.end - length + rules.least)
    if own_right and item.end - at >= rules.least:
        pieces.append(Piece(item.board, at, item.end, item.length))
    return pieces


def _sawn(chain: Chain, length: int, rules: Rules) -> list[Row]:
    """The rows that the chain is sawn into."""
    rows: list[Row] = []
    row: Row = []
    reach = 0
    for item in chain.items:
        for piece in _pieces(item, reach, length, rules):
            row.append(piece)
            reach += piece.laid
            if reach == length:
                rows.append(row)
                row, reach = [], 0
    return rows


def _ordered(rows: list[Row], length: int, before: list[list[int]], rules: Rules, lot: Lot) -> list[Row] | None:
    """The rows in a lawful order: at each place the row that fits beside the fewest others, with ways back."""
    alike: dict[tuple[int, ...], list[Row]] = defaultdict(list)
    for row in rows:
        alike[_joints(row)].append(row)
    left = Counter({joints: len(same) for joints, same in alike.items()})
    near = {one: [two for two in left if _meet(one, two, rules)] for one in left}
    order: list[tuple[int, ...]] = []
    steps = 0

    def go_on() -> bool:
        nonlocal steps
        if len(order) == len(rows):
            return True
        marks = blocked(0, length, [*(sorted(joints) for joints in order[:-4:-1]), *before], rules)
        fit = [one for one in left if left[one] and not any(marks[joint] for joint in one)]
        hard = {one: (len(one) > 0, sum(left[two] for two in near[one]) + lot.next()) for one in fit}
        for one in sorted(fit, key=lambda each: hard[each], reverse=True)[:CHOICES]:
            steps += 1
            if steps > STEPS:
                return False
            left[one] -= 1
            order.append(one)
            if go_on():
                return True
            left[one] += 1
            order.pop()
        return False

    return [alike[joints].pop() for joints in order] if go_on() else None


def _joints(row: Row) -> tuple[int, ...]:
    places = []
    reach = 0
    for piece in row[:-1]:
        reach += piece.laid
        places.append(reach)
    return tuple(places)


def _meet(one: tuple[int, ...], other: tuple[int, ...], rules: Rules) -> bool:
    """Whether two rows with these joints cannot lie side by side."""
    return any(abs(a - b) < rules.apart for a in one for b in other)
