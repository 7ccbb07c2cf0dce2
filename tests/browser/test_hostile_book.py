"""A book that means harm, in a real browser: nothing of its texts runs, and no page ends before its end.

The policy of the pages is switched off here, since it would hide what only it stops; other tests hold it by itself.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import partial
from http.server import ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any

import pytest
import yaml
from selenium.webdriver import Chrome

from build_tools.commands.pack import packed
from tests.browser.conftest import Quiet
from tests.browser.live_form import LiveForm
from tests.browser.on_site import OnSite, forget_all
from tests.browser.test_walk import Walk
from tests.browser.window import Window
from tests.build_tools.records.test_records import item, record
from tests.builds import build_site
from tests.hostile import VECTORS, Hostile, hostile_book, text_fields

PAGE = "plumbing/toilet-set.html"
ALL = " ".join(VECTORS)
CONTROL = "control.html"
"""A page on which something does run, so that a look that sees nothing is noticed."""
NOTES = """
window.ran = (what) => (top.hasRun ??= []).push(`${location.pathname} ${what}`);
for (const name of ["alert", "confirm", "prompt"]) window[name] = () => ran(name);
"""
LOOK = r"""
const GONE = `iframe object embed base frameset marquee plaintext xmp noembed noframes math foreignObject animate set
  audio video crew-vector #vector link[href^=http]`.split(/\s+/);
const ADDRESS = /^(?:#|\.{0,2}\/|https:\/\/|[\w-]+(?:[/.#?]|$)|$|data:image\/|blob:)/;
window.lookAt = (page) => {
  const said = [];
  const held = [...page.querySelectorAll("template")].flatMap(({ content }) => [...content.querySelectorAll("*")]);
  for (const one of [...page.querySelectorAll("*"), ...held]) {
    for (const { name, value } of one.attributes) {
      const isAddress = ["href", "src", "action", "formaction", "xlink:href", "data", "srcdoc"].includes(name);
      const isStrange = isAddress && !ADDRESS.test(value.replace(location.origin, ""));
      const isStyle = name === "style" && one !== page.documentElement;
      if (name.startsWith("on") || isStyle || isStrange) said.push(`<${one.tagName} ${name}=${value.slice(0, 80)}>`);
    }
  }
  for (const one of page.querySelectorAll("script")) {
    if (one.type) JSON.parse(one.textContent);
    else if (!one.src && one.parentElement !== page.head) said.push(`runs in the page: ${one.textContent}`);
  }
  said.push(...GONE.filter((one) => page.querySelector(one) || held.some((part) => part.matches(one))));
  if (page.querySelector("template:not(.worked-form dd > template)")) said.push("template");
  const foot = page.querySelector(".md-footer .book-foot");
  const made = page.querySelectorAll(".md-content > article > .crew").length;
  if (!foot || foot.closest(".crew") || made !== (page.URL.endsWith("404.html") ? 0 : 1)) said.push("ends early");
  return said;
};
"""
SWEEP = """
const [addresses, done] = arguments;
const found = {};
let at = 0;
async function next() {
  while (at < addresses.length) {
    const address = addresses[at++];
    const frame = document.createElement("iframe");
    const loaded = new Promise((is) => (frame.onload = is));
    frame.src = `/${address}`;
    document.body.append(frame);
    await loaded;
    await new Promise((is) => setTimeout(is, 50));
    const said = lookAt(frame.contentDocument);
    if (said.length) found[address] = said;
    frame.remove();
  }
}
Promise.all([next(), next(), next()]).then(() => done([found, window.hasRun ?? []]), (why) => done([String(why), []]));
"""


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory, kept: Path) -> tuple[Path, Path, Hostile]:
    """The book, its site, and which text stands in which field."""
    folder = tmp_path_factory.mktemp("hostile")
    book, hostile = hostile_book(folder)
    return book, build_site(book, folder / "site", kept, strict=False), hostile


@pytest.fixture(scope="module")
def there(made: tuple[Path, Path, Hostile]) -> Iterator[str]:
    """The address at which that site is served."""
    (made[1] / CONTROL).write_text(
        "<!doctype html><title>x</title><img src=x onerror=ran('control')>", encoding="utf-8"
    )
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(made[1])))
    Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()


@pytest.fixture
def open_to_all(browser: Chrome, there: str) -> Iterator[Window]:
    """A window on that site whose pages have no policy, and which notes what runs."""
    forget_all(browser, there)
    scripts = [
        browser.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": source}) for source in (NOTES, LOOK)
    ]
    browser.execute_cdp_cmd("Page.setBypassCSP", {"enabled": True})
    yield Window(browser, there)
    browser.execute_cdp_cmd("Page.setBypassCSP", {"enabled": False})
    for script in scripts:
        browser.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", script)


def nothing_ran(window: Window) -> None:
    """Nothing of the texts runs or makes an element, now."""
    assert window.script("return window.hasRun ?? []") == []
    assert window.script("return lookAt(document)") == []


def test_every_text_field_has_every_text(made: tuple[Path, Path, Hostile]) -> None:
    """A field that is added to the model and stands nowhere in the book is named here."""
    given = made[2].given
    assert len(VECTORS) >= 160
    assert {field: set(VECTORS) - given[field] for field in text_fields() if given[field] != set(VECTORS)} == {}


def test_no_page_runs_a_text_or_ends_early(made: tuple[Path, Path, Hostile], open_to_all: Window) -> None:
    """Every page but for the calculators', of which one stands for all: they show no more of the book."""
    window, site = open_to_all, made[1]
    pages = sorted(path.relative_to(site).as_posix() for path in site.rglob("*.html"))
    pages = [
        page
        for page in pages
        if not page.startswith("calculators/") or page.endswith(("/index.html", "/wax-ring.html"))
    ]
    window.driver.set_script_timeout(120)
    window.driver.get(f"{window.address}robots.txt")
    found, ran = window.driver.execute_async_script(SWEEP, pages)
    assert found.pop(CONTROL) == ["<IMG onerror=ran('control')>", "ends early"]
    assert found == {}
    assert ran == [f"/{CONTROL} control"]


def test_titles_stand_as_they_were_written(made: tuple[Path, Path, Hostile], open_to_all: Window) -> None:
    """In the menu, in the heading, in the name of the page and on its printed foot."""
    window, book = open_to_all, made[0]
    trades = yaml.safe_load((book / "reference" / "trades" / "trades.yaml").read_text(encoding="utf-8"))
    titles = {name: " ".join(trade["title"].split()) for name, trade in trades.items()}
    window.open("plumbing/index.html")
    lines = (
        "return [...document.querySelectorAll(arguments[0])].map(one => one.textContent.replace(/\\s+/g, ' ').trim())"
    )
    assert window.script(lines, "h1") == [titles["plumbing"]]
    assert set(titles.values()) <= set(window.script(lines, ".md-nav .md-nav__link .md-ellipsis"))
    assert " ".join(window.driver.title.split()) == f"{titles['plumbing']} - Crew Methods"
    window.open(PAGE)
    foot = str(window.script("return getComputedStyle(document.documentElement).getPropertyValue('--foot')"))
    assert foot[0] == foot[-1] == '"'
    assert '"' not in foot[1:-1].replace('\\"', "")


def test_what_is_entered_and_asked_for_on_a_page(open_to_all: Window) -> None:
    """Ticks, the panels, the walk, a form, the search and the records write the same texts by script."""
    window = open_to_all
    page = OnSite(window, "?job=<img src=x onerror=ran('job')>&space=<svg onload=ran('space')>", PAGE)
    step = page.steps()[0]
    page.tick(step)
    page.wait_kept(1)
    form = LiveForm(window, "#choose-ring")
    form.type("rise", "<img src=x onerror=ran('typed')>")
    for words in ("Job, space, who", "The record"):
        page.press(words)
        window.until(lambda: window.find_all(".on-site .room > *"), words)
        nothing_ran(window)
    Walk(window)
    nothing_ran(window)
    window.open("index.html")
    window.find("[data-find]").click()
    window.until(lambda: window.find_all("dialog input"), "the search").pop().send_keys("script img ran")
    window.until(lambda: window.find_all("dialog ol a"), "answers")
    nothing_ran(window)
    window.open("records.html")
    window.until(lambda: window.find_all("[data-device] table"), "what was entered")
    nothing_ran(window)


def test_records_of_harm(open_to_all: Window, tmp_path: Path) -> None:
    """Every text of a record is one, on the owner's page and on that of a procedure."""
    window = open_to_all
    measures = [{"name": ALL, "what": ALL, "limits": ALL}]
    steps = [{"id": ALL, "title": ALL, "print": ALL, "measures": measures, "hold": ALL}]
    reading: dict[str, Any] = {"name": ALL, "what": ALL, "limits": ALL, "text": ALL, "value": 1.0, "verdict": "outside"}
    items = [item("tick", ALL, done=True), item("note", ALL, text=ALL), item("reading", ALL, **reading)]
    items += [item("hold", "gone", looked=ALL, when="2026-11-25T08:00", passed=True), item("note", "gone", text=ALL)]
    names: dict[str, Any] = {name: {"id": ALL, "title": ALL} for name in ("job", "space", "procedure")}
    names["procedure"]["revision"] = 1
    given = record([one | {"by": ALL, "print": "other"} for one in items], steps=steps, **names)
    own = given | {"procedure": {"id": "toilet-set", "title": ALL, "revision": 1}}
    file = tmp_path / "<img src=x onerror=ran('file')>.json"
    file.write_text(json.dumps([given, own]), encoding="utf-8")
    page = OnSite(window, "", PAGE)
    page.press("The record")
    window.until(lambda: window.find_all("#record-in"), "the way in").pop().send_keys(str(file))
    window.until(lambda: "put in" in window.find(".said").text, "put in")
    nothing_ran(window)
    page.press("Go there")
    nothing_ran(window)
    window.open("records.html")
    window.until(lambda: window.find_all("[data-device] table"), "what was taken in")
    window.find("#records-in").send_keys(str(file))
    window.until(lambda: window.find_all("[data-read] table"), "what was read")
    nothing_ran(window)


def test_a_packed_procedure(made: tuple[Path, Path, Hostile], open_to_all: Window, tmp_path: Path) -> None:
    """The one file too, with its own policy on and off."""
    text = packed(made[0], "toilet-set", tmp_path)
    assert isinstance(text, str), text
    file = tmp_path / "toilet-set.html"
    file.write_text(text, encoding="utf-8")
    window = open_to_all
    for bypass in (True, False):
        window.driver.execute_cdp_cmd("Page.setBypassCSP", {"enabled": bypass})
        window.open(file.as_uri())
        LiveForm(window, "#choose-ring")
        assert window.find_all("body > main > footer.crew")
        assert window.script("return window.hasRun ?? []") == []
        said = window.script("return lookAt(document)")
        assert [one for one in said if not one.startswith("runs in the page")] == ["ends early"]
        assert len(said) == 1 + window.script("return document.querySelectorAll('body script:not([type])').length")
        assert window.refused() == []
