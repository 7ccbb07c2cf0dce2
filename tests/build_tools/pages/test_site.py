"""The built site: links, structure, what it loads, and the words that must not stand on it."""

from __future__ import annotations

import re
from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest

from build_tools.bench.script import BUDGET, weigh
from build_tools.commands.site import BOOK
from tests.site_pages import SitePage, attribute, is_elsewhere, loaded_by_css, resolve, text_of

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


def test_every_page_is_well_formed(pages: Pages) -> None:
    """A browser that meets a mistake in HTML guesses, and what it makes of the page is not what was written."""
    assert [f"{page.url}: {found}" for page in pages.values() for found in page.mistakes()] == []


@pytest.mark.parametrize(
    ("html", "mistake"),
    [
        ("<div><p>a</p>", "Expected closing tag"),
        ("<p>a</p></div>", "End tag (div) seen too early"),
        ("<b><i>a</b></i>", "End tag (b) violates"),
        ("<p><table></table></p>", "Unexpected end tag (p)"),
        ("<ul><div></ul></div>", "End tag (ul) seen too early"),
        ("<svg><g></svg>", "Unexpected end tag (svg)"),
        ("<a href='b'>a <a href='c'>d</a></a>", "start tag (a) implies end tag (a)"),
        ("<table><b>a</b></table>", "Unexpected start tag (b) in table context"),
        ("<p id='a' id='b'>c</p>", "duplicate attribute"),
        ("<p>4 < 5 &nosuch; c</p>", "Expected tag name"),
        ("<div/>", "Trailing solidus"),
        ("<ul><li>a<li>b</ul>", "2 <li>, 0 </li>"),
        ("<dl><dt>a<dd>b</dd></dl>", "1 <dt>, 0 </dt>"),
        ("<p>a<div></div>", "1 <p>, 0 </p>"),
    ],
)
def test_what_is_not_well_formed_is_found(html: str, mistake: str) -> None:
    """Also what HTML allows to be left out and no template means to leave out."""
    assert mistake in " ".join(SitePage("a.html", html).mistakes())


def test_every_internal_link_resolves(pages: Pages, site: Path) -> None:
    """Each link and its anchor lead to something that is there: a page, or a file to take away."""
    broken = []
    ids = {url: set(page.ids()) for url, page in pages.items()}
    for page in pages.values():
        for link in page.links():
            if is_elsewhere(link):
                continue
            file, anchor = resolve(page.url, link)
            there = file in pages if file.endswith(".html") else (site / file).is_file()
            if not there or (anchor and anchor not in ids[file]):
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
        ids = {*page.ids(), *THEME_TARGETS}
        for element in page.soup.find_all(True):
            for name in ("for", "aria-labelledby", "aria-describedby", "aria-controls"):
                named = attribute(element, name).split()
                wrong += [f"{page.url}:{element.sourceline}: {name}={id}" for id in named if id not in ids]
    assert wrong == []


def test_headings_are_in_order(pages: Pages) -> None:
    """Each page has one first heading, starts with it, and no level is jumped on the way down."""
    wrong = []
    for page in pages.values():
        levels = [int(heading.name[1]) for heading in page.select("h1, h2, h3, h4, h5, h6")]
        jumps = any(below > above + 1 for above, below in pairwise(levels))
        if levels[:1] != [1] or levels.count(1) != 1 or jumps:
            wrong.append(f"{page.url}: {levels}")
    assert wrong == []


def test_headings_and_links_have_words(pages: Pages) -> None:
    """No heading is empty, and each link has words, a label or a picture with words."""
    silent = []
    for page in pages.values():
        for element in page.select("h1, h2, h3, summary, dt, a"):
            if not text_of(element) and not element.get("aria-label"):
                silent.append(f"{page.url}:{element.sourceline}: <{element.name}>")
    assert silent == []


def test_images_say_what_they_show(pages: Pages) -> None:
    """Each image has words and its size, so that nothing jumps when it comes; a link with a label names its own."""
    images = [(page.url, image) for page in pages.values() for image in page.select("img")]
    content = [(url, image) for url, image in images if "pictures/" in image["src"]]
    assert content, "the procedures have drawings"
    unnamed = [(url, image) for url, image in images if not attribute(image, "alt").strip()]
    assert [(url, one.sourceline) for url, one in unnamed if not (one.parent and one.parent.get("aria-label"))] == []
    sizes = ("width", "height")
    assert [image for image in content if not all(int(attribute(image[1], side)) > 0 for side in sizes)] == []


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
        shown = page.texts() + [
            attribute(element, name) for element in page.select("*") for name in element.attrs if name != "class"
        ]
        wrong += [
            f"{page.url}: {text}" for text in shown if SPILLED.search(text) and not (" " in text and text in written)
        ]
    assert wrong == []


def test_no_cell_is_empty(pages: Pages) -> None:
    """Each cell of each table, and each term with its figure, says something."""
    empty = [
        f"{page.url}:{cell.sourceline}: <{cell.name}>"
        for page in pages.values()
        for cell in page.select("td, th, dd, dt, figcaption, li")
        if not text_of(cell)
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
