"""Text for a spreadsheet: no cell that it would run as a formula, and the cells as CSV (RFC 4180).

Follows the OWASP guidance on CSV injection. A spreadsheet takes for a formula what starts with ``=``, ``+``, ``-`` or
``@``, in full width too, and some drop the spaces, tabs and line ends before it. One that is set to another separator
cuts a cell at ``;``, at a tab or at a line end, so what stands behind those counts as a start as well.

The page of records does the same in script (``browser/script/shared/2-lines.js``); a test holds the two together.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

_UNSEEN = '\\0- "\\x7f-\\xa0\\xad\\u061c\\u1680\\u180e\\u2000-\\u200f\\u2028-\\u202f\\u205f-\\u206f\\u3000\\ufeff'
_SIGNS = "=+@＝＋－＠﹦﹢﹣﹫-"
_FIGURE = "[+-] *[0-9][0-9 .,/⁄½¼¾⅛⅜⅝⅞]*[A-Za-z0-9_\"'°′″% ]*(?:\\Z|[;\\t\\r\\n])"
_FORMULA = re.compile(f"(\\A|[;\\t\\r\\n])([{_UNSEEN}]*)(?=[{_SIGNS}])(?!{_FIGURE})")
_TO_QUOTE = re.compile('[",;\t\r\n]')


def cell_text(text: str) -> str:
    r"""The text as a cell may hold it: ``'`` before what a spreadsheet would run. Figures stay figures.

    >>> cell_text("=cmd|' /C calc'!A0"), cell_text("\n +SUM(A1)"), cell_text("rods;=1+1"), cell_text("-1/8 in")
    ("'=cmd|' /C calc'!A0", "'\n +SUM(A1)", "rods;'=1+1", '-1/8 in')
    """
    marked = _FORMULA.sub(r"\1'\2", text)
    return f"'{marked}" if marked[:1] in ("\t", "\r", "\n") else marked


def csv_text(rows: Iterable[Iterable[object]]) -> str:
    r"""Rows as CSV: texts by :func:`cell_text`, figures and days as they are written.

    >>> csv_text([("rod; 8 ft", -2.5, "@home")])
    '"rod; 8 ft",-2.5,\'@home\r\n'
    """
    return "".join(f"{','.join(map(_cell, row))}\r\n" for row in rows)


def _cell(given: object) -> str:
    text = cell_text(given) if isinstance(given, str) else str(given)
    quoted = text.replace('"', '""')
    return f'"{quoted}"' if _TO_QUOTE.search(text) else text
