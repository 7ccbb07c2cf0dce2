"""A laid room in words and rows: the list of boards row by row, and the list of cuts."""

from __future__ import annotations

from typing import Any

from calculators.flooring.racking.pile import SIXTEENTHS, Piece
from calculators.flooring.racking.room import LaidRun, Layout
from calculators.flooring.racking.rows import Band
from calculators.writing import fraction


def tape(sixteenths: int) -> str:
    """A length as the tape reads it, without the unit.

    >>> tape(556)
    '34-3/4'
    """
    return fraction(sixteenths / SIXTEENTHS, 1 / SIXTEENTHS, "nearest")


def row_list(layout: Layout, bands: list[Band]) -> list[dict[str, Any]]:
    """One line a run: the row's number, its length, and its pieces from left to right; cut ones are marked.

    For the drawing each line also has ``top`` and ``bottom`` down the plan, ``start``, ``joints`` and ``sawn`` (the
    first and the last piece, whether the saw touched it), in inches.
    """
    return [
        {
            "row": laid.run.row + 1,
            "length": laid.run.length / SIXTEENTHS,
            "pieces": ", ".join(_piece(piece) for piece in laid.pieces),
            "top": bands[laid.run.row].top,
            "bottom": bands[laid.run.row].bottom,
            "start": laid.run.start / SIXTEENTHS,
            "joints": [joint / SIXTEENTHS for joint in laid.joints],
            "sawn": [laid.pieces[0].is_cut, laid.pieces[-1].is_cut],
        }
        for laid in layout.laid
    ]


def _piece(piece: Piece) -> str:
    return tape(piece.laid) if not piece.is_cut else f"{tape(piece.laid)} (cut from {tape(piece.length)})"


def cut_list(layout: Layout) -> list[dict[str, Any]]:
    """Every cut piece in the order of laying: the row, the board it comes from, its length, and which end is sawn."""
    found = []
    for laid in layout.laid:
        for at, piece in enumerate(laid.pieces):
            if piece.is_cut:
                found.append(
                    {
                        "row": laid.run.row + 1,
                        "board": piece.length / SIXTEENTHS,
                        "cut": piece.laid / SIXTEENTHS,
                        "place": _place(laid, at),
                        "sawn": _sawn(piece),
                    }
                )
    return found


def _place(laid: LaidRun, at: int) -> str:
    if len(laid.pieces) == 1:
        return "the whole run"
    return "starts the row" if at == 0 else "ends the row"


def _sawn(piece: Piece) -> str:
    if piece.start > 0 and piece.end < piece.length:
        return "both ends"
    return "left end" if piece.start > 0 else "right end"


def closest(layout: Layout) -> int:
    """The least distance between the joints of neighbouring rows; 0 where there are none."""
    joints: dict[int, list[int]] = {}
    for laid in layout.laid:
        joints.setdefault(laid.run.row, []).extend(laid.joints)
    apart = [abs(one - other) for row, places in joints.items() for one in places for other in joints.get(row - 1, [])]
    return min(apart, default=0)
