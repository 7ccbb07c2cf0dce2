"""QR codes on the sheets and labels, read by a reader of our own after ISO/IEC 18004."""

from __future__ import annotations

import pytest
import segno

from build_tools.pages.qr import qr_svg
from tests.qr_reader import data_words, modules_of, read_qr

ADDRESS = "https://methods.example/flooring/strip-floor-racking.html"


def test_the_worked_example_of_the_standard() -> None:
    """ISO/IEC 18004, the annex that encodes '01234567' in version 1-M: its words of data, as printed there."""
    code = segno.make("01234567", version=1, error="m", boost_error=False, micro=False)
    printed = "10 20 0C 56 61 80 EC 11 EC 11 EC 11 EC 11 EC 11"
    assert data_words([[bool(bit) for bit in row] for row in code.matrix]) == [
        int(word, 16) for word in printed.split()
    ]


@pytest.mark.parametrize("level", list("lmqh"))
@pytest.mark.parametrize("text", ["https://a.example/", ADDRESS[:44], ADDRESS])
def test_a_drawn_code_says_its_text(text: str, level: str) -> None:
    assert read_qr(modules_of(qr_svg(text, "said", level))) == text


@pytest.mark.parametrize("place", [(0, 0), (10, 12), (8, 2), (6, 10), (20, 20)])
def test_one_module_turned_over_is_seen(place: tuple[int, int]) -> None:
    """In a finder pattern, in the data, in the format, in the timing: the reader says so."""
    modules = modules_of(qr_svg(ADDRESS, "said", "m"))
    x, y = place
    modules[y][x] = not modules[y][x]
    with pytest.raises(AssertionError):
        read_qr(modules)


def test_a_code_without_its_quiet_zone_is_refused() -> None:
    svg = qr_svg(ADDRESS, "said", "m")
    with pytest.raises(AssertionError, match="quiet"):
        modules_of(str(svg).replace('fill="#000" d="M', 'fill="#000" d="M0 0h1v1h-1zM'))


def test_it_is_dark_on_light_whatever_the_page_looks_like() -> None:
    """The colours are its own: no style of the page, light or dark, reaches them."""
    svg = qr_svg(ADDRESS, "said", "m")
    assert "currentcolor" not in svg.lower() and "var(" not in svg
    assert svg.count("fill=") == 2 and 'fill="#fff"' in svg and 'fill="#000"' in svg
