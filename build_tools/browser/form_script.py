"""Scripts written by hand: their pieces joined in the order of their names, each script in a scope of its own."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

from build_tools.browser.in_script import data_in_script
from build_tools.browser.shorten import shorter

SCRIPTS = Path(__file__).parent / "script"
PIECES = SCRIPTS / "form"
WORDS = "{WORDS}"
"""Stands in a script for the words that it says."""
BASE = ("elements/make", "elements/button")
FORM = (*BASE, *(f"elements/{name}" for name in ("later", "load", "tell", "memory", "ways", "pick")), "figures", "form")
ENTRIES = (*(f"elements/{name}" for name in ("ways", "clock")), "times")
STEPS = tuple(f"elements/{name}" for name in ("later", "load", "memory", "pick", "when"))
FOLDERS = {
    "steps": (*BASE, *STEPS, *ENTRIES, "database", "limits", "figures/1-bare", "figures/2-shown", "steps"),
    "enter": (
        "elements/make",
        "elements/local-time",
        *ENTRIES,
        "limits/1-limits",
        "figures/1-bare",
        "figures/3-typed",
        "enter",
    ),
    "before": (*BASE, "elements/memory", "before"),
    "walk": ("walk",),
    "record": ("elements/local-time", "times", "shared", "record"),
    "records": (*BASE, "elements/local-time", "times", "shared", "merging", "database", "records"),
    "load": (*BASE, "elements/tell", "elements/when", "load"),
}
"""Scripts of the work on site, and what they are joined from: folders and pieces. What scripts share stands in each."""
JOINED = (FORM, ("look",), ("offline",), ("page",), ("search",), *FOLDERS.values())
SINGLE = ("find", "head", "menu", "offline_off")


def pieces(*folders: str, scripts: Path = SCRIPTS) -> list[Path]:
    """The pieces that a script is joined from, in their order: all of a folder, or a piece named by itself."""
    return [path for each in folders for path in (sorted((scripts / each).glob("*.js")) or [scripts / f"{each}.js"])]


def joined(*folders: str, say: Mapping[str, str] | None = None) -> str:
    """The script of one folder or several, one after another, with its words, short for a phone.

    >>> joined("look").startswith("(()=>{")
    True
    """
    short = _short()[folders]
    return short if say is None else short.replace(WORDS, data_in_script(say), 1)


def of_folders(*folders: str) -> str:
    """The same as it is written, its words still to come."""
    return f'(() => {{\n"use strict";\n{_text(pieces(*folders))}}})();\n'


def steps_and_forms(say: Mapping[str, str]) -> str:
    """The scripts of steps and forms as one, with the words of the steps: what both use stands in it once."""
    return _short()["steps-form",].replace(WORDS, data_in_script(say), 1)


def _steps_and_forms() -> str:
    forms, steps = pieces(*FORM), pieces(*FOLDERS["steps"])
    shared = [path for path in forms if path in steps]
    parts = [
        _text(shared),
        *(f"(() => {{\n{_text([path for path in each if path not in shared])}}})();\n" for each in (forms, steps)),
    ]
    return f'(() => {{\n"use strict";\n{"".join(parts)}}})();\n'


def _text(paths: Iterable[Path]) -> str:
    return "".join(path.read_text(encoding="utf-8") for path in paths)


def single(name: str) -> str:
    """A script of one file."""
    return _short()[name,]


@cache
def _short() -> dict[tuple[str, ...], str]:
    """Every script of the site made short, all in one run of the minifier."""
    written = {folders: of_folders(*folders) for folders in JOINED}
    written["steps-form",] = _steps_and_forms()
    written |= {(name,): (SCRIPTS / f"{name}.js").read_text(encoding="utf-8") for name in SINGLE}
    return dict(zip(written, shorter(*written.values()), strict=True))
