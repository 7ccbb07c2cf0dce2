"""Scripts written by hand: their pieces joined in the order of their names, each script in a scope of its own."""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

SCRIPTS = Path(__file__).parent / "script"
PIECES = SCRIPTS / "form"
_COMMENTS = re.compile(r"^[ ]*(?://.*|/\*\*.*\*/)\n", re.MULTILINE)
_INDENT = re.compile(r"^[ ]+", re.MULTILINE)


@lru_cache
def joined(folder: str) -> str:
    """The script of a folder (``form``, ``search``), without its comments: a phone does not read them."""
    return of_folders(folder)


def of_folders(*folders: str) -> str:
    """One script of several folders, one after another."""
    pieces = [path for folder in folders for path in sorted((SCRIPTS / folder).glob("*.js"))]
    return f'(() => {{\n"use strict";\n{_bare("".join(path.read_text(encoding="utf-8") for path in pieces))}}})();\n'


def form_script() -> str:
    """The script of the live forms."""
    return joined("form")


@lru_cache
def single(name: str) -> str:
    """A script of one file, in the same way."""
    return _bare((SCRIPTS / f"{name}.js").read_text(encoding="utf-8"))


def _bare(text: str) -> str:
    return _INDENT.sub("", _COMMENTS.sub("", text))
