"""Builds one after another in one process with one plugin, as ``mkdocs serve`` makes them when files are saved."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.livereload import LiveReloadServer

from build_tools.browser.offline import SUMMARY, WORKER
from build_tools.commands.site import settings_for
from build_tools.plan import planning
from build_tools.plugin import CrewMethodsPlugin
from tests.builds import change, copy_book
from tests.site_pages import SitePage, attribute, text_of

TOILET, LOCK = "plumbing/toilet-set", "doors/lockset-install"
ACTION = "Lower the bowl straight down over the bolts."
ENTRY_EDITS = [
    ("values/plumbing", "square, most\n  quantity: 1/8 in", "square, most\n  quantity: 5/32 in", ">5/32 in</a>"),
    ("inspections/plumbing", "toilet\n  who: Crew lead", "toilet\n  who: Whoever leads", ">Whoever leads</dd>"),
    ("inspections/plumbing", "Whoever leads\n  notice: 1 h", "Whoever leads\n  notice: 2 h", "<dd>2 h</dd>"),
    ("tools/common", "minutes.\n  protects: true", "minutes.\n  rented: true", '<span class="mark">rented</span>'),
    ("materials/plumbing", "title: Wax ring, standard", "title: Thin ring", ">Thin ring</a>"),
    ("sources/plumbing", "title: Uniform Plumbing Code", "title: A plumbing code", ">A plumbing code</a>"),
    ("trades/trades", "title: Plumbing", "title: Pipework", ">Pipework</a>"),
]
"""File of the reference, what stands there, what is written in its place, and what the toilet page then shows."""
ADDRESS = "http://127.0.0.1:8000/"
LONG_JOB = "three-cottages.yaml"
"""Its plan and pages take six parts of seven of each build, and are made as those of the job that stays."""


class Preview:
    """A preview at work: the book that is edited, and the site that follows."""

    def __init__(self, folder: Path, kept: Path) -> None:
        self.folder = folder
        self.book = copy_book(folder, without=LONG_JOB)
        self.settings = settings_for(self.book, folder, cache=str(kept))
        self.site = folder / "shown"
        started = self._config(self.site)
        started.plugins.on_startup(command="serve", dirty=False)
        self.plugin = started.plugins["crew-methods"]

    def _config(self, site: Path) -> MkDocsConfig:
        config = load_config(str(self.settings), site_dir=str(site))
        config.site_url = ADDRESS
        return config

    def build(self) -> None:
        """What the server does after a save."""
        config = self._config(self.site)
        assert config.plugins["crew-methods"] is self.plugin, "the plugin is kept between builds"
        build(config, serve_url=ADDRESS)

    def build_anew(self, site: Path) -> None:
        """The same with a plugin that remembers nothing."""
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(MkDocsConfig.plugins, "plugin_cache", {})
            config = self._config(site)
            assert config.plugins["crew-methods"] is not self.plugin
            build(config, serve_url=ADDRESS)

    def mend(self) -> None:
        """Take back every edit, as an author does, and build again."""
        shutil.rmtree(self.book)
        copy_book(self.folder, without=LONG_JOB)
        self.build()

    def edit(self, procedure: str, old: str, new: str) -> None:
        """Change one place of a procedure's file."""
        change(self.book / f"{procedure}.yaml", old, new)

    def text(self, url: str) -> str:
        """A file of the site."""
        return (self.site / url).read_text(encoding="utf-8")

    def links(self, url: str, id: str) -> dict[str, str]:
        """The links in an element of a page, each address with its words."""
        links = SitePage(url, self.text(url)).select(f"#{id} a")
        return {attribute(link, "href"): text_of(link) for link in links}


@pytest.fixture(scope="module")
def started(tmp_path_factory: pytest.TempPathFactory, kept: Path) -> Iterator[Preview]:
    """A preview whose first build is made; its plugin is its own."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(MkDocsConfig.plugins, "plugin_cache", {})
        started = Preview(tmp_path_factory.mktemp("preview"), kept)
        assert isinstance(started.plugin, CrewMethodsPlugin)
        started.build()
        yield started


@pytest.fixture
def preview(started: Preview) -> Iterator[Preview]:
    """That preview, with the book as it was: what the tests before have edited is taken back."""
    yield started
    started.mend()


def test_the_thread_that_answers_holds_no_preview_that_is_told_to_end(preview: Preview) -> None:
    server = LiveReloadServer(lambda: None, "127.0.0.1", 8000, str(preview.site))
    preview.plugin.on_serve(server, config=MkDocsConfig(), builder=lambda: None)
    server.server_close()
    assert server.serve_thread.daemon


def test_an_edit_shows(preview: Preview, monkeypatch: pytest.MonkeyPatch) -> None:
    """After a save the page, the sheets of a job, the search and the open data say the new words; another page stays as
    it was. No plan is made again for words."""
    other, new = preview.text(f"{LOCK}.html"), "Let the bowl down onto the bolts."
    preview.edit(TOILET, ACTION, new)
    monkeypatch.setattr(planning, "plan_with_variants", lambda *_: pytest.fail("planned again"))
    preview.build()
    sheets = [path.relative_to(preview.site).as_posix() for path in preview.site.glob("jobs/*/sheets-*.html")]
    assert [url for url in sheets if new in preview.text(url)]
    assert not [url for url in sheets if ACTION in preview.text(url)]
    for url in (f"{TOILET}.html", "assets/script/found.js", "book.json"):
        assert new in preview.text(url)
        assert ACTION not in preview.text(url)
    assert preview.text(f"{LOCK}.html") == other


def test_back_links_follow(preview: Preview) -> None:
    """A reference that is added or taken out shows at its target as a link back."""
    assert f"{TOILET}.html" not in preview.links("terms.html", "backset")
    preview.edit(TOILET, ACTION, "Lower it by its [](term:backset).")
    preview.build()
    assert preview.links("terms.html", "backset")[f"{TOILET}.html"] == "Set a toilet"
    preview.edit(TOILET, "Lower it by its [](term:backset).", ACTION)
    preview.build()
    assert f"{TOILET}.html" not in preview.links("terms.html", "backset")


def test_a_title_is_followed(preview: Preview) -> None:
    """A new title stands at once on each page that links to the procedure, though only its own file was saved."""
    preview.edit(TOILET, ACTION, "Go on as in [](procedure:lockset-install).")
    preview.build()
    assert preview.links(f"{TOILET}.html", "set-bowl")[f"../{LOCK}.html"] == "Install a lockset"
    preview.edit(LOCK, "title: Install a lockset", "title: Fit a lock")
    preview.build()
    assert preview.links(f"{TOILET}.html", "set-bowl")[f"../{LOCK}.html"] == "Fit a lock"
    for url in ("index.html", "doors/index.html", "tools.html", "crew.html", "assets/script/found.js"):
        assert "Fit a lock" in preview.text(url)
        assert "Install a lockset" not in preview.text(url)


def test_the_action_of_a_step_is_followed(preview: Preview) -> None:
    """A link without words takes over the action of the step it leads to, also when that is written anew."""
    preview.edit(TOILET, ACTION, "First [](procedure:lockset-install#wedge).")
    preview.build()
    address = f"../{LOCK}.html#wedge"
    assert preview.links(f"{TOILET}.html", "set-bowl")[address].startswith("Wedge the door open")
    preview.edit(LOCK, "do: Wedge the door open", "do: Hold the door open")
    preview.build()
    assert preview.links(f"{TOILET}.html", "set-bowl")[address].startswith("Hold the door open")


def test_a_mistake_is_named_and_mended(preview: Preview, caplog: pytest.LogCaptureFixture) -> None:
    """A broken save stops the build with file and line; the next good save shows again."""
    preview.edit(TOILET, ACTION, "Lower it as in [](procedure:lockset-instal).")
    text = (preview.book / f"{TOILET}.yaml").read_text(encoding="utf-8")
    line = text[: text.index("lockset-instal)")].count("\n") + 1
    with pytest.raises(Abort):
        preview.build()
    said = [record.getMessage() for record in caplog.records if record.levelname == "ERROR"]
    assert f"procedures/{TOILET}.yaml:{line}:" in said[0]
    assert "did you mean 'lockset-install'?" in said[0]
    assert said[-1] == "The book has 1 error."
    preview.edit(TOILET, "[](procedure:lockset-instal)", "[](procedure:lockset-install)")
    preview.build()
    assert preview.links(f"{TOILET}.html", "set-bowl")[f"../{LOCK}.html"] == "Install a lockset"


def test_a_page_comes_and_goes_with_its_file(preview: Preview) -> None:
    """A file that is added brings its page and the links to it; when it is deleted they go."""
    second = "doors/lockset-second"
    shutil.copy(preview.book / f"{LOCK}.yaml", preview.book / f"{second}.yaml")
    preview.build()
    linking = ["index.html", "doors/index.html", "tools.html", "assets/script/found.js", "book.json"]
    assert (preview.site / f"{second}.html").is_file()
    assert [url for url in linking if "lockset-second" not in preview.text(url)] == []
    (preview.book / f"{second}.yaml").unlink()
    preview.build()
    assert not (preview.site / f"{second}.html").exists()
    assert [url for url in linking if "lockset-second" in preview.text(url)] == []


def test_entries_are_followed(preview: Preview) -> None:
    """An edited entry of the reference shows at once on a procedure page that takes something from it."""
    stale = []
    for file, old, new, shown in ENTRY_EDITS:
        assert shown not in preview.text(f"{TOILET}.html")
        change(preview.book / "reference" / f"{file}.yaml", old, new)
        preview.build()
        if shown not in preview.text(f"{TOILET}.html"):
            stale.append(file)
    assert stale == []


def test_a_preview_equals_a_fresh_build(preview: Preview, tmp_path: Path) -> None:
    """After edits of all kinds the site is, byte for byte, what a build without memory makes.

    But for what keeps a published book on a phone, since a preview keeps nothing, and for the script that a preview
    may put into a page.
    """
    preview.edit(LOCK, "title: Install a lockset", "title: Fit a lock")
    preview.build()
    change(
        preview.book / "reference/values/plumbing.yaml",
        "title: Bowl out of level or square, most",
        "title: Bowl level within",
    )
    preview.edit(TOILET, ACTION, "Lower it by [](value:bowl-tolerance).")
    preview.build()
    preview.edit(TOILET, "id: settle-bowl", "id: press-bowl")
    preview.build()
    preview.build_anew(tmp_path / "anew")
    files = _files(preview.site)
    assert _files(tmp_path / "anew") == files
    told = [
        file
        for file in files
        if file.suffix != ".gz" and _bytes(preview.site / file) != _bytes(tmp_path / "anew" / file)
    ]
    assert told == []


def _files(site: Path) -> set[Path]:
    """The files of a site, without those that keep it on a phone."""
    return {path.relative_to(site) for path in site.rglob("*") if path.is_file()} - {Path(WORKER), Path(SUMMARY)}


def _bytes(file: Path) -> bytes:
    """A file's content, without the name of what keeps the book on a phone, and what may run in it."""
    content = file.read_bytes().replace(f'data-worker="{WORKER}"'.encode(), b'data-worker=""')
    return re.sub(rb"(; script-src 'self') \S+;", rb"\1;", content)
