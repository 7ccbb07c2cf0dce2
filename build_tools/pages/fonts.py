"""The site's own fonts: Source Sans Pro from its package, cut down to the signs that the pages use, as WOFF2."""

from __future__ import annotations

import hashlib
import logging
from importlib.metadata import version
from importlib.resources import files
from pathlib import Path

from build_tools.book.files import write_whole

WEIGHTS = {"regular": "Regular", "semibold": "Semibold", "bold": "Bold"}
SIGNS = "".join(
    [
        *(chr(code) for code in range(0x20, 0x7F)),
        *(chr(code) for code in range(0xA0, 0x180)),
        "–—‘’“”„†•…‰′″‹›⁄€™−×÷±≤≥≠≈∞√°¼½¾⅛⅜⅝⅞→←↑↓□■✓",
    ]
)


def make_fonts(cache: Path) -> dict[str, bytes]:
    """File name to content. ``cache`` is a folder where cut fonts are kept between builds."""
    stamp = hashlib.sha256((SIGNS + version("font-source-sans-pro") + version("fonttools")).encode()).hexdigest()[:12]
    made = {}
    for name, weight in WEIGHTS.items():
        held = cache / f"{name}-{stamp}.woff2"
        if not held.is_file():
            write_whole(held, _cut(weight))
        made[f"crew-{name}.woff2"] = held.read_bytes()
    return made


def _cut(weight: str) -> bytes:
    from io import BytesIO

    from fontTools import subset

    logging.getLogger("fontTools").setLevel(logging.ERROR)
    options = subset.Options()
    options.flavor = "woff2"
    options.layout_features = ["kern", "liga", "tnum", "lnum", "frac", "mark", "mkmk", "locl"]
    source = files("font_source_sans_pro").joinpath("files", f"SourceSansPro-{weight}.ttf")
    with source.open("rb") as opened:
        font = subset.load_font(BytesIO(opened.read()), options)
    cutter = subset.Subsetter(options)
    cutter.populate(text=SIGNS)
    cutter.subset(font)
    written = BytesIO()
    subset.save_font(font, written, options)
    return written.getvalue()
