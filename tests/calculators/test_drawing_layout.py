"""Every drawing on paper: to scale, legible on a phone, no text over another, and the same said in words."""

from __future__ import annotations

import re
from typing import Any

import pytest

from calculators.declaration import Calculator, Sheet
from calculators.drawing import (
    FILLS,
    SIDES,
    STYLES,
    break_line,
    circle,
    dimension,
    label,
    leader,
    line,
    rectangle,
    sheet,
)
from calculators.drawing_layout import TALL, lay_out
from calculators.drawing_text import PAPER, SIZE, text_width
from calculators.registry import CALCULATORS
from tests.drawn_inputs import drawn_cases

DRAWN = [calculator for calculator in CALCULATORS.values() if calculator.drawing is not None]
FIGURE = re.compile(r"""\d[\d/'" .-]*(?<=[\d"'])""")
Box = tuple[float, float, float, float]

each_drawing = pytest.mark.parametrize("calculator", DRAWN, ids=lambda calculator: calculator.name)


def sheets(calculator: Calculator) -> list[Sheet]:
    """The drawing of the example, and of 30 drawn inputs where the answer is quick."""
    assert calculator.drawing is not None
    return [calculator.drawing(*case) for case in drawn_cases(calculator, 30 if calculator.on_site else 0)]


def boxes(laid: dict[str, Any]) -> list[tuple[str, Box]]:
    """Each text and the box that it fills at most: left, top, right, bottom."""
    found = []
    for mark in laid["marks"]:
        if mark["kind"] == "text":
            x, y, wide = float(mark["x"]), float(mark["y"]), text_width(mark["text"])
            up, down = SIZE * 0.75, SIZE * 0.22
            if mark["turn"]:
                found.append((mark["text"], (x - up, y - wide / 2, x + down, y + wide / 2)))
            else:
                left = x - {"start": 0, "middle": wide / 2, "end": wide}[mark["anchor"]]
                found.append((mark["text"], (left, y - up, left + wide, y + down)))
    return found


def meet(one: Box, other: Box) -> bool:
    """Whether two boxes share more than an edge."""
    return one[0] < other[2] - 1 and other[0] < one[2] - 1 and one[1] < other[3] - 1 and other[1] < one[3] - 1


@each_drawing
def test_no_text_stands_over_another_and_all_are_on_the_paper(calculator: Calculator) -> None:
    for drawn in sheets(calculator):
        laid = lay_out(drawn)
        left, top, width, height = (float(figure) for figure in laid["box"].split())
        assert width == pytest.approx(PAPER, abs=0.02), "wider paper would make the letters smaller than a phone shows"
        assert height <= TALL + 60
        texts = boxes(laid)
        for number, (text, box) in enumerate(texts):
            assert left - 1 < box[0] and box[2] < left + width + 1, text
            assert top - 1 < box[1] and box[3] < top + height + 1, text
            assert [other for other, there in texts[:number] if meet(box, there)] == [], text


@each_drawing
def test_the_words_say_every_figure_that_is_dimensioned(calculator: Calculator) -> None:
    for drawn in sheets(calculator):
        assert drawn["title"]
        figures = [
            found.group().strip()
            for shape in drawn["shapes"]
            if shape["kind"] == "dimension"
            for found in FIGURE.finditer(shape["text"])
        ]
        missing = [figure for figure in figures if figure not in drawn["alt"]]
        assert missing == [], drawn["alt"]


@each_drawing
def test_only_known_looks(calculator: Calculator) -> None:
    for drawn in sheets(calculator)[:3]:
        for shape in drawn["shapes"]:
            assert shape.get("style", "outline") in STYLES
            assert shape.get("fill", "none") in FILLS
            assert shape.get("side", "above") in SIDES
            assert all(len(point) == 2 for point in shape["points"])


def numbers(d: str) -> list[float]:
    return [float(figure) for figure in re.findall(r"-?[\d.]+", d)]


def test_lengths_on_paper_are_the_same_multiple_of_inches() -> None:
    laid = lay_out(sheet("Board", "A board.", [rectangle(10.0, 20.0, 96.0, 5.5), circle(58.0, 22.0, 2.0)]))
    scale = laid["scale"]
    x1, y1, x2, _, _, y3 = numbers(laid["marks"][0]["d"])[:6]
    assert x2 - x1 == pytest.approx(96 * scale, abs=0.02)
    assert y1 - y3 == pytest.approx(5.5 * scale, abs=0.02)
    assert float(laid["marks"][1]["r"]) == pytest.approx(2 * scale, abs=0.01)
    assert float(laid["marks"][1]["cx"]) == pytest.approx((58 - laid["origin"][0]) * scale, abs=0.01)
    assert float(laid["marks"][1]["cy"]) == pytest.approx((laid["origin"][1] - 22) * scale, abs=0.01)


def test_a_stretched_drawing_says_so_and_is_stretched_up_alone() -> None:
    laid = lay_out(sheet("Drain", "A drain.", [line(0.0, 0.0, 240.0, -5.0)], 10.0))
    x1, y1, x2, y2 = numbers(laid["marks"][0]["d"])
    assert (y2 - y1) / (x2 - x1) == pytest.approx(10 * 5 / 240, rel=1e-3)
    assert any("heights drawn 10 times larger" in text for text, _ in boxes(laid))


def test_a_dimension_line_is_as_long_as_what_it_measures() -> None:
    shapes = [rectangle(0.0, 0.0, 40.0, 20.0), dimension(10.0, 0.0, 30.0, 0.0, "20 in", "below")]
    laid = lay_out(sheet("Part", "20 in", shapes))
    ticks = [numbers(mark["d"]) for mark in laid["marks"] if mark.get("look") == "tick"]
    middles = [(tick[0] + tick[2]) / 2 for tick in ticks]
    assert middles[1] - middles[0] == pytest.approx(20 * laid["scale"], abs=0.02)


def test_dimensions_one_after_another_share_a_row_and_the_overall_one_goes_outside() -> None:
    shapes = [
        rectangle(0.0, 0.0, 40.0, 20.0),
        dimension(0.0, 0.0, 20.0, 0.0, "20 in", "below"),
        dimension(20.0, 0.0, 40.0, 0.0, "20 in", "below"),
        dimension(0.0, 0.0, 40.0, 0.0, "40 in", "below"),
    ]
    texts = [mark for mark in lay_out(sheet("Chain", "", shapes))["marks"] if mark["kind"] == "text"]
    rows = [float(mark["y"]) for mark in texts[:3]]
    assert rows[0] == rows[1] < rows[2]


def test_a_text_too_long_for_its_line_stands_beyond_it() -> None:
    shapes = [rectangle(0.0, 0.0, 40.0, 20.0), dimension(0.0, 0.0, 0.5, 0.0, "1/2 in", "below")]
    laid = lay_out(sheet("Gap", "", shapes))
    text, box = boxes(laid)[0]
    assert text == "1/2 in"
    assert box[0] > 0.5 * laid["scale"]


@pytest.mark.parametrize(
    ("room", "width", "stands_in"),
    [(0.0, 40.0, True), (2.0, 40.0, False), (30.0, 40.0, True)],
)
def test_a_label_without_room_becomes_a_leader(room: float, width: float, stands_in: bool) -> None:
    shapes = [rectangle(0.0, 0.0, width, 20.0), label(20.0, 10.0, "a long name", room, "right")]
    laid = lay_out(sheet("Names", "", shapes))
    x = next(float(mark["x"]) for mark in laid["marks"] if mark["kind"] == "text" and mark["text"] == "a long name")
    assert (x < width * laid["scale"]) == stands_in


def test_leaders_texts_keep_the_order_of_their_places() -> None:
    shapes = [rectangle(0.0, 0.0, 10.0, 30.0)]
    shapes += [leader(5.0, float(height), f"place {height}", "right") for height in (3, 2, 1, 29)]
    texts = [mark for mark in lay_out(sheet("Places", "", shapes))["marks"] if mark["kind"] == "text"]
    ordered = sorted(texts[:4], key=lambda mark: float(mark["y"]))
    assert [mark["text"] for mark in ordered] == ["place 29", "place 3", "place 2", "place 1"]


def test_a_drawing_without_size_is_still_laid_out() -> None:
    laid = lay_out(sheet("Dot", "A dot.", [line(0.0, 0.0, 0.0, 0.0), break_line(0.0, 0.0, 0.0, 0.0)]))
    assert all(figure == figure and abs(figure) < 1e6 for figure in map(float, laid["box"].split()))


def test_texts_are_drawn_over_all_lines() -> None:
    shapes = [rectangle(0.0, 0.0, 10.0, 30.0), label(5.0, 5.0, "in"), leader(5.0, 9.0, "out", "below")]
    kinds = [mark["kind"] == "text" for mark in lay_out(sheet("Over", "", shapes))["marks"]]
    assert kinds == sorted(kinds)
