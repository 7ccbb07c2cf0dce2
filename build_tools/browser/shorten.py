"""A script made shorter without changing what it does: no comments, no spaces that part nothing, plain letters."""

from __future__ import annotations

import re

TOKEN = re.compile(
    r"""(?P<text>"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*')"""
    r"""|(?P<note>//[^\n]*|/\*.*?\*/)"""
    r"""|(?P<pattern>(?<=[(,=:]) ?/(?![*/])(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\\n])+/[a-z]*)"""
    r"""|(?P<space>\s+)"""
    r"""|(?P<word>[\w$]+)"""
    r"""|(?P<sign>.)""",
    re.DOTALL,
)
COMPILER_NAMES = re.compile(r" = function flx_\w+ \(")


def shorter(script: str) -> str:
    """The script in fewer letters.

    Lines stay where a line's end may stand for a semicolon.

    >>> shorter("var a = 1;  // one\\nif (a > 0) {\\n  b = a - -a + ' x ' ;\\n}\\n")
    "var a=1;if(a>0){b=a- -a+' x ';}\\n"
    """
    script = COMPILER_NAMES.sub(" = function (", script)
    out: list[str] = []
    waiting = ""
    for found in TOKEN.finditer(script):
        if found["note"]:
            continue
        if found["space"]:
            waiting = "\n" if "\n" in found[0] or waiting == "\n" else " "
            continue
        part = found[0].strip()
        if waiting and out and _parts(out[-1], part, waiting):
            out.append(waiting)
        waiting = ""
        out.append(part)
    _drop_doubled(out)
    return re.sub(r"[^\x00-\x7f]", lambda found: f"\\u{ord(found[0]):04x}", "".join(out)) + "\n"


def _drop_doubled(parts: list[str]) -> None:
    """Take one of two brackets that stand around the same thing: ``((a > b))``."""
    open_: list[int] = []
    closes: dict[int, int] = {}
    for at, part in enumerate(parts):
        if part == "(":
            open_.append(at)
        elif part == ")" and open_:
            closes[open_.pop()] = at
    for at, close in closes.items():
        if closes.get(at - 1) == close + 1:
            parts[at] = parts[close] = ""


def _parts(before: str, after: str, space: str) -> bool:
    """Whether the space between two parts of a script has to stay."""
    last, first = before[-1], after[0]
    if space == "\n" and last not in ";{,(=&|?:+-*/<>!." and first not in "})]=&|?:.,;":
        return True
    if (last.isalnum() or last in "_$") and (first.isalnum() or first in "_$\\"):
        return True
    return last in "+-" and first == last
