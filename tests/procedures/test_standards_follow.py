"""A crew standard is written once: changing it changes every page, table, quantity and datum that rests on it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from build_tools.book.checks import check
from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.commands.site import BOOK
from build_tools.pages.open_data import book_json
from build_tools.pages.page import Page
from calculators.registry import CALCULATORS
from tests.builds import change, context_of, copy_book, pages_of
from tests.site_pages import SitePage, text_of
from tests.tables import answer

pytestmark = pytest.mark.slow

STANDARD = "approach-thickness"
OLD, NEW = "6 in", "7 in"
PAGE = "concrete/approach-forming.html"
FILE = "reference/values/concrete.yaml"
LINE = "title: Approach, slab thickness\n  quantity: {}\n"

Pages = dict[str, SitePage]


def read(made: dict[str, Page]) -> Pages:
    """The pages as the tests read them."""
    return {url: SitePage(url, page.content) for url, page in made.items()}


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> Pages:
    """The pages of the book as it is."""
    return read(pages_of(BOOK, tmp_path_factory.mktemp("kept")))


@pytest.fixture(scope="module")
def changed_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The book with the slab of the approach an inch thicker."""
    book = copy_book(tmp_path_factory.mktemp("changed"))
    change(book / FILE, LINE.format(OLD), LINE.format(NEW))
    return book


@pytest.fixture(scope="module")
def after(changed_book: Path) -> Pages:
    """The pages of the changed book."""
    return read(pages_of(changed_book, changed_book.parent / "kept"))


def figures(page: SitePage) -> list[str]:
    """What the page shows wherever it refers to the standard, links with words of their own left out."""
    links = page.select(f"a[href$='values.html#{STANDARD}']")
    return [text_of(link) for link in links if text_of(link) in (OLD, NEW)]


def ours(page: SitePage, caption: str) -> list[str]:
    """The heads of the rows marked as the crew's own, in the table whose caption begins so."""
    figure = next(one for one in page.select(".computed") if text_of(one).startswith(caption))
    rows = figure.select("tr.ours")
    return [text_of(row.select("th")[0]).removesuffix("our standard").strip() for row in rows]


def quantity(page: SitePage, material: str) -> str:
    """The quantity of a material in the list of a procedure page."""
    (found,) = page.select(f".quantities > :has(a[href$='#{material}']) .quantity")
    return text_of(found)


def starts_at(page: SitePage, label: str) -> list[str]:
    """Where an input of the page's worked calculators starts, in the lists of what was given."""
    return [text_of(term.find_next_siblings("dd")[0]) for term in page.select(".given dt") if text_of(term) == label]


def test_every_page_that_showed_it_shows_the_new_one(before: Pages, after: Pages) -> None:
    """Where the old figure stood by reference the new one stands, on the same pages and as often."""
    old = {url: figures(page) for url, page in before.items() if figures(page)}
    new = {url: figures(page) for url, page in after.items() if figures(page)}
    assert set(old) >= {PAGE, "calculators/approach-concrete.html", "calculators/joint-spacing.html"}
    assert {figure for found in old.values() for figure in found} == {OLD}
    assert new == {url: [NEW] * len(found) for url, found in old.items()}


def test_its_own_entry_shows_it(before: Pages, after: Pages) -> None:
    """The page of standards gives the new figure, and changes in nothing else."""
    page = before["values.html"].html
    start = page.index(f' id="{STANDARD}"')
    place = page.index(f"<b>{OLD}</b>", start)
    assert after["values.html"].html == page[:place] + page[place:].replace(OLD, NEW, 1)
    for shown, figure in ((before, OLD), (after, NEW)):
        assert text_of(shown["values.html"].select(f"#{STANDARD} b")[0]) == figure


def test_the_table_marks_another_row(before: Pages, after: Pages) -> None:
    """The row of the table that is the crew's own moves with the standard."""
    assert ours(before[PAGE], "Contraction joints") == [OLD]
    assert ours(after[PAGE], "Contraction joints") == [NEW]


def test_a_calculator_starts_at_it(before: Pages, after: Pages) -> None:
    """The calculators worked on the page start at the new figure."""
    assert OLD in starts_at(before[PAGE], "Slab thickness")
    assert starts_at(after[PAGE], "Slab thickness") == [
        NEW if text == OLD else text for text in starts_at(before[PAGE], "Slab thickness")
    ]


def test_the_quantities_follow(before: Pages, after: Pages, changed_book: Path) -> None:
    """A thicker slab orders the concrete that the calculator gives for it, and not one stake more."""
    size = {"throat": "14'", "depth": "6'"}
    old, new = (answer("approach-concrete", size, book) for book in (BOOK, changed_book))
    assert old["order"] != new["order"]
    assert quantity(before[PAGE], "ready-mix-concrete") == old["order"]
    assert quantity(after[PAGE], "ready-mix-concrete") == new["order"]
    assert quantity(after[PAGE], "form-stakes") == quantity(before[PAGE], "form-stakes") == new["stakes"]


def test_the_data_follow(after: Pages, changed_book: Path) -> None:
    """The structured data of the page and the open book carry the new figures."""
    order = answer("approach-concrete", {"throat": "14'", "depth": "6'"}, changed_book)["order"]
    script = after[PAGE].select("script[type='application/ld+json']")[0]
    supply = {one["name"]: one["requiredQuantity"] for one in json.loads(script.get_text())["supply"]}
    assert order in supply.values()
    opened = json.loads(book_json(context_of(changed_book), "today"))
    assert opened["values"][STANDARD]["quantity"] == NEW
    joints = next(step for step in opened["procedures"]["approach-forming"]["steps"] if step["id"] == "joints")
    assert [row["head"] for row in joints["computed"]["rows"] if row["ours"]] == [NEW]


@pytest.mark.parametrize(
    ("file", "was", "now", "said"),
    [
        (
            "power.yaml",
            "title: Gas meter to ignition, least\n  quantity: 36 in\n",
            "title: Gas meter to ignition, least\n  quantity: 30 in\n",
            "Ignition, least: 30 in is looser than the 36 in of 49 CFR 192.353; NFPA 54",
        ),
        (
            "concrete.yaml",
            "title: Trench, walls protected from\n  quantity: 5 ft\n",
            "title: Trench, walls protected from\n  quantity: 6 ft\n",
            "6' 0\" is looser than the 5' 0\" of 29 CFR 1926.652(a)(1)(ii)",
        ),
    ],
)
def test_a_standard_that_is_looser_than_the_law_stops_the_build(
    tmp_path: Path, file: str, was: str, now: str, said: str
) -> None:
    """The crew may be stricter than a published limit, never looser: the value's own line is named."""
    book = copy_book(tmp_path)
    change(book / "reference" / "values" / file, was, now)
    loaded = load_book(book)
    found = [str(diagnostic) for diagnostic in check(Context.of(loaded.book, Memo(), CALCULATORS))]
    assert any(said in diagnostic and f"values/{file}:" in diagnostic for diagnostic in found)
