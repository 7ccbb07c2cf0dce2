"""A plain first-fit lay of a floor: what the racking search is measured against.

Each row starts with the first offcut that may stand there, goes on with the first board of the pile whose joint is
lawful, and its last board is cut at the wall; what falls off is kept when it is long enough to start a row. Boards are
tried in the pile's order, with all of the pile at hand. It knows the same rules and looks no further than the next
board.
"""

from __future__ import annotations

from calculators.flooring.racking.pile import Board, Piece
from calculators.flooring.racking.room import LaidRun, Layout
from calculators.flooring.racking.rows import Run
from calculators.flooring.racking.rules import Rules, blocked


def first_fit(runs: list[Run], boards: list[Board], rules: Rules) -> Layout:
    """The runs laid from the boards by first fit; ``stuck`` where no board fits any more."""
    pile = list(boards)
    offcuts: list[Piece] = []
    laid: list[LaidRun] = []
    joints: dict[int, list[int]] = {}
    for run in runs:
        before = [sorted(joints.get(run.row - back, [])) for back in (1, 2, 3)]
        marks = blocked(run.start, run.end, before, rules)
        pieces = _row(run, marks, pile, offcuts, rules)
        if not pieces:
            return Layout(laid, pile, offcuts, run)
        laid.append(LaidRun(run, pieces))
        joints.setdefault(run.row, []).extend(laid[-1].joints)
    return Layout(laid, pile, offcuts, None)


def _row(run: Run, marks: bytearray, pile: list[Board], offcuts: list[Piece], rules: Rules) -> list[Piece]:
    pieces: list[Piece] = []
    reach = 0
    most = run.length - rules.least
    for offcut in offcuts:
        if offcut.laid <= most and not marks[offcut.laid]:
            offcuts.remove(offcut)
            pieces.append(offcut)
            reach = offcut.laid
            break
    while True:
        rest = run.length - reach
        for board in pile:
            if board.length >= rest:
                pile.remove(board)
                pieces.append(Piece(board.number, 0, rest, board.length))
                if board.length - rest - rules.kerf >= rules.least:
                    offcuts.append(Piece(board.number, rest + rules.kerf, board.length, board.length))
                return pieces
            if reach + board.length <= most and not marks[reach + board.length]:
                pile.remove(board)
                pieces.append(Piece(board.number, 0, board.length, board.length))
                reach += board.length
                break
        else:
            return []
