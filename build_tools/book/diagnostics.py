"""One shape for every mistake, the one that compilers use, so that editors can jump to it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby
from typing import Literal

from build_tools.book.printable import printable
from build_tools.book.suggestions import did_you_mean as did_you_mean

MOST = 50
"""Problems of a file that are printed; whoever has more begins with these."""


@dataclass(frozen=True, slots=True, order=True)
class Diagnostic:
    """A mistake in the book with its place; lines and columns count from 1.

    >>> print(Diagnostic("doors/hang.yaml", 4, 7, "error", "there is no tool 'drlil'", "did you mean 'drill'?"))
    doors/hang.yaml:4:7: error: there is no tool 'drlil'
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


def stops(diagnostics: Iterable[Diagnostic], *, strict: bool = False) -> bool:
    """Whether nothing can be made of a book with these: one is an error, or under ``strict`` there is any.

    >>> warning = Diagnostic("doors/hang.yaml", 4, 7, "warning", "nothing uses the tool 'plane'")
    >>> stops([warning]), stops([warning], strict=True)
    (False, True)
    """
    return any(strict or diagnostic.severity == "error" for diagnostic in diagnostics)


def listed(diagnostics: Iterable[Diagnostic]) -> list[Diagnostic]:
    """The diagnostics as they are printed: in order, and of each file the first fifty and the number of the rest."""
    shown: list[Diagnostic] = []
    for _, group in groupby(sorted(set(diagnostics)), key=lambda diagnostic: diagnostic.file):
        found = list(group)
        rest = found[MOST:]
        shown += found[:MOST]
        if rest:
            worst = min(diagnostic.severity for diagnostic in rest)
            at = rest[0]
            message = f"and {len(rest):,} more mistake{'' if len(rest) == 1 else 's'} from here on"
            shown.append(Diagnostic(at.file, at.line, at.column, worst, message))
    return shown


def count_line(diagnostics: Iterable[Diagnostic]) -> str:
    """The closing line of a run: how many errors and warnings.

    >>> count_line([])
    'no mistakes found'
    """
    listed = list(diagnostics)
    parts = []
    for severity in ("error", "warning"):
        number = sum(diagnostic.severity == severity for diagnostic in listed)
        if number:
            parts.append(f"{number} {severity}{'' if number == 1 else 's'}")
    return " and ".join(parts) if parts else "no mistakes found"
