"""Drawings of calculators as SVG, at build time. `build_tools/browser/script/draw.js` writes the same on the page.

Both write out what `calculators.drawing_layout` laid out, so that they cannot differ in more than the letters of XML.
"""

from __future__ import annotations

import json
from functools import lru_cache
from html import escape
from typing import Any

import drawsvg
from markupsafe import Markup

from build_tools.book.calls import CallResult
from calculators.declaration import Sheet
from calculators.drawing_layout import lay_out

KEY = "\ue000"
"""Stands for the key in what is remembered; no text holds it."""
TONES = ("paper", "air", "plastic", "steel", "solid")
"""Fills that the style sheet gives; ``none`` is none, and every other one is a hatch."""


def svg(sheet: Sheet, key: str) -> str:
    """The drawing as an SVG element. ``key`` begins every id within, so it must be used once on a page.

    >>> from calculators.drawing import rectangle, sheet
    >>> text = svg(sheet("A board", "A board 8 ft long.", [rectangle(0.0, 0.0, 96.0, 5.5, "wood", "cut")]), "board")
    >>> "A board 8 ft long." in text, 'url(#board-wood)' in text
    (True, True)
    """
    return _svg(json.dumps(sheet)).replace(KEY, key)


def drawn(called: CallResult, key: str) -> dict[str, Any] | None:
    """The drawing of a call for the templates: its title and the SVG; None where there is none."""
    draw = called.calculator.drawing
    if draw is None or called.answer is None:
        return None
    sheet = draw(called.values, called.answer)
    return {"title": sheet["title"], "svg": Markup(svg(sheet, key))}


@lru_cache(maxsize=500)
def _svg(sheet: str) -> str:
    """The SVG with a mark for the key: a book asks for the same sheet at many steps, and a preview again and again."""
    laid = lay_out(json.loads(sheet))
    width, height = laid["box"].split()[2:]
    names = {"role": "img", "aria_labelledby": f"{KEY}-title {KEY}-alt", "class": "drawing"}
    drawing = drawsvg.Drawing(width, height, viewBox=laid["box"], **names)
    drawing.append(drawsvg.Title(laid["title"], id=f"{KEY}-title"))
    drawing.append(drawsvg.Raw(f'<desc id="{KEY}-alt">{escape(laid["alt"])}</desc>'))
    for hatch in laid["hatches"]:
        drawing.append_def(_pattern(hatch))
    for mark in laid["marks"]:
        drawing.append(_element(mark))
    return str(drawing.as_svg(header="", skip_js=True, skip_css=True))


def _pattern(hatch: dict[str, Any]) -> Any:
    width, height = hatch["width"], hatch["height"]
    tile = drawsvg.Pattern(width, height, id=f"{KEY}-{hatch['name']}", patternUnits="userSpaceOnUse")
    tile.append(drawsvg.Path(d=f"M0 0H{width}V{height}H0Z", class_="in-paper"))
    tile.append(drawsvg.Path(d=hatch["d"], class_="hatch"))
    return tile


def _element(mark: dict[str, Any]) -> Any:
    if mark["kind"] == "text":
        turned = {"transform": mark["turn"]} if mark["turn"] else {}
        return drawsvg.Text(mark["text"], None, mark["x"], mark["y"], text_anchor=mark["anchor"], **turned)
    filled = _fill(mark["fill"])
    look = " ".join(("on-" + mark["look"], filled.pop("class", ""))).strip()
    if mark["kind"] == "circle":
        return drawsvg.Circle(mark["cx"], mark["cy"], mark["r"], class_=look, **filled)
    return drawsvg.Path(d=mark["d"], class_=look, **filled)


def _fill(fill: str) -> dict[str, str]:
    if fill in TONES:
        return {"class": f"in-{fill}"}
    return {"fill": "none" if fill == "none" else f"url(#{KEY}-{fill})"}
