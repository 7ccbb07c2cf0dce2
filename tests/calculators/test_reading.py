"""Reading figures as people write them, and saying why where they cannot be read."""

from __future__ import annotations

from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.reading import Unreadable, read, read_number_with_unit
from calculators.writing import feet_inches, inches
from calculators.writing_units import write


@pytest.mark.parametrize(
    "written",
    [
        "5' 3-1/2\"",
        "5'3½\"",
        "5'-3½\"",
        "5' - 3-1/2\"",
        "5' 3 1/2",
        "5′ 3½″",
        "5’ 3 ½”",
        "5‘ 3½“",
        "5' 3 1⁄2''",
        "5 ft 3 1/2 in",
        "5 ft. 3.5 in.",
        "5ft 3-1/2in",
        "5ft3½in",
        "5 Feet 3½ Inches",
        "63 1/2",
        "63 1 / 2",
        "63-1 /2 in",
        "5' 3 1/ 2\"",
        "63-1/2",
        "63–1/2 in",
        "63½",
        "63.5 inch",
        "+63.5",
        " 63.5\u00a0in ",
        "1612.9 mm",
        "1 612.9 mm",
        "1\u202f612.9 mm",
        "1,612.9 mm",
        "161.29 cm",
        "1.6129 m",
        "1 yd 2 ft 3-1/2 in",
    ],
)
def test_one_length_in_many_hands(written: str) -> None:
    assert isclose(read(written, "length", "in"), 63.5, rel_tol=1e-15)


@pytest.mark.parametrize(
    ("written", "quantity", "unit", "expected"),
    [
        ('1-1/8"', "length", "in", 1.125),
        ("-3/8", "length", "in", -0.375),
        ("−1/2", "length", "in", -0.5),
        ("-5' 3\"", "length", "in", -63),
        ("-0' 3\"", "length", "in", -3),
        (".5", "length", "in", 0.5),
        ("5 / 8", "length", "in", 0.625),
        ("5/ 8 in", "length", "in", 0.625),
        ("1 613 / 2000 in", "length", "in", 1.3065),
        ("1 / 4 in / ft", "slope", "in/ft", 0.25 / 12),
        ("12", "length", "ft", 144),
        ("254", "length", "mm", 10),
        ("63.5", "length", "ft-in", 63.5),
        ("5 120 mm", "length", "in", 5120 / 25.4),
        ("1 613/1000 in", "length", "in", 1.613),
        ("2 %", "slope", "%", 0.02),
        ("2%", "slope", "in/ft", 0.02),
        ("2", "slope", "%", 0.02),
        ("1/4", "slope", "in/ft", 1 / 48),
        ("48", "slope", "1:n", 1 / 48),
        ("1/4 in/ft", "slope", "%", 1 / 48),
        ('1/4" per ft', "slope", "%", 1 / 48),
        ("1/4 per foot", "slope", "%", 1 / 48),
        ("20 mm/m", "slope", "%", 0.02),
        ("1:48", "slope", "%", 1 / 48),
        ("-1:48", "slope", "%", -1 / 48),
        ("1 in 48", "slope", "%", 1 / 48),
        ("4 in 12", "slope", "%", 1 / 3),
        ("45 deg", "slope", "%", 1),
        ("45°", "slope", "%", 1),
        ("level", "slope", "1:n", 0),
        ("45°", "angle", "deg", 45),
        ("24 h", "time", "h", 24),
        ("3 days", "time", "h", 72),
        ("1 day", "time", "h", 24),
        ("90 min", "time", "h", 1.5),
        ("1 h 30 min", "time", "h", 1.5),
        ("2", "time", "days", 48),
        ("30 s", "time", "min", 1 / 120),
        ("70 F", "temperature", "F", 70),
        ("21 °C", "temperature", "F", 69.8),
        ("-5 C", "temperature", "F", 23),
        ("21", "temperature", "C", 69.8),
        ("2-1/2 cu yd", "volume", "cu yd", 67.5),
        ("2.5 yd3", "volume", "cu ft", 67.5),
        ("2½ yd³", "volume", "cu ft", 67.5),
        ("231 cu in", "volume", "cu ft", 231 / 1728),
        ("5 gal", "volume", "cu ft", 5 * 231 / 1728),
        ("24 board feet", "volume", "cu ft", 2),
        ("300 sq ft", "area", "sq ft", 300),
        ("300 sf", "area", "sq ft", 300),
        ("1,200 sq. ft.", "area", "sq ft", 1200),
        ("9 square feet", "area", "sq yd", 9),
        ("28 m²", "area", "sq ft", 28 / 0.09290304),
        ("10 lb", "mass", "lb", 10),
        ("2 lb 4 oz", "mass", "lb", 2.25),
        ("10 %", "percent", "%", 10),
        ("10", "percent", "%", 10),
        ("3", "count", "bundles", 3),
        ("3 bundles", "count", "bundles", 3),
        ("1 Bundle", "count", "bundles", 1),
        ("3 each", "count", "bundles", 3),
        ("-3", "count", "", -3),
        ("2.5", "number", "", 2.5),
        ("2.5 lb/sq ft", "number", "lb/sq ft", 2.5),
    ],
)
def test_read(written: str, quantity: str, unit: str, expected: float) -> None:
    assert isclose(read(written, quantity, unit), expected, rel_tol=1e-14)


LENGTH = "write 5' 3-1/2\", 63-1/2 in or 1613 mm"
COMMA = (
    "has a comma that could be a decimal point or a thousands mark: write a point for decimals (1.5) "
    "and a comma only before each three figures (1,200)"
)


@pytest.mark.parametrize(
    ("written", "quantity", "unit", "why"),
    [
        ("5 foo", "length", "in", "is not a length: " + LENGTH),
        ("", "length", "in", "is empty: " + LENGTH),
        ("wide", "length", "in", "is not a length: " + LENGTH),
        ("3 lb", "length", "in", "is a mass; a length is wanted: " + LENGTH),
        ("3 sq ft", "length", "in", "is an area; a length is wanted: " + LENGTH),
        ("3000 psi", "length", "in", "is in psi; a length is wanted: " + LENGTH),
        ("3 days", "temperature", "F", "is a time; a temperature is wanted: write 70 F or 21 C"),
        ("1,5", "length", "in", COMMA),
        ("0,125", "length", "in", COMMA),
        ("1,2000", "length", "in", COMMA),
        ("1.5,000", "length", "in", COMMA),
        ("1/0", "length", "in", "has a fraction that cannot be: write for example 3/8"),
        ("1-5/4", "length", "in", "has a fraction of one or more after a whole number: write for example 1-3/8"),
        ("9" * 16, "length", "in", "has more figures than a measurement has"),
        ("3-4 in", "length", "in", "is not a length: " + LENGTH),
        ("1e5", "length", "in", "is not a length: " + LENGTH),
        ("nan", "length", "in", "is not a length: " + LENGTH),
        ("5.", "length", "in", "is not a length: " + LENGTH),
        ("3\" 5'", "length", "in", "is not a length: " + LENGTH),
        ("5' 3 lb", "length", "in", "is not a length: " + LENGTH),
        ("20 C 5 F", "temperature", "F", "is not a temperature: write 70 F or 21 C"),
        ("1:0", "slope", "%", "is not a slope: write 2 %, 1/4 in/ft, 1:48 or 1.19 deg"),
        ("0", "slope", "1:n", "is no slope: write 1:48, or level"),
        ("90 deg", "slope", "%", "is upright or more: a slope is less than 90 deg"),
        ("2 in", "slope", "%", "is a length; a slope is wanted: write 2 %, 1/4 in/ft, 1:48 or 1.19 deg"),
        ("2.5", "count", "bundles", "is not a whole number: write 3"),
        ("3 boxes", "count", "bundles", "is not a count: write 3 or 3 bundles"),
        ("3 lb", "count", "bundles", "is a mass; a count is wanted: write 3 or 3 bundles"),
        ("3 lb", "number", "", "is a mass; a plain number is wanted: write 2.5"),
        ("many", "number", "", "is not a plain number: write 2.5"),
    ],
)
def test_unreadable(written: str, quantity: str, unit: str, why: str) -> None:
    with pytest.raises(Unreadable) as caught:
        read(written, quantity, unit)
    assert caught.value.text == written
    assert caught.value.why == why
    assert str(caught.value) == f"'{written}' {why}"


@pytest.mark.parametrize(
    ("written", "value", "quantity"),
    [
        ("1/4 in", 0.25, "length"),
        ("12'", 144, "length"),
        ("3 days", 72, "time"),
        ("2 %", 2, "percent"),
        ("1.2 deg", 1.2, "angle"),
        ("1:48", 1 / 48, "slope"),
        ("1/4 in/ft", 1 / 48, "slope"),
        ("70 F", 70, "temperature"),
        ("2 each", 2, "each"),
        ("3000 psi", 3000, "psi"),
        ("15 amps", 15, "A"),
        ("7", 7, "number"),
    ],
)
def test_the_unit_decides_the_quantity(written: str, value: float, quantity: str) -> None:
    found, found_quantity = read_number_with_unit(written)
    assert isclose(found, value)
    assert found_quantity == quantity


@pytest.mark.parametrize("written", ["3 bundles", "", "about 3 in", "3 in wide"])
def test_a_figure_without_a_known_unit_is_refused(written: str) -> None:
    with pytest.raises(Unreadable, match="is not a number with a unit that is known"):
        read_number_with_unit(written)


def test_every_sixteenth_is_read_back_as_written() -> None:
    """From -100 in to 1000 in, as inches, feet and inches, and with typographic marks."""
    for count in range(-1600, 16001):
        x = count / 16
        assert read(inches(x), "length", "in") == x
        marked = feet_inches(x)
        assert read(marked, "length", "in") == x
        typographic = marked.replace("'", "′").replace('"', "″").replace("-", "\u2011")
        assert read(typographic, "length", "in") == x


UNIT_STEPS = [
    ("length", "mm", 1.0),
    ("length", "cm", 0.1),
    ("length", "m", 0.001),
    ("length", "ft", 0.01),
    ("area", "m2", 0.1),
    ("area", "sq ft", 0.5),
    ("volume", "m3", 0.01),
    ("volume", "cu yd", 0.25),
    ("volume", "L", 1.0),
    ("volume", "gal", 0.5),
    ("slope", "%", 0.1),
    ("slope", "in/ft", 0.0625),
    ("slope", "deg", 0.1),
    ("mass", "kg", 0.1),
    ("time", "min", 1.0),
    ("time", "days", 1.0),
    ("temperature", "C", 0.1),
    ("count", "boxes", 1.0),
]


@given(st.sampled_from(UNIT_STEPS), st.integers(-800, 800))
def test_what_is_written_reads_back_and_is_written_the_same(case: tuple[str, str, float], count: int) -> None:
    quantity, unit, step = case
    text = write(read(str(count * step) if step < 1 else str(count), quantity, unit), quantity, unit, step)
    assert write(read(text, quantity, unit), quantity, unit, step) == text


@given(st.text(alphabet="0123456789 '\"-./,½inftmcysqdegper%:° ′″lb", max_size=12))
def test_any_text_is_read_or_refused_with_a_sentence(text: str) -> None:
    for quantity, unit in [("length", "in"), ("slope", "%"), ("count", "boxes"), ("temperature", "F")]:
        try:
            value = read(text, quantity, unit)
        except Unreadable as unreadable:
            assert unreadable.why
        else:
            assert abs(value) < 1e20
