"""A few pieces of a page, whole, against golden files; ``pytest --update-golden`` writes them anew."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from tests.builds import FEW, SMALL, change, copy_book, pages_of
from tests.site_pages import SitePage

GOLDEN = Path(__file__).parent / "golden"
FILE = "plumbing/set-bowl.yaml"
MORE = """\
    key_points:
      - point: Keep it level by eye & hand.
        why: A bowl that tips squeezes the [](term:wax-ring) on one side.
    measurements:
      - what: Foot to the wall
        target: value:gap
        within: 1/16 in
        outside: Lift it, and go back to [the rise](procedure:set-bowl#measure).
        basis: {source: plumbing-code, clause: "405.4"}
"""
"""What the second step of the small book gets beside its message and its hold point, to have everything."""


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> dict[str, SitePage]:
    """The pages of the small book, with one step that has everything."""
    folder = tmp_path_factory.mktemp("small")
    book = copy_book(folder, SMALL)
    change(book / FILE, "    tools: [short-level]\n    materials", MORE + "    tools: [short-level]\n    materials")
    return {url: SitePage.of(page) for url, page in pages_of(book, folder, FEW).items()}


def compare(name: str, page: SitePage, selector: str, config: pytest.Config) -> None:
    """Hold an element, as a browser reads it, against its golden file; indentation does not count."""
    (piece,) = BeautifulSoup(page.html, "html5lib").select(selector, limit=1)
    lines = [line.strip() for line in re.sub(r">\s{2,}", ">\n", str(piece)).splitlines() if line.strip()]
    text = "\n".join(lines) + "\n"
    path = GOLDEN / f"{name}.html"
    if config.getoption("--update-golden"):
        path.write_text(text, encoding="utf-8")
    assert text == path.read_text(encoding="utf-8")


def test_a_step_with_everything(small: dict[str, SitePage], pytestconfig: pytest.Config) -> None:
    """A step with a message, a key point, a measurement, tools, materials and a hold point."""
    compare("step", small["plumbing/set-bowl.html"], "#lower", pytestconfig)


def test_a_computed_table(small: dict[str, SitePage], pytestconfig: pytest.Config) -> None:
    """A table of the wax ring's squeeze, with its caption, formula and sources."""
    compare("table", small["plumbing/set-bowl.html"], "figure.computed", pytestconfig)


def test_an_entry_of_the_standards(small: dict[str, SitePage], pytestconfig: pytest.Config) -> None:
    """A crew standard with its basis, what it sets, and where it is used."""
    compare("value", small["values.html"], "#recess", pytestconfig)


def test_every_golden_file_is_compared() -> None:
    """No golden file lies there unused."""
    assert {path.stem for path in GOLDEN.iterdir()} == {"step", "table", "value"}
