"""The book kept on a phone: without network, through new editions, broken downloads and browsers that cannot."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from selenium.webdriver import Chrome
from selenium.webdriver.common.keys import Keys

from build_tools.browser.offline import write_offline, write_preview
from build_tools.pages.words import words
from tests.browser.live_form import LiveForm
from tests.browser.published import Published, a_few, published
from tests.browser.window import Window
from tests.builds import change

PAGE, RING = "plumbing/toilet-set.html", "#choose-ring"
OLD, NEW = "This device has the book of Nov 20, 2026.", "This device has the book of Dec 2, 2026."
NEWER = f"{OLD} A newer book is here. What you ticked and wrote stays."
ACTION = "Lower the bowl straight down over the bolts."
CHANGED = "Lower the bowl straight down, two at it."
FOOT = ".book-foot .kept"
STORES = "const done = arguments[0]; caches.keys().then(done)"
SHOWN = "const done = arguments[0]; fetch(location.href).then(page => page.text()).then(done)"
Start = Callable[..., Chrome]


@pytest.fixture
def whole(site: Path, tmp_path: Path) -> Iterator[Published]:
    """The whole site, published."""
    with published(site, tmp_path) as one:
        yield one


@pytest.fixture
def book(site: Path, tmp_path: Path) -> Iterator[Published]:
    """A few pages of the site, published: how they are kept does not depend on how many they are."""
    with published(a_few(site, tmp_path / "few"), tmp_path) as one:
        yield one


def said(window: Window) -> str:
    """The line at the foot of the page."""
    return str(window.script("return document.querySelector(arguments[0])?.textContent ?? ''", f"{FOOT} p"))


def says(window: Window, words: str) -> None:
    """Wait until the line at the foot says this."""
    window.until(lambda: said(window) == words, f"the line '{words}'")


def stores(window: Window) -> list[str]:
    """The editions that the browser holds."""
    return [name for name in window.driver.execute_async_script(STORES) if name.startswith("crew-book")]


def kept_once(start: Start, book: Published, page: str = PAGE) -> Window:
    """A phone that has opened a page once and has the book."""
    window = Window(start(), book.address)
    window.open(page)
    says(window, OLD)
    return window


def publish_new(book: Published) -> None:
    """A new edition, in which one step says something else."""
    assert (book.site / PAGE).read_text(encoding="utf-8").count(f'<span class="do">{ACTION}') == 1
    book.publish_change(PAGE, f'<span class="do">{ACTION}', f'<span class="do">{CHANGED}', "2026-12-02T08:00Z")


def test_without_network_from_the_second_visit(browsers: Start, whole: Published) -> None:
    """One visit to one page; then, without network and with the browser started anew, the whole book is there."""
    kept_once(browsers, whole)
    whole.disconnect()
    window = Window(browsers(), whole.address)
    window.open("")
    says(window, OLD)
    window.find(".crew .find").click()
    window.until(lambda: window.find_all(".crew-search input"), "the field of the search")
    window.find(".crew-search input").send_keys("commode")
    window.until(lambda: window.find_all(".crew-search li a"), "what is found")
    window.find(".crew-search input").send_keys(Keys.ENTER)
    window.until(lambda: window.script("return location.pathname").endswith(PAGE), "the procedure")
    form = LiveForm(window, RING)
    before = form.says("ring_to_use")
    form.type("rise", "3/4 in floor above flange")
    window.until(lambda: form.says("ring_to_use") != before, "another answer")
    assert window.script("return [...document.images].every(one => !one.complete || one.naturalWidth > 0)")
    window.open("jobs/garden-studio/index.html")
    assert "Garden studio" in window.driver.title
    assert window.console() == []


def test_a_page_that_the_book_lacks_says_so(browsers: Start, book: Published) -> None:
    """Without network an address that is not in the book is answered in words, with a way home."""
    window = kept_once(browsers, book)
    book.disconnect()
    window.driver.get(f"{book.address}plumbing/nothing.html")
    assert window.find("h1").text == "Not on this device"
    window.find("a").click()
    window.until(lambda: window.driver.title == "Crew Methods", "the home page")


def test_the_address_without_its_last_slash_leads_to_the_book(browsers: Start, book: Published, tmp_path: Path) -> None:
    """Another book at the top of the same server answers such an address, and leads on to the one that lies there."""
    shutil.copytree(book.site, tmp_path / "other")
    change(tmp_path / "other" / "index.html", "<title>Crew Methods</title>", "<title>Another book</title>")
    write_offline(tmp_path / "other", "2026-11-20T08:00Z", words("en"), "en")
    window = kept_once(browsers, book)
    shutil.copytree(tmp_path / "other", book.root, dirs_exist_ok=True)
    top = Window(window.driver, f"http://127.0.0.1:{book.port}/")
    top.open("")
    says(top, OLD)
    assert window.driver.title == "Another book"
    book.disconnect()
    window.driver.get(book.address.rstrip("/"))
    assert (window.driver.title, window.driver.current_url) == ("Crew Methods", book.address)


def test_a_new_edition_is_offered_and_left_alone_until_it_is_taken(browsers: Start, book: Published) -> None:
    """It waits through pages and restarts; the window that takes it has it, another one stays as it was opened."""
    window = kept_once(browsers, book)
    publish_new(book)
    window.open(PAGE)
    says(window, f"{NEWER}")
    assert ACTION in window.driver.execute_async_script(SHOWN)
    window = Window(browsers(), book.address)
    window.open(PAGE)
    says(window, NEWER)
    assert ACTION in window.find("#set-bowl .do").text
    first = window.driver.current_window_handle
    window.driver.switch_to.new_window("tab")
    window.open("index.html")
    says(window, NEWER)
    window.find(".home .kept button").click()
    says(window, NEW)
    window.open(PAGE)
    assert CHANGED in window.find("#set-bowl .do").text
    second = window.driver.current_window_handle
    window.driver.switch_to.window(first)
    assert ACTION in window.driver.execute_async_script(SHOWN), "an open page goes on with its own edition"
    assert len(stores(window)) == 2
    window.driver.close()
    window.driver.switch_to.window(second)
    window.open(PAGE)
    window.until(lambda: len(stores(window)) == 1, "the old edition is put away")


def test_the_offer_stands_above_a_page_as_well(browsers: Start, book: Published) -> None:
    """Somebody who goes straight to a procedure sees it there, and takes it there."""
    window = kept_once(browsers, book)
    publish_new(book)
    window.open(PAGE)
    window.until(lambda: window.find_all(".newer button"), "the offer")
    assert window.find(".newer button").text == "Change to the book of Dec 2, 2026"
    window.find(".newer button").click()
    says(window, NEW)
    assert window.find_all(".newer") == []


def test_only_what_changed_is_fetched(browsers: Start, book: Published) -> None:
    """A new edition takes the files that are the same from the old one; the same book built again is not new."""
    window = kept_once(browsers, book)
    book.publish("2026-12-02T08:00Z")
    book.asked.clear()
    window.open("index.html")
    window.until(lambda: said(window) == NEW, "the later date")
    assert set(book.asked) <= {"offline.js", "favicon.ico"}
    publish_new(book)
    book.asked.clear()
    window.open(PAGE)
    window.until(lambda: "A newer book is here" in said(window), "the new edition")
    assert set(book.asked) <= {"offline.js", PAGE}


def test_a_download_that_breaks_leaves_the_old_book_whole(browsers: Start, book: Published) -> None:
    """Half a file, then no signal: the old edition stays, and the rest comes when there is signal."""
    window = kept_once(browsers, book)
    publish_new(book)
    book.cut = lambda path: path == PAGE
    window.open(PAGE)
    says(window, f"{OLD} The book did not come whole. It goes on by itself when there is signal.")
    book.disconnect()
    window.open(PAGE)
    assert ACTION in window.find("#set-bowl .do").text
    assert len(stores(window)) == 2
    book.cut = lambda path: False
    book.connect()
    book.asked.clear()
    window.open(PAGE)
    says(window, NEWER)
    assert set(book.asked) <= {"offline.js", PAGE}


def test_a_first_download_goes_on_where_it_broke(browsers: Start, book: Published) -> None:
    """What came before the break is not fetched twice, and nothing is called kept that is not whole."""
    book.cut = lambda path: path.startswith("power/")
    window = Window(browsers(), book.address)
    window.open(PAGE)
    says(window, "The book did not come whole. It goes on by itself when there is signal.")
    book.cut = lambda path: False
    here = set(window.driver.execute_async_script(FILES))
    assert "index.html" in here
    book.asked.clear()
    window.open(PAGE)
    says(window, OLD)
    fetched = {path for path in book.asked if path.endswith(".html")}
    assert fetched & here <= {PAGE}


FILES = """
    const done = arguments[0];
    caches.keys().then(names => caches.open(names.find(name => name.startsWith("crew-book"))))
        .then(store => store.keys())
        .then(all => done(all.map(one => new URL(one.url).pathname.replace("/crew/book/", ""))));
"""


def test_a_file_that_is_not_the_published_one_is_not_taken(browsers: Start, book: Published) -> None:
    """A server in between that hands out something else: the list's digest tells it, and the old book stays."""
    window = kept_once(browsers, book)
    publish_new(book)
    (book.site / PAGE).write_text("<p>Free signal in this cafe</p>", encoding="utf-8")
    window.open("index.html")
    says(
        window, f"{OLD} What came is not what was published, so it was not taken. It is tried again with the next page."
    )
    window.open(PAGE)
    assert ACTION in window.find("#set-bowl .do").text


def test_a_full_phone_is_said(browsers: Start, book: Published) -> None:
    """Where there is no room, the page says how much is wanted, and goes on from the network."""
    window = Window(browsers(), book.address)
    quota = {"origin": book.address.removesuffix("crew/book/"), "quotaSize": 300_000}
    window.driver.execute_cdp_cmd("Storage.overrideQuotaForOrigin", quota)
    window.open(PAGE)
    window.until(lambda: "no room for the book" in said(window), "what is wanted")
    assert stores(window) == []


@pytest.mark.parametrize(
    ("without", "words"),
    [
        ("delete Navigator.prototype.serviceWorker", "This browser cannot keep the book for work without signal."),
        ("delete window.caches", "This browser cannot keep the book for work without signal."),
        (
            "Object.defineProperty(window, 'isSecureContext', {value: false})",
            "This address is not a secure one (https), so this browser does not keep the book for work without signal.",
        ),
        (
            "ServiceWorkerContainer.prototype.register = () => Promise.reject(new Error())",
            "This browser refuses to keep the book: in a private window, or by its settings.",
        ),
    ],
)
def test_a_browser_that_cannot_says_so(without: str, words: str, browsers: Start, book: Published) -> None:
    """Each browser that keeps nothing says why in plain words, and everything else works."""
    window = Window(browsers(), book.address)
    window.driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": without})
    window.open(PAGE)
    says(window, words)
    assert LiveForm(window, RING).says("ring_to_use")
    assert window.console() == []


def test_who_saves_data_is_asked(browsers: Start, book: Published) -> None:
    """Where each megabyte costs, the size is said before anything comes, and a tap begins it."""
    window = Window(browsers(), book.address)
    saves = "Object.defineProperty(navigator, 'connection', {value: {saveData: true}})"
    window.driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": saves})
    window.open(PAGE)
    window.until(lambda: window.find_all(f"{FOOT} button"), "the question")
    size = book.publish("2026-11-20T08:00Z").bytes / 1e6
    assert window.find(f"{FOOT} button").text == f"Keep the book on this device ({size:.1f} MB)"
    assert stores(window) == []
    window.script("arguments[0].click()", window.find(f"{FOOT} button"))
    says(window, OLD)


def test_a_preview_is_never_stuck_on_a_kept_page(browsers: Start, book: Published) -> None:
    """A browser that has kept a published book shows the preview that is now at the same address."""
    window = kept_once(browsers, book)
    write_preview(book.site)
    for page in book.site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        page.write_text(text.replace('data-worker="offline.js"', 'data-worker=""'), encoding="utf-8")
    window.open(PAGE)
    says(window, "This is a preview: no book is kept on this device.")
    window.until(lambda: stores(window) == [], "the kept book is put away")
    assert window.script("return navigator.serviceWorker.controller") is None


def test_it_opens_from_a_folder(browsers: Start, book: Published) -> None:
    """The same folder works opened from a file, and says that it needs no signal."""
    window = Window(browsers(), f"{book.site.as_uri()}/")
    window.open(PAGE)
    says(window, "Opened from a folder: the whole book lies in it, and needs no signal.")
    assert LiveForm(window, RING).says("ring_to_use")
    assert window.console() == []
