"""How much script of ours a procedure page brings along, loaded at once or when a form comes near."""

from __future__ import annotations

import gzip
import json
import re
from dataclasses import dataclass
from pathlib import Path

PAGE = "plumbing/toilet-set.html"
BUDGET = 30 * 1024
DATA = re.compile(r'<script type="application/json" id="crew-page">(.*?)</script>', re.DOTALL)
SOURCE = re.compile(r'<script[^>]* src="[^"]*?(assets/script/[^"]+)"')


@dataclass(frozen=True, slots=True)
class ScriptWeight:
    """The bytes of a page's scripts as they lie in the site, and as a server sends them."""

    files: int
    raw: int
    compressed: int

    @property
    def passes(self) -> bool:
        """Whether the page keeps its budget."""
        return self.compressed <= BUDGET

    def __str__(self) -> str:
        return (
            f"script on the page {PAGE}: {self.files} files, {self.raw:,} bytes, compressed {self.compressed:,} "
            f"(budget {BUDGET:,}, {'pass' if self.passes else 'OVER'})"
        )


def weigh(site: Path) -> ScriptWeight:
    """The scripts that the page names, and those that its forms and drawings load."""
    page = (site / PAGE).read_text(encoding="utf-8")
    found = DATA.search(page)
    data = json.loads(found[1]) if found else {"scripts": [], "draw": ""}
    addresses = {*SOURCE.findall(page), *data["scripts"], *([data["draw"]] if data["draw"] else [])}
    contents = [(site / address).read_bytes() for address in sorted(addresses)]
    return ScriptWeight(len(contents), sum(map(len, contents)), sum(len(gzip.compress(each, 9)) for each in contents))
