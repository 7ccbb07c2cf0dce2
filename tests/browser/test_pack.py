"""A procedure packed into one file, opened by double click without network."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.commands.pack import packed
from build_tools.commands.site import BOOK
from tests.browser.live_form import LiveForm
from tests.browser.window import LAPTOP, PHONE, Window

RING = "#choose-ring"


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The toilet page, packed."""
    folder = tmp_path_factory.mktemp("packed")
    text = packed(BOOK, "toilet-set", folder)
    assert isinstance(text, str), text
    path = folder / "toilet-set.html"
    path.write_text(text, encoding="utf-8")
    return path


def test_it_works_alone(file: Path, window: Window) -> None:
    """Nothing is asked for, nothing is complained of; the calculator answers and its drawing follows."""
    window.open(file.as_uri())
    form = LiveForm(window, RING)
    before = form.says("ring_to_use")
    drawn = window.find(f"{RING} [data-drawing]").get_attribute("innerHTML")
    form.type("rise", "3/4 in floor above flange")
    window.until(lambda: form.says("ring_to_use") != before, "another answer")
    window.until(lambda: window.find(f"{RING} [data-drawing]").get_attribute("innerHTML") != drawn, "another drawing")
    assert window.script("return [...document.images].map(one => one.src.slice(0, 11))") == ["data:image/"]
    window.until(lambda: window.script("return document.images[0].naturalWidth > 0"), "the picture")
    assert window.requests() == [file.as_uri()]
    assert window.console() == []


def test_links_stay_in_the_file(file: Path, window: Window) -> None:
    """A link leads to a place in the file or is none; a word of the trade leads to what it means."""
    window.open(file.as_uri())
    LiveForm(window, RING)
    lost = "return [...document.querySelectorAll('a[href]')].map(one => one.getAttribute('href'))"
    links = window.script(f"{lost}.filter(one => !one.startsWith('#') || !document.getElementById(one.slice(1)))")
    assert links == []
    window.script("document.querySelector('a[href=\"#word-wax-ring\"]').click()")
    assert window.find("#word-wax-ring + dd").text.startswith("The soft seal between flange and bowl.")


def test_it_fits_the_screen_and_the_sun(file: Path, window: Window) -> None:
    """It is as wide as the screen, says which book it comes from, and has the look for the sun."""
    window.open(file.as_uri())
    for width in (PHONE, LAPTOP):
        window.width(width)
        assert window.sideways() <= 0, window.widest()
    window.find(".sun-switch").click()
    assert window.script("return document.documentElement.dataset.look") == "sun"
    assert "One procedure from Crew Methods, put into this file on" in window.find("footer").text


def test_it_is_small_enough_for_a_message(file: Path) -> None:
    """Its size in bytes; without its scripts and styles it would be no smaller than the page itself."""
    assert file.stat().st_size < 400_000
