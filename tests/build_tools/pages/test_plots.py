"""Plots of calculators: the numbers are the calculator's, the words say them, and the picture is part of the page."""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

from build_tools.book.calls import CallResult
from build_tools.pages import plots
from build_tools.pages.plot_data import PlotData, plot_data, tick_text
from build_tools.pages.plots import plot_svg
from calculators.declaration import Answer, Calculator, Input, Output, Plot, refuse
from calculators.registry import CALCULATORS
from calculators.run import run
from tests.called import called
from tests.site_pages import SitePage, text_of

PLOTTED = [(each, number) for each in CALCULATORS.values() for number in range(len(each.plots))]
NAMESPACE = "{http://www.w3.org/2000/svg}"

each_plot = pytest.mark.parametrize(
    ("calculator", "number"), PLOTTED, ids=[f"{each.name}-{number}" for each, number in PLOTTED]
)


def at_defaults(calculator: Calculator) -> CallResult:
    return called(calculator, {each.name: each.default for each in calculator.inputs if each.default is not None})


def data_of(calculator: Calculator, number: int = 0) -> PlotData:
    return plot_data(calculator, calculator.plots[number], at_defaults(calculator))


def test_squeeze_falls_as_the_floor_rises() -> None:
    data = data_of(CALCULATORS["wax-ring"])
    assert [curve.name for curve in data.curves] == ["1 in", "1-1/2 in"]
    for curve, ring in zip(data.curves, (1.0, 1.5), strict=True):
        assert curve.ys == pytest.approx([ring - (rise + 0.625) for rise in curve.xs])
    assert data.ours == (-0.25, 0.625, "5/8 in at 1/4 in flange above floor")
    assert data.x.says == "← flange above floor   in   floor above flange →"
    assert data.x.texts == ["1", "1/2", "0", "1/2", "1", "1-1/2"]
    ends = "1-3/8 in at 1 in flange above floor, 1-1/8 in short at 1-1/2 in floor above flange."
    assert f"Thickness of the ring 1 in: {ends}" in data.alt
    assert data.alt.endswith("Our standard: 5/8 in at 1/4 in flange above floor.")


def test_concrete_is_in_yards_and_widths_in_feet() -> None:
    calculator = CALCULATORS["approach-concrete"]
    data = data_of(calculator)
    assert data.y.says == "Concrete in place, cu yd"
    assert data.x.texts == ["8'", "12'", "16'", "20'", "24'"]
    defaults = at_defaults(calculator).values
    for curve, thickness in zip(data.curves, (5.0, 6.0, 8.0), strict=True):
        answer = run(calculator, {**defaults, "throat": 288.0, "thickness": thickness})
        assert curve.ys[-1] == pytest.approx(answer["concrete"] / 27)


def test_fall_is_run_times_slope() -> None:
    data = data_of(CALCULATORS["drain-fall"])
    ends = [curve.ys[-1] for curve in data.curves]
    assert ends == pytest.approx([50 * slope for slope in (0.125, 0.25, 0.5)])


@each_plot
def test_a_plot_is_whole_and_says_in_words_what_it_shows(calculator: Calculator, number: int) -> None:
    data = data_of(calculator, number)
    made = plot_svg(data.as_text(), "here", None)
    root = ElementTree.fromstring(made)
    assert root.attrib["role"] == "img"
    assert root.attrib["aria-labelledby"] == "here-title here-alt"
    assert root.findtext(f"{NAMESPACE}title") == data.title
    assert root.findtext(f"{NAMESPACE}desc") == data.alt
    words = ["".join(text.itertext()) for text in root.iter(f"{NAMESPACE}text")]
    for said in (data.x.says, data.y.says, *data.x.texts, *data.y.texts):
        assert said in words
    for curve in data.curves:
        assert curve.name.split(" ")[0] in " ".join(words)
    if data.ours:
        assert "our standard" in words and data.ours[2] in " ".join(words) and data.ours[2] in data.alt


@each_plot
def test_a_plot_takes_its_ink_and_letters_from_the_page(calculator: Calculator, number: int) -> None:
    made = plot_svg(data_of(calculator, number).as_text(), "here", None)
    without = re.sub(r'xmlns(:xlink)?="[^"]*"', "", made)
    assert "http" not in without
    assert not re.search(r"<(style|metadata|script|image)|<!DOCTYPE|<\?xml|font-family|#[0-9a-f]{6}\b|style=", without)
    ids = re.findall(r'\bid="([^"]*)"', made)
    assert len(ids) == len(set(ids)) and all(id.startswith("here-") for id in ids)
    assert set(re.findall(r'(?:url\(#|href="#)([\w-]+)', made)) <= set(ids)


def test_curves_are_told_apart_without_colour() -> None:
    made = plot_svg(data_of(CALCULATORS["drain-fall"]).as_text(), "here", None)
    dashes = set(re.findall(r'stroke-dasharray="([\d., ]+)"', made))
    assert len(dashes) == 2, "the first curve is whole, the others each have dashes of their own"


def test_a_kept_plot_is_not_drawn_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    text = data_of(CALCULATORS["wax-ring"]).as_text()
    first = plot_svg(text, "kept", tmp_path)
    plot_svg.cache_clear()
    monkeypatch.setattr(plots, "_drawn", lambda data: pytest.fail("drawn again"))
    assert plot_svg(text, "kept", tmp_path) == first
    assert len(list(tmp_path.iterdir())) == 1


def test_the_same_numbers_make_the_same_picture() -> None:
    text = data_of(CALCULATORS["wax-ring"]).as_text()
    plot_svg.cache_clear()
    first = plot_svg(text, "same", None)
    plot_svg.cache_clear()
    assert plot_svg(text, "same", None) == first


def test_numbers_survive_being_written() -> None:
    data = data_of(CALCULATORS["wax-ring"])
    again = PlotData.of(data.as_text())
    assert again.curves == data.curves
    assert (again.x, again.y, again.title, again.alt) == (data.x, data.y, data.title, data.alt)


def halves(x: float) -> Answer:
    """Refuses between 4 and 6."""
    if 4 < x < 6:
        refuse("x", "not between 4 and 6")
    return {"y": x / 2, "cautions": [], "working": []}


HALVES = Calculator(
    name="halves",
    title="Halves",
    trade="plumbing",
    summary="Half of it.",
    function=halves,
    inputs=(Input("x", "Width", "number", default=5.0),),
    outputs=(Output("y", "Half", "number", step=0.1),),
    formula="y = x / 2",
    sources=(),
)


def test_where_a_calculator_refuses_the_curve_has_a_gap_and_there_is_no_point() -> None:
    data = plot_data(HALVES, Plot("Halves", x="x", y="y", start=0, end=10), at_defaults(HALVES))
    gaps = [x for x, y in zip(data.curves[0].xs, data.curves[0].ys, strict=True) if y is None]
    assert gaps and all(4 < x < 6 for x in gaps)
    assert data.ours is None
    assert data.alt == "Halves. Half: 0 at 0, 5 at 10."
    ElementTree.fromstring(plot_svg(data.as_text(), "halves", None))


def test_a_plot_of_something_that_is_not_there_is_named() -> None:
    with pytest.raises(ValueError, match="the plot 'Halves' of 'halves' names an input or an output that is not there"):
        plot_data(HALVES, Plot("Halves", x="x", y="z", start=0, end=10), at_defaults(HALVES))


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [(-0.5, "in", "-1/2"), (0.0, "in", "0"), (150.0, "ft-in", "12' 6\""), (0.25, "lb/sq ft/h", "0.25")],
)
def test_ticks_are_written_as_the_trade_writes(value: float, unit: str, text: str) -> None:
    assert tick_text(value, unit) == text


def test_the_page_of_a_calculator_shows_its_plots(pages: dict[str, SitePage]) -> None:
    for calculator, number in PLOTTED:
        page = pages[f"calculators/{calculator.name}.html"]
        assert f"{calculator.name}-plot-{number + 1}-title" in page.ids()
        assert calculator.plots[number].title in [text_of(caption) for caption in page.select("figcaption")]
