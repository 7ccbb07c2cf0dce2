"""One shape for every mistake, the one that compilers use, so that editors can jump to it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Literal

from build_tools.book.printable import printable


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """A mistake in the book with its place; lines and columns count from 1.

    >>> print(Problem("procedures/doors/hang.yaml", 4, 7, "error", "there is no tool 'drlil'", "did you mean 'drill'?"))
    procedures/doors/hang.yaml:4:7: error: there is no tool 'drlil'
        did you mean 'drill'?
    """

    file: str
    line: int
    column: int
    severity: Literal["error", "warning"]
    message: str
    hint: str = ""

    def __str__(self) -> str:
        file, message, hint = printable(self.file), printable(self.message), printable(self.hint)
        text = f"{file}:{self.line}:{self.column}: {self.severity}: {message}"
        return f"{text}\n    {hint}" if hint else text


def did_you_mean(given: str, known: Iterable[str]) -> str:
    """A hint with the nearest known name, or an empty text when none is near.

    >>> did_you_mean("tile-flor", ["tile-floor", "toilet-set"])
    "did you mean 'tile-floor'?"
    """
    near = get_close_matches(given, list(known), n=1, cutoff=0.6)
    return f"did you mean '{near[0]}'?" if near else ""


def count_line(problems: Iterable[Problem]) -> str:
    """The closing line of a run: how many errors and warnings.

    >>> count_line([])
    'no mistakes found'
    """
    listed = list(problems)
    parts = []
    for severity in ("error", "warning"):
        number = sum(problem.severity == severity for problem in listed)
        if number:
            parts.append(f"{number} {severity}{'' if number == 1 else 's'}")
    return " and ".join(parts) if parts else "no mistakes found"
