"""The script of the live forms: its pieces joined in the order of their names, in one scope of their own."""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

PIECES = Path(__file__).parent / "script" / "form"
_COMMENTS = re.compile(r"^[ ]*(?://.*|/\*\*.*\*/)\n", re.MULTILINE)
_INDENT = re.compile(r"^[ ]+", re.MULTILINE)


@lru_cache
def form_script() -> str:
    """The whole script, without the lines that are comments: a phone does not read them."""
    pieces = "".join(path.read_text(encoding="utf-8") for path in sorted(PIECES.glob("*.js")))
    return f'(() => {{\n"use strict";\n{_INDENT.sub("", _COMMENTS.sub("", pieces))}}})();\n'
