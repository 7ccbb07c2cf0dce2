"""The built site: links, structure, what it loads, and the words that must not stand on it."""

from __future__ import annotations

import re
from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest

from build_tools.bench.script import BUDGET, weigh
from build_tools.commands.site import BOOK
from tests.site_pages import SitePage, is_elsewhere, loaded_by_css, resolve

Pages = dict[str, SitePage]
THEME_TARGETS = {"__toc"}
"""The theme labels its list of contents for a switch that it sets on the pages of the menu alone."""
REDRAWN = 33_600
"""The most script of a procedure page with a drawing redrawn, compressed, in bytes. A saving takes it down, until the
budget of 30,720 holds here as well."""
ERROR_PAGE = "404.html"
"""Nothing links to it, and its own links start at the top of the server, since it is shown at any address."""
SPILLED = re.compile(
    r"\bNaN\b|\bundefined\b|\bUndefined\b|\bNone\b|\{\{|\}\}|\{%|\bvalue:|\bcrew\w+mark\b|<built-in|<Text|Markup\("
)
"""What shows when a figure, a template or a reference was not filled."""


def test_every_internal_link_resolves(pages: Pages, site: Path) -> None:
    """Each link and its anchor lead to something that is there: a page, or a file to take away."""
    broken = []
    for page in pages.values():
        for link in page.links():
            if is_elsewhere(link):
                continue
            file, anchor = resolve(page.url, link)
            there = file in pages if file.endswith(".html") else (site / file).is_file()
            if not there or (anchor and anchor not in pages[file].ids()):
                broken.append(f"{page.url}: {link}")
    assert broken == []


def test_links_are_relative(pages: Pages) -> None:
    """The site works in any folder, also opened from a disk: no link starts at the top of a server."""
    rooted = [
        f"{page.url}: {address}"
        for page in pages.values()
        if page.url != ERROR_PAGE
        for address in page.links() + page.loads()
        if address.startswith("/")
    ]
    assert rooted == []


def test_every_procedure_page_keeps_the_budget_of_its_script(site: Path) -> None:
    """With a form in use it is within the budget; with its drawing redrawn it is not yet, and gets no further away."""
    heaviest = weigh(site)
    assert [str(page) for page in heaviest if page.in_use - page.drawing > BUDGET or page.in_use > REDRAWN] == []


def test_everything_that_is_loaded_is_there(pages: Pages, site: Path) -> None:
    """Images, styles, scripts and fonts lie in the site itself: nothing comes from another address."""
    wrong = []
    for page in pages.values():
        for address in page.loads():
            if is_elsewhere(address) or not (site / resolve(page.url, address)[0]).is_file():
                wrong.append(f"{page.url}: {address}")
    for sheet in [*site.rglob("*.css"), *site.rglob("*.svg")]:
        url = sheet.relative_to(site).as_posix()
        for address in loaded_by_css(sheet.read_text(encoding="utf-8")):
            if is_elsewhere(address) or not (site / resolve(url, address)[0]).is_file():
                wrong.append(f"{url}: {address}")
    assert wrong == []


def test_links_to_the_web_are_plain(pages: Pages) -> None:
    """Where a link leaves the site it is an ordinary one to the web; a reference left as it was written is none."""
    outside = [link for page in pages.values() for link in page.links() if is_elsewhere(link)]
    assert [link for link in outside if not link.startswith(("https://", "http://"))] == []


def test_ids_are_unique(pages: Pages) -> None:
    """No page has an id twice."""
    twice = [f"{page.url}: {id}" for page in pages.values() for id, n in Counter(page.ids()).items() if n > 1]
    assert twice == []


def test_labels_name_ids_that_are_there(pages: Pages) -> None:
    """What a label, a heading or a control points at is on the page."""
    wrong = []
    for page in pages.values():
        ids = set(page.ids())
        for element in page.elements:
            for name in ("for", "aria-labelledby", "aria-describedby", "aria-controls"):
                wrong += [
                    f"{page.url}:{element.line}: {name}={id}"
                    for id in element.attributes.get(name, "").split()
                    if id not in ids | THEME_TARGETS
                ]
    assert wrong == []


def test_headings_are_in_order(pages: Pages) -> None:
    """Each page has one first heading, starts with it, and no level is jumped on the way down."""
    wrong = []
    for page in pages.values():
        levels = [int(heading.tag[1]) for heading in page.all("h1", "h2", "h3", "h4", "h5", "h6")]
        jumps = any(below > above + 1 for above, below in pairwise(levels))
        if levels[:1] != [1] or levels.count(1) != 1 or jumps:
            wrong.append(f"{page.url}: {levels}")
    assert wrong == []


def test_headings_and_links_have_words(pages: Pages) -> None:
    """No heading is empty, and each link has words, a label or a picture with words."""
    silent = []
    for page in pages.values():
        for element in page.all("h1", "h2", "h3", "summary", "dt", "a"):
            if not element.text and not element.attributes.get("aria-label"):
                silent.append(f"{page.url}:{element.line}: <{element.tag}>")
    assert silent == []


def test_no_link_stands_in_a_link(pages: Pages) -> None:
    """A browser ends the outer one there, and half of its words lead nowhere."""
    nested = [
        f"{page.url}: {link.text}"
        for page in pages.values()
        for link in page.all("a")
        if "a" in [up.tag for up in link.above]
    ]
    assert nested == []


def test_images_say_what_they_show(pages: Pages) -> None:
    """Each image has words and its size, so that nothing jumps when it comes; a link with a label names its own."""
    images = [(page.url, image) for page in pages.values() for image in page.all("img")]
    content = [(url, image.attributes) for url, image in images if "pictures/" in image.attributes["src"]]
    assert content, "the procedures have drawings"
    unnamed = [(url, image) for url, image in images if not image.attributes.get("alt", "").strip()]
    assert [(url, image.line) for url, image in unnamed if not image.above[-1].attributes.get("aria-label")] == []
    assert [image for image in content if not (int(image[1]["width"]) > 0 and int(image[1]["height"]) > 0)] == []


def test_every_page_is_reached_from_home(pages: Pages) -> None:
    """Following links from the home page leads to all pages."""
    reached, waiting = {"index.html"}, ["index.html"]
    while waiting:
        page = pages[waiting.pop()]
        led = {resolve(page.url, link)[0] for link in page.links() if not is_elsewhere(link)}
        found = (led & set(pages)) - reached
        reached |= found
        waiting += found
    assert set(pages) - reached == {ERROR_PAGE}


def test_nothing_unfilled_is_shown(pages: Pages) -> None:
    """No page shows the marks of what was not filled; 'None' stands only where the book itself says it."""
    written = " ".join(" ".join(path.read_text(encoding="utf-8").split()) for path in sorted(BOOK.rglob("*.yaml")))
    wrong = []
    for page in pages.values():
        shown = page.texts + [
            value for element in page.elements for name, value in element.attributes.items() if name != "class"
        ]
        wrong += [
            f"{page.url}: {text}" for text in shown if SPILLED.search(text) and not (" " in text and text in written)
        ]
    assert wrong == []


def test_no_cell_is_empty(pages: Pages) -> None:
    """Each cell of each table, and each term with its figure, says something."""
    empty = [
        f"{page.url}:{cell.line}: <{cell.tag}>"
        for page in pages.values()
        for cell in page.all("td", "th", "dd", "dt", "figcaption", "li")
        if not cell.text
    ]
    assert empty == []


@pytest.mark.parametrize("folder", ["doors", "plumbing", "flooring", "concrete"])
def test_each_trade_has_its_page(folder: str, pages: Pages) -> None:
    """Each trade's page lists its procedures."""
    listed = {resolve(f"{folder}/index.html", link)[0] for link in pages[f"{folder}/index.html"].links()}
    assert {f"{folder}/{path.stem}.html" for path in (BOOK / folder).glob("*.yaml")} <= listed


def test_what_takes_a_built_site_is_slow(site: Path, request: pytest.FixtureRequest) -> None:
    """The quick run leaves it out without being told."""
    assert site.is_dir()
    assert request.node.get_closest_marker("slow")
