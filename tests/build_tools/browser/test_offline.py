"""The list of what a device keeps, the icons and the manifest."""

from __future__ import annotations

import hashlib
import json
import re
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from build_tools.browser.offline import Unserved, edition_of, write_offline
from build_tools.commands.site import BOOK
from build_tools.pages.icons import GREEN, SIZES, WHITE, icons, manifest
from build_tools.pages.words import words
from tests.site_pages import SitePage, loaded_by_css, resolve


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small site."""
    files = {"index.html": "<p>home</p>", "a/b.html": "<p>b</p>", "book.json": "{}", "sitemap.xml": "", "404.html": ""}
    for name, text in files.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return tmp_path


def test_the_list_names_each_file_by_length_and_digest(folder: Path) -> None:
    """The home page first; files for programs alone are not kept on a phone."""
    edition = edition_of(folder, "2026-12-02T08:00Z")
    digest = hashlib.sha256(b"<p>home</p>").hexdigest()[:32]
    assert edition.files[0] == ("index.html", 11, digest)
    assert [path for path, _, _ in edition.files] == ["index.html", "a/b.html"]
    assert edition.bytes == 19


@pytest.mark.parametrize("name", ["step #2.webp", "why?.webp", "100%.webp", "Träger.webp", "a b/c.webp", ".htaccess"])
def test_an_address_that_a_server_may_read_otherwise_stops_the_build(folder: Path, name: str) -> None:
    """One file that does not come as it is listed keeps the whole book from every device."""
    (folder / name).parent.mkdir(exist_ok=True)
    (folder / name).write_text("picture", encoding="utf-8")
    with pytest.raises(Unserved, match=re.escape(f"'{name}' cannot be an address")):
        edition_of(folder, "2026-12-02T08:00Z")


def test_an_edition_is_its_content(folder: Path) -> None:
    """Built again on another day it is the same edition; a changed letter makes another one."""
    first = edition_of(folder, "2026-12-02T08:00Z")
    write_offline(folder, "2026-12-02T08:00Z", words(), "en")
    assert edition_of(folder, "2026-12-03T08:00Z").id == first.id
    (folder / "a/b.html").write_text("<p>B</p>", encoding="utf-8")
    assert edition_of(folder, "2026-12-02T08:00Z").id != first.id


def test_the_script_carries_its_edition(folder: Path) -> None:
    """The list stands in the script itself, so that a device never has a list of one edition and files of another."""
    edition = write_offline(folder, "2026-12-02T08:00Z", words(), "en")
    script = (folder / "offline.js").read_text(encoding="utf-8")
    found = json.loads(re.findall(r"const EDITION=(\{.*\});", script)[0])
    assert (found["id"], found["bytes"], len(found["files"])) == (edition.id, 19, 2)
    assert json.loads((folder / "edition.json").read_text(encoding="utf-8"))["edition"] == edition.id


def test_the_list_of_the_site_lacks_nothing(site: Path, pages: dict[str, SitePage]) -> None:
    """Every page, and everything that a page, a style or a script loads, is kept; what is not written yet is not."""
    listed = {path for path, _, _ in edition_of(site, "").files}
    assert set(pages) - {"404.html"} <= listed
    wanted = {resolve(page.url, address)[0] for page in pages.values() for address in page.loads()}
    for sheet in site.rglob("*.css"):
        if (url := sheet.relative_to(site).as_posix()) in listed:
            wanted |= {resolve(url, address)[0] for address in loaded_by_css(sheet.read_text(encoding="utf-8"))}
    wanted |= {path.relative_to(site).as_posix() for path in (site / "assets" / "script").rglob("*.js")}
    ours = {address for address in wanted if not address.startswith(("http", "data:"))}
    assert ours - listed <= {"404.html"}
    assert all((site / path).is_file() for path in listed)


def test_the_icons_show_the_sign() -> None:
    """White on green; a maskable one keeps the sign in the middle, where no shape cuts it."""
    made = icons()
    for name, content in made.items():
        image = Image.open(BytesIO(content)).convert("RGB")
        size = image.width
        assert image.size == (SIZES[name][0] if name in SIZES else 512,) * 2
        assert image.getpixel((0, 0)) == GREEN
        assert image.getpixel((size // 2, size // 2)) == WHITE
    masked = Image.open(BytesIO(made["icon-mask-512.png"])).convert("L").point(lambda level: 255 * (level > 200))
    left, top, right, bottom = masked.getbbox() or (0, 0, 512, 512)
    assert min(left, top, 512 - right, 512 - bottom) > 51


def test_the_icons_are_those_of_the_site() -> None:
    """The corners of the drawn sign are those of ``favicon.svg``."""
    drawing = (BOOK.parent / "build_tools" / "pages" / "assets" / "favicon.svg").read_text(encoding="utf-8")
    assert 'd="M4 4h24v3H17.5v5h4.2' in drawing
    assert "16 29" in drawing


def test_the_manifest_lies_in_any_folder() -> None:
    """No address of it starts at the top of a server, and each icon is one that the build draws."""
    made = json.loads(manifest("Crew Methods", "The book.", "en"))
    files = [icon["src"].removeprefix("assets/") for icon in made["icons"]]
    assert set(files) - set(icons()) == {"favicon.svg"}
    assert [made["start_url"], made["scope"], made["display"]] == ["index.html", "./", "standalone"]
    assert {icon.get("purpose") for icon in made["icons"]} == {None, "any", "maskable"}
