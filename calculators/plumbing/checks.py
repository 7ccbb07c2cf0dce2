"""Measured distances of plumbing against the code, as the rows of an answer. Inches."""

from __future__ import annotations

from calculators.declaration import Output
from calculators.writing import TAPE, near, tape

CHECKS = Output(
    "checks",
    "Checks",
    "rows",
    columns=(
        Output("what", "Distance", "text"),
        Output("measured", "Measured", "length", "in", step=1 / 16, rounds="tape"),
        Output("limit", "Limit", "text"),
        Output("clause", "Clause", "text"),
        Output("result", "Result", "text"),
    ),
)


def at_most(what: str, measured: float, most: float, clause: str) -> dict[str, object]:
    """A row of the answer for a figure that has an upper limit. Inches.

    >>> at_most("length", 50, 42, "UPC Table 1002.2")["result"]
    'over by 8 in'
    """
    result = f"over by {tape(measured - most)}" if measured > most + near(most) else "passes"
    return {"what": what, "measured": measured, "limit": f"{tape(most)} or less", "clause": clause, "result": result}


def at_least(what: str, measured: float, least: float, clause: str) -> dict[str, object]:
    """A row of the answer for a figure that has a lower limit. Inches.

    >>> at_least("length", 2, 3, "IPC 909.3")["result"]
    'short by 1 in'
    """
    result = f"short by {tape(least - measured)}" if measured < least - near(least) else "passes"
    return {"what": what, "measured": measured, "limit": f"{tape(least)} or more", "clause": clause, "result": result}


def check(what: str, measured: float, least: float, most: float, clause: str) -> dict[str, object]:
    """One row of the answer. A most of 0 is no upper limit. Inches.

    >>> check("left side", 14.5, 15, 0, "IPC 405.3.1")["result"]
    'short by 1/2 in'
    """
    limit = f"{tape(least)} or more"
    if most > 0:
        limit = f"{tape(least)} to {tape(most)}"
    result = "passes"
    if measured < least - TAPE:
        result = f"short by {tape(least - measured)}"
    elif most > 0 and measured > most + TAPE:
        result = f"over by {tape(measured - most)}"
    return {"what": what, "measured": measured, "limit": limit, "clause": clause, "result": result}


def result_of(rows: list[dict[str, object]]) -> str:
    """Whether every row passes, in words.

    >>> result_of([{"result": "passes"}, {"result": "short by 1 in"}])
    'does not pass'
    """
    return "passes" if len([row for row in rows if row["result"] != "passes"]) == 0 else "does not pass"
