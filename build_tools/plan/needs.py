"""What tasks take, as data: hours, and materials that are not yet rounded to packs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from build_tools.book.diagnostics import Diagnostic
from calculators.declaration import Answer


@dataclass(frozen=True, slots=True)
class CutPiece:
    """Pieces of one length, in inches, that are cut for a task."""

    length: float
    count: int
    name: str


@dataclass(frozen=True, slots=True)
class MaterialNeed:
    """So much of a material for one task: ``number`` in the material's unit, not rounded, and how it was found.

    ``given`` are the inputs that the calculator took, as they are written. ``pieces`` are those of what is cut to
    length.
    """

    task: str
    material: str
    number: float
    how: str
    calculator: str = ""
    working: tuple[str, ...] = ()
    given: tuple[tuple[str, str], ...] = ()
    pieces: tuple[CutPiece, ...] = ()


@dataclass(slots=True)
class TakeOff:
    """Labour hours of all people together, and materials. ``times`` is how often the hours' measure goes into it."""

    hours: float
    times: float
    materials: list[MaterialNeed] = field(default_factory=list)
    diagnostics: list[Diagnostic] = field(default_factory=list)


def cut_pieces_of(answer: Answer, stock: str, times: int) -> Iterator[CutPiece]:
    """The pieces of an answer that come out of that stock.

    >>> [*cut_pieces_of({"pieces": [{"length": 60.0, "count": 2, "name": "rod", "stock": "rod"}]}, "rod", 3)]
    [CutPiece(length=60.0, count=6, name='rod')]
    """
    for row in answer.get("pieces", ()):
        if row["stock"] == stock:
            yield CutPiece(row["length"], round(row["count"]) * times, row.get("name") or row["piece"])


def all_needs(take_offs: dict[str, TakeOff]) -> Iterator[MaterialNeed]:
    """Every line of every task."""
    for made in take_offs.values():
        yield from made.materials
