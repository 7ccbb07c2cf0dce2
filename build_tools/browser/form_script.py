"""Scripts written by hand: their pieces joined in the order of their names, each script in a scope of its own."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from build_tools.browser.in_script import data_in_script
from build_tools.browser.shorten import shorter

SCRIPTS = Path(__file__).parent / "script"
PIECES = SCRIPTS / "form"
WORDS = "{WORDS}"
"""Stands in a script for the words that it says."""
FOLDERS = {
    "steps": ("elements", "database", "times", "steps"),
    "before": ("elements", "before"),
    "walk": ("walk",),
    "record": ("times", "shared", "record"),
    "records": ("elements", "times", "shared", "database", "records"),
    "load": ("elements", "load"),
}
"""Scripts of the work on site, and the folders that they are joined from. What scripts share stands in each."""
JOINED = (("elements", "form"), ("look",), ("offline",), ("page",), ("search",), *FOLDERS.values())
SINGLE = ("find", "head", "menu", "offline_off")


def joined(*folders: str, say: Mapping[str, str] | None = None) -> str:
    """The script of one folder or several, one after another, with its words, short for a phone.

    >>> joined("look").startswith("(()=>{")
    True
    """
    short = _short()[folders]
    return short if say is None else short.replace(WORDS, data_in_script(say), 1)


def of_folders(*folders: str) -> str:
    """The same as it is written, its words still to come."""
    pieces = [path for folder in folders for path in sorted((SCRIPTS / folder).glob("*.js"))]
    return f'(() => {{\n"use strict";\n{"".join(path.read_text(encoding="utf-8") for path in pieces)}}})();\n'


def single(name: str) -> str:
    """A script of one file."""
    return _short()[name,]


@cache
def _short() -> dict[tuple[str, ...], str]:
    """Every script of the site made short, all in one run of the minifier."""
    written = {folders: of_folders(*folders) for folders in JOINED}
    written |= {(name,): (SCRIPTS / f"{name}.js").read_text(encoding="utf-8") for name in SINGLE}
    return dict(zip(written, shorter(*written.values()), strict=True))
