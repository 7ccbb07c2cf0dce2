"""From what is asked to a laid room: the plan turned to its rows, the rows, the pile, the layout, and what refuses."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import Any

from calculators.declaration import refuse
from calculators.flooring.board_layout import LEAST_ROOM, board_layout
from calculators.flooring.racking.pile import SIXTEENTHS, Board, counted_pile, drawn_pile
from calculators.flooring.racking.room import EFFORT, Layout, lay_room
from calculators.flooring.racking.rows import Band, Run, floor_at, runs
from calculators.flooring.racking.rules import Rules
from calculators.polygons import bounds
from calculators.shapes import plan_area_sq_ft
from calculators.writing import decimal, inches

MOST_AREA = 1500.0
"""Square feet: one room at a time."""
CUTS_TO_MEASURE = 400
"""Level cuts by which the floor of a plan is measured, to find shapes that lie over one another."""


@dataclass(frozen=True, slots=True)
class Racked:
    """A room that is laid: its rows, their runs, the pile, the layout."""

    bands: list[Band]
    runs: list[Run]
    boards: list[Board]
    layout: Layout

    @property
    def lineal(self) -> int:
        """What the rows come to, in sixteenths."""
        return sum(run.length for run in self.runs)


@dataclass(frozen=True, slots=True)
class Pile:
    """The pile that is asked for: counted rows of length and count, or what one is drawn by. Inches and percent."""

    counted: list[dict[str, float]]
    average: float
    shortest: float
    longest: float
    spare: float
    seed: int


REMEMBERED = 64
_LAID: dict[str, Racked] = {}


def rules_of(end_joint: float, in_line: float, stair: float, least_piece: float, kerf: float) -> Rules:
    """The rules in sixteenths from inches, each rounded to the safe side."""
    return Rules(_up(end_joint), _up(in_line), int(stair * SIXTEENTHS), _up(least_piece), _up(kerf))


def rack(
    plan: list[dict[str, Any]],
    gap: float,
    face_width: float,
    least_row: float,
    rules: Rules,
    pile: Pile,
    effort: int = EFFORT,
) -> Racked:
    """The room laid, or refused in words. The plan has the boards running along x.

    A room that was laid is remembered: a page, its drawing and the next preview ask for the same one.
    """
    key = repr((plan, gap, face_width, least_row, rules, pile, effort))
    if key not in _LAID:
        if len(_LAID) >= REMEMBERED:
            _LAID.clear()
        _LAID[key] = _rack(plan, gap, face_width, least_row, rules, pile, effort)
    return _LAID[key]


def _rack(
    plan: list[dict[str, Any]], gap: float, face_width: float, least_row: float, rules: Rules, pile: Pile, effort: int
) -> Racked:
    bands = rows_of(plan, gap, face_width, least_row)
    found = runs(plan, bands, gap)
    if len(found) == 0:
        refuse("room", f"with a gap of {inches(gap)} at each wall there is no room for a board")
    lineal = sum(run.length for run in found)
    boards = boards_of(pile, lineal)
    layout = lay_room(found, boards, rules, pile.seed, effort)
    if layout.stuck is not None:
        _refuse_stuck(layout, layout.stuck, boards, lineal, len(pile.counted) > 0)
    return Racked(bands, found, boards, layout)


def _up(length: float) -> int:
    """Inches as whole sixteenths, rounded up."""
    return ceil(length * SIXTEENTHS - 0.001)


def turned(room: list[dict[str, Any]], along: str) -> list[dict[str, Any]]:
    """The plan with the boards running along x, from its own corner; refuses shapes that lie over one another."""
    points = [point for shape in room for point in shape["points"]]
    left, top, right, bottom = bounds(points)
    swap = along == "down" or (along == "long" and bottom - top > right - left)
    placed = [
        {**shape, "points": [[y - top, x - left] if swap else [x - left, y - top] for x, y in shape["points"]]}
        for shape in room
    ]
    area = plan_area_sq_ft(placed)
    if area > MOST_AREA:
        refuse(
            "room", f"{decimal(area, 0)} sq ft is more than the {decimal(MOST_AREA, 0)} sq ft that this lays at once"
        )
    down = (right - left) if swap else (bottom - top)
    step = down / CUTS_TO_MEASURE
    cuts = [floor_at(placed, step * (at + 0.5)) for at in range(CUTS_TO_MEASURE)]
    seen = sum(end - start for spans in cuts for start, end in spans) * step / 144
    if abs(seen - area) > 0.02 * area:
        refuse(
            "room",
            f"shapes lie over one another: together they are {decimal(area, 1)} sq ft, as drawn {decimal(seen, 1)} sq "
            "ft. Give each its place with corners, as corners 20',5' 22'6\",5' 22'6\",10' 20',10'",
        )
    return placed


def rows_of(plan: list[dict[str, Any]], gap: float, face_width: float, least_row: float) -> list[Band]:
    """The rows from the starting wall to the other one, the first and the last shared out as the layout says."""
    _, _, right, bottom = bounds([point for shape in plan for point in shape["points"]])
    first = face_width
    if bottom >= LEAST_ROOM:
        first = board_layout(
            width_near=bottom,
            width_far=0.0,
            room_length=right,
            gap=gap,
            face_width=face_width,
            least_width=min(least_row, face_width),
            most_taper=0.5,
        )["first_near"]
    end = bottom - gap
    bands: list[Band] = []
    top = gap
    while top < end - 0.03:
        low = min(top + (face_width if bands else first), end)
        bands.append(Band(top, low))
        top = low
    return bands


def boards_of(pile: Pile, lineal: int) -> list[Board]:
    """The counted pile, or one drawn by lot that is ``spare`` percent longer than the rows."""
    if len(pile.counted) > 0:
        rows = [(int(row["length"] * SIXTEENTHS + 0.001), int(row["count"])) for row in pile.counted]
        return counted_pile(rows, pile.seed)
    if not pile.shortest < pile.average < pile.longest:
        refuse(
            "average_length",
            f"an average of {inches(pile.average)} does not lie between the shortest, {inches(pile.shortest)}, and the "
            f"longest, {inches(pile.longest)}",
        )
    lengths = [int(length * SIXTEENTHS + 0.001) for length in (pile.shortest, pile.longest, pile.average)]
    return drawn_pile(int(lineal * (1 + pile.spare / 100)), lengths[0], lengths[1], lengths[2], pile.seed)


def _refuse_stuck(layout: Layout, stuck: Run, boards: list[Board], lineal: int, counted: bool) -> None:
    """Say why the room cannot be laid: the pile has run out, or no joint is lawful."""
    row = stuck.row + 1
    whole = sum(board.length for board in boards)
    left = sum(board.length for board in layout.left)
    if left < lineal - layout.laid_length or len(layout.left) < 3:
        refuse(
            "pile" if counted else "spare",
            f"the pile, {decimal(whole / SIXTEENTHS / 12, 0)} ft, runs out in row {row}; the rows alone take "
            f"{decimal(lineal / SIXTEENTHS / 12, 0)} ft: give more boards",
        )
    refuse(
        "end_joint",
        f"no lawful joint was found in row {row} with the boards that are left: lessen the distance of end joints, or "
        "give a pile with other lengths",
    )
