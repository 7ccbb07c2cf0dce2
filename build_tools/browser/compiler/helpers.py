"""The helpers of ``script/python.js``: what Python does and script does not."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from build_tools.browser.compiler.sources import Name

PYTHON = "python"
"""Stands for the module that the helpers are in."""
FILE = Path(__file__).parents[1] / "script" / "python.js"


@cache
def helpers() -> dict[Name, tuple[str, frozenset[Name]]]:
    """Each helper with its script and the others that it uses; one stands apart from the next by an empty line."""
    parts = FILE.read_text(encoding="utf-8").split("\n\n")
    named = {_words(part)[0]: part for part in parts}
    uses = {name: {word for word in _words(part) if word in named and word != name} for name, part in named.items()}
    return {_name(one): (part, frozenset(map(_name, uses[one]))) for one, part in named.items()}


def _name(word: str) -> Name:
    return (PYTHON, word.removeprefix("$"))


def _words(code: str) -> list[str]:
    """The names of helpers in a script, the first its own."""
    plain = "".join(sign if sign.isalnum() or sign in "$_" else " " for sign in code)
    return [word for word in plain.split() if word.startswith("$")]
