"""Plots of calculators as SVG: ink on paper, told apart by the kind of line and named where they end.

A plot is kept by what it is drawn from, so the library that draws is loaded only for one that is new.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Sequence
from functools import lru_cache
from html import escape
from importlib.metadata import version
from importlib.resources import files
from pathlib import Path
from typing import Any

from markupsafe import Markup

from build_tools.book.checks.context import Context
from build_tools.book.files import write_whole
from build_tools.pages.plot_data import PlotData, plot_data
from calculators.declaration import Calculator
from calculators.drawing_text import wrapped

WIDTH, HEIGHT = 330, 250
"""As wide as a drawing: 12 units are 12 pixels on a phone."""
SIZE = 12
LINES: tuple[Any, ...] = ("-", (0, (7, 3)), (0, (1.5, 2)), (0, (9, 2, 2, 2)))
NAME, OURS = 84.0, 130.0
"""The name of a curve, and that of the crew's own point, is broken into lines of this width."""
FAMILY = "Source Sans Pro"


def plots_of(context: Context, calculator: Calculator, cache: Path | None) -> list[dict[str, Any]]:
    """A calculator's plots for the templates, with everything at the crew's standards."""
    if not calculator.plots:
        return []
    called = context.call_with(calculator.name, {})

    def make() -> list[dict[str, Any]]:
        found = []
        for number, plot in enumerate(calculator.plots, 1):
            data = plot_data(calculator, plot, called)
            key = f"{calculator.name}-plot-{number}"
            found.append({"title": data.title, "svg": Markup(plot_svg(data.as_text(), key, cache))})
        return found

    return context.memo.named(f"plots {calculator.name}", called.values, make)


@lru_cache(maxsize=200)
def plot_svg(text: str, key: str, cache: Path | None) -> str:
    """The plot as an SVG element, from the folder of what is kept where it is there. ``key`` begins its ids."""
    data = PlotData.of(text)
    stamp = "".join([text, key, version("matplotlib"), Path(__file__).read_text(encoding="utf-8")])
    held = cache / f"{hashlib.sha256(stamp.encode()).hexdigest()[:32]}.svg" if cache else None
    if held and held.is_file():
        return held.read_text(encoding="utf-8")
    made = finished(_drawn(data), data, key)
    if held:
        write_whole(held, made)
    return made


def finished(svg: str, data: PlotData, key: str) -> str:
    """The library's SVG as part of a page: no prologue or style of its own, our ink and letters, our title.

    Its ``style`` attributes become attributes of SVG, which a strict policy lets stand (:mod:`browser.policy`).
    """
    inner = svg[svg.index(">", svg.index("<svg")) + 1 : svg.rindex("</svg>")]
    inner = re.sub(r"<metadata>.*?</metadata>|<defs>\s*<style.*?</style>\s*</defs>", "", inner, flags=re.DOTALL)
    inner = re.sub(rf"font-(size|family): ({SIZE}px|'{FAMILY}')(; ?)?", "", inner.replace("#000000", "currentColor"))
    inner = re.sub(r'\sstyle="([^"]*)"', lambda found: _as_attributes(found[1]), inner)
    inner = re.sub(r'\bid="', f'id="{key}-', inner)
    inner = re.sub(r'(url\(#|href="#)', rf"\1{key}-", inner)
    inner = re.sub(r"\n\s*", "\n", inner).strip()
    names = f'<title id="{key}-title">{escape(data.title)}</title><desc id="{key}-alt">{escape(data.alt)}</desc>'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" class="plot" '
        f'width="{WIDTH}" height="{HEIGHT}" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{key}-title {key}-alt">{names}\n{inner}</svg>'
    )


def _as_attributes(style: str) -> str:
    """Declarations of CSS as the presentation attributes that SVG has for them.

    >>> _as_attributes("fill: none; stroke-dasharray: 1.5,2")
    ' fill="none" stroke-dasharray="1.5,2"'
    """
    pairs = (declaration.partition(":") for declaration in style.split(";") if declaration.strip())
    return "".join(f' {name.strip()}="{value.strip()}"' for name, _, value in pairs)


def _drawn(data: PlotData) -> str:
    from io import StringIO

    import matplotlib
    from matplotlib import font_manager
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from matplotlib.figure import Figure

    font_manager.fontManager.addfont(str(files("font_source_sans_pro").joinpath("files", "SourceSansPro-Regular.ttf")))
    ours: Any = {"svg.fonttype": "none", "svg.hashsalt": "crew", "font.family": FAMILY, "font.size": SIZE}
    with matplotlib.rc_context(ours):
        figure = Figure(figsize=(WIDTH / 72, HEIGHT / 72), dpi=72)
        FigureCanvasSVG(figure)
        _fill(figure, data)
        written = StringIO()
        figure.savefig(written, format="svg", transparent=True, metadata={"Date": None})
    return written.getvalue()


def _fill(figure: Any, data: PlotData) -> None:
    """The axes with room for the names of the curves at their right."""
    names = [line for curve in data.curves for line in wrapped(curve.name, NAME)]
    right = max([_width(data.x.texts[-1]) / 2 + 4, *(_width(name) + 8 for name in names)])
    left = max(_width(text) for text in data.y.texts) + 10
    top = 36 if data.curves_by else 22
    box = (left / WIDTH, 38 / HEIGHT, (WIDTH - left - right) / WIDTH, (HEIGHT - 38 - top) / HEIGHT)
    axes = figure.add_axes(box)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    for curve, look in zip(data.curves, LINES * 3, strict=False):
        ys = [float("nan") if y is None else y for y in curve.ys]
        axes.plot(curve.xs, ys, color="#000000", linewidth=1.6, linestyle=look)
    axes.margins(x=0)
    axes.set_xticks(data.x.ticks, data.x.texts)
    axes.set_yticks(data.y.ticks, data.y.texts)
    axes.grid(color="#000000", linewidth=0.4, alpha=0.35)
    axes.tick_params(length=3, color="#000000")
    figure.text(0.5, 4 / HEIGHT, data.x.says, ha="center", va="bottom")
    figure.text(4 / WIDTH, 1 - 4 / HEIGHT, data.y.says, ha="left", va="top")
    if data.curves_by:
        figure.text(1 - 4 / WIDTH, 1 - 18 / HEIGHT, data.curves_by, ha="right", va="top")
    _name_ends(axes, data)
    for height, words in data.limits:
        _draw_limit(axes, data, height, words)
    if data.ours:
        _mark_ours(axes, data)


def _width(text: str) -> float:
    return len(text) * SIZE * 0.52


def _name_ends(axes: Any, data: PlotData) -> None:
    """Each curve's name right of where it ends, moved apart where two ends are near."""
    ends = []
    for curve in data.curves:
        known = [(x, y) for x, y in zip(curve.xs, curve.ys, strict=True) if y is not None]
        if curve.name and known:
            ends.append((axes.transData.transform(known[-1])[1], wrapped(curve.name, NAME)))
    right, top = axes.transAxes.transform((1, 1))
    ends.sort()
    places = [y for y, _ in ends]
    tall = [len(lines) * (SIZE + 1) for _, lines in ends]
    for at in range(1, len(ends)):
        places[at] = max(places[at], places[at - 1] + (tall[at - 1] + tall[at]) / 2)
    for at in reversed(range(len(ends))):
        limit = top + SIZE / 2 if at == len(ends) - 1 else places[at + 1] - tall[at + 1] / 2
        places[at] = min(places[at], limit - tall[at] / 2)
    for place, (_, lines) in zip(places, ends, strict=True):
        corner = axes.transData.inverted().transform((right + 5, place))
        axes.text(*corner, "\n".join(lines), ha="left", va="center", linespacing=1.05)


def _mark_ours(axes: Any, data: PlotData) -> None:
    """The crew's own point, named where no curve runs through the words."""
    assert data.ours is not None
    x, y, words = data.ours
    axes.plot([x], [y], "o", color="#000000", markersize=6)
    at = axes.transData.transform((x, y))
    inks = _inks(axes, data)
    low, high = axes.transAxes.transform((0, 0)), axes.transAxes.transform((1, 1))
    lines = ("our standard", *wrapped(words, OURS))
    wide, tall = max(_width(line) for line in lines), len(lines) * SIZE + 4

    def cost(place: tuple[float, float]) -> Any:
        left, bottom = at[0] + place[0], at[1] + place[1]
        over = max(0, low[0] - left) + max(0, left + wide - high[0]) + max(0, low[1] - bottom)
        over += max(0, bottom + tall - high[1])
        crossed = sum(left - 2 < ink < left + wide + 2 and bottom - 2 < up < bottom + tall + 2 for ink, up in inks)
        away = abs(place[0] + wide / 2) / 4 + abs(place[1] + tall / 2)
        return over * 10 + crossed * 6 + away * 0.3

    places = [
        (dx, dy)
        for dx in (7, 20, 40, -wide / 2, -wide - 7, -wide - 20, -wide - 40)
        for dy in (7 - tall / 2 + rise for rise in range(-112, 113, 8))
        if dx > 0 or dx < -wide or dy > 6 or dy < -tall - 6
    ]
    best = min(places, key=cost)
    back = axes.transData.inverted().transform
    corner = back((at[0] + best[0], at[1] + best[1]))
    nearest = [min(max(0, best[0]), best[0] + wide), min(max(0, best[1]), best[1] + tall)]
    if abs(nearest[0]) + abs(nearest[1]) > 16:
        end = back((at[0] + nearest[0], at[1] + nearest[1]))
        axes.plot([x, end[0]], [y, end[1]], color="#000000", linewidth=0.6)
    axes.text(*corner, "\n".join(lines), ha="left", va="bottom", linespacing=1.05)


def _draw_limit(axes: Any, data: PlotData, height: float, words: str) -> None:
    """A line across for a limit, its name above it or below it where the curves leave room."""
    axes.axhline(height, color="#000000", linewidth=2.2, linestyle=(0, (3, 1.5)))
    others = [other for other, _ in data.limits if other != height]
    inks = _inks(axes, data, [(x, other) for x in data.curves[0].xs for other in others])
    low, high = axes.transAxes.transform((0, 0)), axes.transAxes.transform((1, 1))
    line, wide = axes.transData.transform((data.curves[0].xs[0], height))[1], _width(words)

    def crossed(place: tuple[float, float]) -> Any:
        left, bottom = place
        over = max(0, bottom + SIZE - high[1]) + max(0, low[1] - bottom)
        return over + sum(left - 3 < ink < left + wide + 3 and bottom - 2 < up < bottom + SIZE for ink, up in inks)

    steps = max(1, int((high[0] - low[0] - wide) // 6))
    places = [(low[0] + 4 + 6 * step, line + up) for step in range(steps) for up in (3, -SIZE - 2)]
    best = min(places, key=crossed)
    axes.text(*axes.transData.inverted().transform(best), words, ha="left", va="bottom")


def _inks(axes: Any, data: PlotData, more: Sequence[tuple[float, float]] = ()) -> list[tuple[float, float]]:
    """The places on the paper that curves run through, and of more points."""
    points = [point for curve in data.curves for point in _fine(curve.xs, curve.ys)]
    return axes.transData.transform([*points, *more]).tolist()  # type: ignore[no-any-return]


def _fine(xs: list[float], ys: list[float | None]) -> list[tuple[float, float]]:
    """Points close enough together that words over the line are seen to be."""
    found = []
    for one, two in zip(range(len(xs)), range(1, len(xs)), strict=False):
        y1, y2 = ys[one], ys[two]
        if y1 is not None and y2 is not None:
            found += [(xs[one] + (xs[two] - xs[one]) * part / 4, y1 + (y2 - y1) * part / 4) for part in range(4)]
    return found
