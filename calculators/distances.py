"""Distances that are measured on the spot and held against limits. Inches."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Output
from calculators.declaring import InputAnnotation, length
from calculators.writing import near, tape

VERDICT = (Output("passes", "Passes", "yes-no"), Output("faults", "Faults", "count", step=1))


def distance(label: str, default: str) -> InputAnnotation:
    """An input for a distance across a room or a yard."""
    return length(label, f"{default}, from 0 to 100 ft", "in")


def limit_in_words(least: float, most: float) -> str:
    """The limits of a distance; a least or a most of 0 is none.

    >>> [limit_in_words(15, 0), limit_in_words(0, 24), limit_in_words(16, 18)]
    ['15 in or more', '24 in or less', '16 in to 18 in']
    """
    if most <= 0:
        return f"{tape(least)} or more"
    return f"{tape(least)} to {tape(most)}" if least > 0 else f"{tape(most)} or less"


def against(measured: float, least: float, most: float) -> str:
    """'passes', or by how much the distance misses its limits; a least or a most of 0 is none.

    >>> [against(14.99, 15, 0), against(14.5, 15, 0), against(20, 16, 18)]
    ['passes', 'short by 1/2 in', 'over by 2 in']
    """
    if measured < least - near(least):
        return f"short by {tape(least - measured)}"
    return f"over by {tape(measured - most)}" if 0 < most < measured - near(most) else "passes"


def outcome(row: dict[str, Any]) -> str:
    """The row's outcome in a word."""
    return "pass" if row["passes"] else "fail"


def failing(rows: list[dict[str, Any]]) -> list[str]:
    """What the rows that fail are of.

    >>> failing([{"what": "door", "passes": False}, {"what": "wall", "passes": True}])
    ['door']
    """
    return [row["what"] for row in rows if not row["passes"]]


def verdict(faults: list[str], good: str) -> str:
    """The verdict in words: ``good``, or what fails.

    >>> [verdict([], "passes"), verdict(["door", "wall"], "passes")]
    ['passes', 'fails: door, wall']
    """
    return good if len(faults) == 0 else "fails: " + ", ".join(faults)
