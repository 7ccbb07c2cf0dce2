"""The helpers of ``script/python.js``: what Python does and script does not."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from pathlib import Path

PYTHON = Path(__file__).parents[1] / "script" / "python.js"


def helpers(names: Iterable[str]) -> str:
    """The script of these helpers, and of those that they use in turn, in the order of the file.

    >>> helpers(["own"]).split("{")[0]
    'function $own(x, key) '
    """
    all_ = _helpers()
    wanted = {f"${name}" for name in names}
    waiting = set(wanted)
    while waiting:
        waiting = {used for name in waiting for used in _words(all_[name]) & all_.keys()} - wanted
        wanted |= waiting
    return "\n".join(code for name, code in all_.items() if name in wanted)


@cache
def _helpers() -> dict[str, str]:
    """Each helper by its name in script; one stands apart from the next by an empty line."""
    parts = PYTHON.read_text(encoding="utf-8").split("\n\n")
    return {next(word for word in _ordered(part) if word.startswith("$")): part for part in parts}


def _words(code: str) -> set[str]:
    return set(_ordered(code))


def _ordered(code: str) -> list[str]:
    return "".join(sign if sign.isalnum() or sign in "$_" else " " for sign in code).split()
