"""Scripts written by hand: their pieces joined in the order of their names, each script in a scope of its own."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from build_tools.browser.in_script import data_in_script
from build_tools.browser.shorten import shorter

SCRIPTS = Path(__file__).parent / "script"
PIECES = SCRIPTS / "form"
WORDS = "{WORDS}"
"""Stands in a script for the words that it says."""


def joined(*folders: str, say: Mapping[str, str] | None = None) -> str:
    """The script of one folder or several, one after another, with its words, short for a phone.

    >>> joined("look").startswith("(()=>{")
    True
    """
    whole = of_folders(*folders)
    return shorter(whole if say is None else whole.replace(WORDS, data_in_script(say), 1))[0]


def of_folders(*folders: str) -> str:
    """The same as it is written, its words still to come."""
    pieces = [path for folder in folders for path in sorted((SCRIPTS / folder).glob("*.js"))]
    return f'(() => {{\n"use strict";\n{"".join(path.read_text(encoding="utf-8") for path in pieces)}}})();\n'


def single(name: str) -> str:
    """A script of one file."""
    return shorter((SCRIPTS / f"{name}.js").read_text(encoding="utf-8"))[0]
