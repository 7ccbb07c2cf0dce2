"""QR codes (ISO/IEC 18004) as drawings that stand inside a page."""

from __future__ import annotations

from functools import lru_cache
from html import escape

import segno
from markupsafe import Markup

QUIET = 4
"""The white margin in modules that the standard asks for; a camera needs it to find the code."""


@lru_cache(maxsize=4096)
def qr_svg(text: str, label: str, error: str = "q") -> Markup:
    """The code of a text as SVG that takes the size of its box: black on white in every look of the page.

    ``label`` is what a screen reader says of it. ``error`` is how much may be dirty or torn: ``l`` 7 %, ``m`` 15 %,
    ``q`` 25 %, ``h`` 30 % of the words of the code.

    >>> str(qr_svg("https://book.example/", "The book"))[:98]
    '<svg class="qr" viewBox="0 0 37 37" shape-rendering="crispEdges" role="img" aria-label="The book">'
    """
    code = segno.make_qr(text, error=error, boost_error=False)
    side = code.symbol_size(border=QUIET)[0]
    path = "".join(_row(y + QUIET, row) for y, row in enumerate(code.matrix))
    return Markup(
        f'<svg class="qr" viewBox="0 0 {side} {side}" shape-rendering="crispEdges" role="img" '
        f'aria-label="{escape(label)}">'
        f'<path fill="#fff" d="M0 0h{side}v{side}H0z"/><path fill="#000" d="{path}"/></svg>'
    )


def _row(y: int, row: bytearray) -> str:
    """The dark runs of one row, each a box one module high."""
    parts, x = [], 0
    while x < len(row):
        end = x
        while end < len(row) and row[end]:
            end += 1
        if end > x:
            parts.append(f"M{x + QUIET} {y}h{end - x}v1h-{end - x}z")
        x = end + 1
    return "".join(parts)
