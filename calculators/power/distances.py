"""Distances that are measured on the spot and held against limits. Inches."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Output
from calculators.declaring import Written, length

VERDICT = (Output("passes", "Passes", "yes-no"), Output("faults", "Faults", "count", step=1))


def distance(label: str, default: str) -> Written:
    """An input for a distance across a room or a yard."""
    return length(label, f"{default}, from 0 to 100 ft", "in")


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
