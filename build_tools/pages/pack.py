"""One procedure as one file that needs nothing beside it: sent in a message, opened by double click, without network.

Styles, drawings and scripts stand inside; the letters are the system's. A link to a word of the trade leads to the
words at the foot of the file; any other link out of the page becomes plain text.
"""

from __future__ import annotations

import base64
import json
import posixpath
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import urlsplit

from markupsafe import Markup

from build_tools.book.book import ProcedureEntry
from build_tools.book.index import PAGE_OF
from build_tools.browser.form_script import joined, single
from build_tools.browser.in_script import data_in_script, script_in_page
from build_tools.browser.policy import file_policy
from build_tools.pages.helpers import Helpers
from build_tools.pages.page import Page
from build_tools.pages.procedure_page import procedure_page
from build_tools.pages.renderer import Renderer
from build_tools.pages.site_files import style_sheet

HERE = Path(__file__).parent
LINK = re.compile(r'(<a\b[^>]*?)\shref="([^"]*)"')
IMAGE = re.compile(r'(<img\b[^>]*?\ssrc=")([^"]*)"')
SCRIPT = re.compile(r'<script\b[^>]*?\ssrc="([^"]*)"[^>]*></script>')
PAGE_DATA = re.compile(r'(<script type="application/json" id="crew-page">)(.*?)(</script>)', re.DOTALL)
FOR_SEARCH_ENGINES = re.compile(r'<script type="application/ld\+json">.*?</script>', re.DOTALL)
FONT_OR_NOTE = re.compile(r"@font-face \{ font-family: Crew;[^}]*\}\n?|/\*.*?\*/\n?", re.DOTALL)
FORMS, STEPS_TOO = "assets/script/form.js", "assets/script/steps-form.js"
TYPES = {".svg": "image/svg+xml", ".webp": "image/webp", ".png": "image/png"}


@dataclass(frozen=True, slots=True)
class Packer:
    """Packs one page. ``files`` are those of the site: address from its top to content.

    ``scripts`` collects what is put into the file to run: its policy lets nothing else run.
    """

    renderer: Renderer
    entry: ProcedureEntry
    files: Mapping[str, str | bytes]
    today: str
    scripts: list[str] = field(default_factory=list)

    def whole(self) -> str:
        """The file."""
        page = procedure_page(self.renderer, self.entry)
        helpers = self.renderer.helpers(page.url, self.entry.folder)
        words = self._words_used(page.content)
        content = FOR_SEARCH_ENGINES.sub("", page.content)
        content = self._inside(page, content, set(words)) + self._inside(page, self._words(helpers, words), set(words))
        say = self.renderer.words
        style = FONT_OR_NOTE.sub("", (HERE / "assets" / "pack" / "pack.css").read_text("utf-8") + style_sheet())
        style += page.style
        head, look = self._element(single("head")), self._element(joined("look"))
        given = {
            "language": self.renderer.book.language,
            "title": page.title,
            "name": self.renderer.site_name,
            "policy": Markup(file_policy(self.scripts, style)),
            "style": Markup(f"<style>{style}</style>"),
            "content": Markup(content),
            "packed": say["packed"].format(name=self.renderer.site_name, date=self.today),
            "t": say,
            "site_url": self.renderer.site_url and self.renderer.site_url + page.url,
            "head": head,
            "look": look,
        }
        return self.renderer.render("pack.html", helpers, **given)

    def _words_used(self, content: str) -> list[str]:
        """The words of the trade that the page links to, in the order of their titles."""
        page = f"{PAGE_OF['term']}.html"
        links = [urlsplit(found[2]) for found in LINK.finditer(content)]
        ids = {link.fragment for link in links if posixpath.basename(link.path) == page}
        targets = self.renderer.context.index.targets
        return sorted(ids & set(self.renderer.book.terms), key=lambda id: targets["term", id].title.lower())

    def _words(self, helpers: Helpers, ids: list[str]) -> str:
        terms = self.renderer.book.terms
        words = [(id, helpers.title("term", id), helpers.prose(terms[id].item.means)) for id in ids]
        return self.renderer.render("pack_words.html", helpers, words=words) if words else ""

    def _inside(self, page: Page, content: str, words: set[str]) -> str:
        """The content with everything in it that lies beside it on the site."""
        content = LINK.sub(lambda found: found[1] + self._href(page, found[2], words), content)
        content = IMAGE.sub(lambda found: f'{found[1]}{self._data(page, found[2])}"', content)
        content = SCRIPT.sub(lambda found: self._live(_from_top(page, found[1])), content)
        return PAGE_DATA.sub(self._calculators, content)

    def _href(self, page: Page, address: str, words: set[str]) -> str:
        """The attribute of a link that leads somewhere from this file; nothing where it would not."""
        parts = urlsplit(address)
        if parts.scheme or not parts.path:
            return f' href="{address}"'
        target = _from_top(page, parts.path)
        if target == page.url:
            return f' href="#{parts.fragment}"'
        if target == f"{PAGE_OF['term']}.html" and parts.fragment in words:
            return f' href="#word-{parts.fragment}"'
        return ""

    def _data(self, page: Page, address: str) -> str:
        """A picture as a data address."""
        name = _from_top(page, address)
        content = self.files[name]
        raw = content.encode() if isinstance(content, str) else content
        return f"data:{TYPES[Path(name).suffix]};base64,{base64.b64encode(raw).decode()}"

    def _calculators(self, found: re.Match[str]) -> str:
        """The page's data with nothing left to load, after the scripts that it would have loaded."""
        data = json.loads(found[2])
        scripts = [self._script(name) for name in (*data["scripts"], *data["draw"])]
        data |= {"top": None, "scripts": [], "draw": []}
        return f"{self._element(''.join(scripts))}{found[1]}{data_in_script(data)}{found[3]}"

    def _live(self, name: str) -> str:
        """The script of the forms; ticks and records are kept by the book, not by a file that was sent."""
        return self._element(self._script(FORMS)) if name == STEPS_TOO else ""

    def _script(self, name: str) -> str:
        content = self.files[name]
        assert isinstance(content, str)
        return content

    def _element(self, script: str) -> Markup:
        """A script as an element of the file, noted for the policy."""
        inside = script_in_page(script)
        self.scripts.append(inside)
        return Markup(f"<script>{inside}</script>")


def _from_top(page: Page, address: str) -> str:
    """An address on a page, from the top of the site."""
    return posixpath.normpath(posixpath.join(posixpath.dirname(page.url), urlsplit(address).path))
