"""The boards at hand while a room is laid: those open before the racker, the offcuts, and the bundles still shut."""

from __future__ import annotations

from dataclasses import dataclass, field

from calculators.flooring.racking.pile import Board, Piece


@dataclass(slots=True)
class Stock:
    """What is left to lay from.

    ``boards`` are whole, in the order in which bundles are opened; ``window`` sixteenths of them lie open. ``mean`` is
    the average length of the pile as it came.
    ``starts`` are offcuts that keep the board's right end and begin a row at its left wall; ``ends`` keep the left end
    and finish one.
    """

    boards: list[Board]
    window: int
    mean: float
    starts: list[Piece] = field(default_factory=list)
    ends: list[Piece] = field(default_factory=list)

    def open_boards(self, every: bool = False) -> dict[int, list[Board]]:
        """The open boards by length, the ones that have waited longest first."""
        found: dict[int, list[Board]] = {}
        lineal = 0
        for board in self.boards:
            if lineal > self.window and not every:
                break
            lineal += board.length
            found.setdefault(board.length, []).append(board)
        return found

    def mirrored(self) -> Stock:
        """The same boards as the room shows them from the other side: what started a row there ends it here."""
        starts, ends = ([piece.mirrored() for piece in pieces] for pieces in (self.ends, self.starts))
        return Stock(self.boards, self.window, self.mean, starts, ends)

    def take(self, pieces: list[Piece], least: int, kerf: int) -> None:
        """Take what a run was laid from, and keep the offcuts that are long enough to be laid again."""
        numbers = {piece.board for piece in pieces}
        self.boards = [board for board in self.boards if board.number not in numbers]
        before = {piece.board: piece for piece in (*self.starts, *self.ends)}
        self.starts = [piece for piece in self.starts if piece.board not in numbers]
        self.ends = [piece for piece in self.ends if piece.board not in numbers]
        for piece in pieces:
            had = before.get(piece.board, Piece(piece.board, 0, piece.length, piece.length))
            right = Piece(piece.board, piece.end + kerf, had.end, piece.length)
            left = Piece(piece.board, had.start, piece.start - kerf, piece.length)
            if had.end == piece.length and right.laid >= least:
                self.starts.append(right)
            if had.start == 0 and left.laid >= least:
                self.ends.append(left)

    def take_chain(self, rows: list[list[Piece]], items: list[Piece], least: int, kerf: int) -> None:
        """Take the boards and offcuts of rows that were cut from one chain; what the last one leaves is kept."""
        numbers = {item.board for item in items}
        self.boards = [board for board in self.boards if board.number not in numbers]
        self.starts = [piece for piece in self.starts if piece.board not in numbers]
        self.ends = [piece for piece in self.ends if piece.board not in numbers]
        last = items[-1]
        at = max(piece.end for row in rows for piece in row if piece.board == last.board) + kerf
        if last.end == last.length and last.end - at >= least:
            self.starts.append(Piece(last.board, at, last.end, last.length))
