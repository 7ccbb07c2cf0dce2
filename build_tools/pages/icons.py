"""The icons of the installed book, drawn from the sign of the site (a plumb bob on its line), and its manifest."""

from __future__ import annotations

import json
from functools import lru_cache
from io import BytesIO

from PIL import Image, ImageDraw

GREEN, WHITE = (13, 91, 56), (255, 255, 255)
SIGN = (
    ((4, 4), (28, 4), (28, 7), (17.5, 7), (17.5, 12), (21.7, 12), (23, 13.4), (23, 16.2), (16, 29)),
    ((16, 29), (9, 16.2), (9, 13.4), (10.3, 12), (14.5, 12), (14.5, 7), (4, 7)),
)
"""The sign's outline on a square of 32, as in ``favicon.svg``: its right half from the top, and its left back up."""
FINER = 8
"""Drawn that many times larger and scaled down, which makes smooth edges."""
SIZES = {"icon-180.png": (180, 1.0), "icon-192.png": (192, 1.0), "icon-512.png": (512, 1.0)}
MASKABLE = {"icon-mask-512.png": (512, 0.72)}
"""A device cuts a maskable icon to its own shape: the sign keeps to the middle (the inner 80 % is always seen)."""


@lru_cache
def icons() -> dict[str, bytes]:
    """File name to PNG."""
    return {name: _draw(size, scale) for name, (size, scale) in (SIZES | MASKABLE).items()}


def _draw(size: int, scale: float) -> bytes:
    large = size * FINER if size < 400 else size * 4
    image = Image.new("RGB", (large, large), GREEN)
    unit = large / 32 * scale
    shift = large * (1 - scale) / 2
    outline = [(x * unit + shift, y * unit + shift) for half in SIGN for x, y in half]
    ImageDraw.Draw(image).polygon(outline, fill=WHITE)
    written = BytesIO()
    image.resize((size, size), Image.Resampling.LANCZOS).save(written, "PNG", optimize=True)
    return written.getvalue()


def manifest(name: str, description: str, language: str) -> str:
    """The web app manifest: addresses are relative, so that the site may lie in any folder."""
    pngs = [_icon(f"assets/{file}", size, "any") for file, (size, _) in SIZES.items() if size != 180]
    pngs += [_icon(f"assets/{file}", size, "maskable") for file, (size, _) in MASKABLE.items()]
    return json.dumps(
        {
            "name": name,
            "short_name": name,
            "description": description,
            "lang": language,
            "start_url": "index.html",
            "scope": "./",
            "display": "standalone",
            "background_color": "#ffffff",
            "theme_color": "#ffffff",
            "icons": [{"src": "assets/favicon.svg", "sizes": "any", "type": "image/svg+xml"}, *pngs],
        },
        indent=1,
        ensure_ascii=False,
    )


def _icon(src: str, size: int, purpose: str) -> dict[str, str]:
    return {"src": src, "sizes": f"{size}x{size}", "type": "image/png", "purpose": purpose}
