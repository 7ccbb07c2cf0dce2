"""How much script of ours a procedure page brings along: at once, and with a form in use and its drawing redrawn."""

from __future__ import annotations

import gzip
import json
import re
from dataclasses import dataclass
from pathlib import Path

BUDGET = 30 * 1024
SHOWN = 3
DATA = re.compile(r'<script type="application/json" id="crew-page">(.*?)</script>', re.DOTALL)
SOURCE = re.compile(r'<script[^>]* src="[^"]*?(assets/script/[^"]+)"')


@dataclass(frozen=True, slots=True)
class ScriptWeight:
    """The bytes of a page's scripts as a server sends them.

    ``at_once`` is what the page itself loads. ``in_use`` is what it has loaded when one of its forms answers and its
    drawing was drawn anew, ``drawing`` the part of that for the drawing: for the form that takes most, since each loads
    its own when it comes near. ``all`` is what all forms and drawings load together.
    """

    page: str
    at_once: int
    in_use: int
    drawing: int
    all: int

    @property
    def passes(self) -> bool:
        """Whether the page keeps its budget."""
        return self.in_use <= BUDGET

    def __str__(self) -> str:
        return (
            f"script on {self.page}, compressed: {self.at_once:,} bytes at once, {self.in_use:,} with a form in use "
            f"and its drawing redrawn (budget {BUDGET:,}, {'pass' if self.passes else 'OVER'}), {self.drawing:,} of "
            f"that for the drawing; {self.all:,} with all its forms"
        )


def weigh(site: Path) -> list[ScriptWeight]:
    """The scripts of every procedure page: the heaviest first, a few of them."""
    packed: dict[str, int] = {}
    pages = [page for page in site.glob("*/*.html") if 'class="crew procedure' in page.read_text(encoding="utf-8")]
    weights = [_weight(site, page, packed) for page in pages]
    return sorted(weights, key=lambda one: (-one.in_use, one.page))[:SHOWN]


def _weight(site: Path, page: Path, packed: dict[str, int]) -> ScriptWeight:
    def size(address: str) -> int:
        if address not in packed:
            packed[address] = len(gzip.compress((site / address).read_bytes(), 9))
        return packed[address]

    text = page.read_text(encoding="utf-8")
    found = DATA.search(text)
    scripts, draw = _later(found[1]) if found else ([], [])
    at_once = sum(map(size, {*SOURCE.findall(text)}))
    drawing = sum(map(size, draw))
    in_use = at_once + sum(map(size, scripts[:1])) + max(map(size, scripts[1:]), default=0) + drawing
    everything = at_once + sum(map(size, [*scripts, *draw]))
    return ScriptWeight(page.relative_to(site).as_posix(), at_once, in_use, drawing, everything)


def _later(data: str) -> tuple[list[str], list[str]]:
    """The scripts that the forms of a page load, the shared one first, and the one that draws."""
    page = json.loads(data)
    return page["scripts"], page["draw"]
