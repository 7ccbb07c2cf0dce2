"""The script that keeps the book on a device (a service worker), made when the whole site is written.

The list of files in it names each by its length and digest, and the edition by the digest of the list: a book that was
built again without a change is the same edition.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from build_tools.browser.form_script import joined, single
from build_tools.browser.policy import EMPTY

WORKER, SUMMARY = "offline.js", "edition.json"
FOR_PROGRAMS = {
    WORKER,
    SUMMARY,
    "404.html",
    "book.json",
    "book.schema.json",
    "record.schema.json",
    "sitemap.xml",
    "sitemap.xml.gz",
}
"""Files that no page of the book asks for: for servers, search engines and other programs."""
THEME = ("assets/javascripts/", "assets/stylesheets/", "assets/images/")
"""The theme brings more than the pages use."""


SERVED = re.compile(r"(?:[\w~-][\w.~-]*/)*[\w~-][\w.~-]*", re.ASCII)
"""An address that every server takes as it is written: of unreserved characters (RFC 3986, 2.3), and no hidden file."""


class Unserved(Exception):
    """A file of the site that its address does not lead to; one such file, and no device could keep the book."""


@dataclass(frozen=True, slots=True)
class Edition:
    """One edition of the book: when it was built, and its files by path, length and digest."""

    date: str
    files: tuple[tuple[str, int, str], ...]

    @property
    def id(self) -> str:
        """The digest of the list of files."""
        return hashlib.sha256(json.dumps(self.files).encode()).hexdigest()[:16]

    @property
    def bytes(self) -> int:
        """What the edition takes on a device."""
        return sum(size for _, size, _ in self.files)


def edition_of(site: Path, date: str) -> Edition:
    """The edition that lies in the folder of a site, finished with every file; :class:`Unserved` names a wrong one."""
    files = []
    for path in _kept(site):
        if not SERVED.fullmatch(path):
            raise Unserved(f"'{path}' cannot be an address: name this file with plain letters, figures and hyphens")
        content = (site / path).read_bytes()
        files.append((path, len(content), hashlib.sha256(content).hexdigest()[:32]))
    return Edition(date, tuple(files))


def _kept(site: Path) -> Iterator[str]:
    """The files that a device keeps, the home page first."""
    home = (site / "index.html").read_text(encoding="utf-8")
    found = [path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()]
    for path in sorted(found, key=lambda path: (path != "index.html", path)):
        if path not in FOR_PROGRAMS and (not path.startswith(THEME) or path in home):
            yield path


def page_script(words: Mapping[str, str]) -> str:
    """The script of every page: the look for the sun, the way to the search, the line about the kept book."""
    said = {name.removeprefix("kept_"): text for name, text in words.items() if name.startswith("kept_")}
    return joined("look") + single("menu") + single("find") + joined("page", say=said)


def worker_script(edition: Edition, say: Mapping[str, str], language: str) -> str:
    """The script for that edition. ``say`` has the words of the page that a device without signal does not have."""
    about = {"id": edition.id, "date": edition.date, "bytes": edition.bytes, "files": edition.files}
    absent = (
        f'<!doctype html><html lang="{language}"><meta charset="utf-8">'
        f'<meta http-equiv="Content-Security-Policy" content="{EMPTY}">'
        '<meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark">'
        f"<title>{say['absent_title']}</title><h1>{say['absent_title']}</h1><p>{say['absent']}</p>"
        f'<p><a href="HOME">{say["home"]}</a></p></html>'
    )
    constants = f"const EDITION={json.dumps(about, separators=(',', ':'))};\nconst ABSENT={json.dumps(absent)};\n"
    return constants + joined("offline")


def write_offline(site: Path, date: str, say: Mapping[str, str], language: str) -> Edition:
    """Write the script and a short summary of the edition into the folder of a finished site."""
    edition = edition_of(site, date)
    summary = {"edition": edition.id, "date": date, "bytes": edition.bytes, "files": len(edition.files)}
    (site / WORKER).write_text(worker_script(edition, say, language), encoding="utf-8")
    (site / SUMMARY).write_text(json.dumps(summary, indent=1) + "\n", encoding="utf-8")
    return edition


def write_preview(site: Path) -> None:
    """A preview keeps nothing, and frees a browser that kept a published book from the same address."""
    (site / WORKER).write_text(single("offline_off"), encoding="utf-8")
