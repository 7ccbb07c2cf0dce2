"""What is cut to length for a job: the pieces of all its tasks, packed into the lengths that are sold."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from math import ceil, floor
from typing import Any

from build_tools.book import quantities
from build_tools.book.calls import CallResult
from build_tools.book.model.base import Row
from build_tools.plan.needs import CutPiece, MaterialNeed
from build_tools.plan.plan import Plan

CUT_LIST = "cut-list"
"""The calculator that packs."""


@dataclass(frozen=True, slots=True)
class Cuts:
    """The cut list of one material: the answer of the calculator, and the sticks to buy, by length in inches.

    ``spare`` sticks, of the longest length that is bought, are among ``sticks``. ``joined`` are the pieces that are
    longer than every length that is sold: each is made of full sticks and a rest.
    """

    material: str
    called: CallResult
    sticks: dict[float, int]
    spare: int
    joined: tuple[tuple[str, CutPiece], ...]

    @property
    def answer(self) -> dict[str, Any]:
        """What the calculator found."""
        return self.called.answer or {}


def cuts_of(plan: Plan, material: str, needs: Collection[MaterialNeed]) -> Cuts | None:
    """The cut list of a material for these needs; None where one of them does not say its pieces."""
    entry = plan.context.book.materials[material].item
    stock = sorted({quantities.inches(plan.context.book, each) for each in entry.stock})
    needs = [need for need in needs if need.number]
    if not stock or not needs or not all(need.pieces for need in needs):
        return None
    pieces: list[Row] = []
    joined = []
    for need in needs:
        for piece in need.pieces:
            if piece.length > stock[-1]:
                joined.append((need.task, piece))
            pieces += _rows(piece, stock[-1], where(plan, need.task))
    rows: list[Row] = [{"length": f"{length} in"} for length in stock]
    called = plan.context.call_with(CUT_LIST, {"pieces": pieces, "stock": rows})
    if called.answer is None:
        return None
    sticks = {row["length"]: row["count"] for row in called.answer["order"]}
    part = quantities.percent(plan.context.book, entry.spare) if entry.spare else 0.0
    spare = ceil(round(sum(sticks.values()) * part / 100, 6))
    sticks[max(sticks)] += spare
    return Cuts(material, called, sticks, spare, tuple(joined))


def where(plan: Plan, task: str) -> str:
    """The place of a task as its pieces are marked: the space, and the dwelling where there are several."""
    job, language = plan.job, plan.context.book.language
    one = job.tasks[task]
    if one.space not in job.spaces:
        return job.dwellings[one.space].title.inside(language)
    space = job.spaces[one.space]
    names = [space.title.inside(language)]
    if space.dwelling and len(job.dwellings) > 1:
        names.append(job.dwellings[space.dwelling].title.inside(language))
    return ", ".join(names)


def _rows(piece: CutPiece, longest: float, place: str) -> list[Row]:
    """A piece as the calculator takes it; what is longer than the longest stick as full sticks and a rest."""
    name = f"{piece.name} ({place})"
    full = floor(piece.length / longest) if piece.length > longest else 0
    rest = piece.length - full * longest
    rows = [(longest, full * piece.count)] if full else []
    if rest >= 1:
        rows.append((rest, piece.count))
    return [{"length": f"{length} in", "count": str(count), "name": name} for length, count in rows]
