"""Measured distances of plumbing against the code, as the rows of an answer. Inches."""

from __future__ import annotations

from calculators.declaration import Output, output_rows
from calculators.distances import against, limit_in_words

SIDE_TO_WALL = 15.0
SIDE_TO_FIXTURE = 30.0
FRONT = {"ipc-irc": 21.0, "upc": 24.0, "ada": 21.0}
"""The least distances of a water closet, by IPC 405.3.1, IRC R307.1 and UPC 402.5."""

CHECKS = output_rows(
    "checks",
    "Checks",
    Output("what", "Distance", "text"),
    Output("measured", "Measured", "length", "in", step=1 / 16, rounds="tape"),
    Output("limit", "Limit", "text"),
    Output("clause", "Clause", "text"),
    Output("result", "Result", "text"),
)


def side_limit(side_is: str) -> float:
    """The least distance from the centre to a wall's face, or to the centre of the next fixture. Inches.

    >>> [side_limit("wall"), side_limit("fixture")]
    [15.0, 30.0]
    """
    return SIDE_TO_FIXTURE if side_is == "fixture" else SIDE_TO_WALL


def check(what: str, measured: float, least: float, most: float, clause: str) -> dict[str, object]:
    """One row of the answer. A least or a most of 0 is no limit. Inches.

    >>> check("left side", 14.5, 15, 0, "IPC 405.3.1")["result"]
    'short by 1/2 in'
    """
    limit, result = limit_in_words(least, most), against(measured, least, most)
    return {"what": what, "measured": measured, "limit": limit, "clause": clause, "result": result}


def result_of(rows: list[dict[str, object]]) -> str:
    """Whether every row passes, in words.

    >>> result_of([{"result": "passes"}, {"result": "short by 1 in"}])
    'does not pass'
    """
    return "passes" if all(row["result"] == "passes" for row in rows) else "does not pass"
