"""What somebody with a phone gets: scores of pages, the script that they load, and how soon they answer a key."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from build_tools.bench.answers import Answer, measure_keys, measure_search
from build_tools.bench.lighthouse import Scores, measure_pages
from build_tools.bench.planning import Planning
from build_tools.bench.racking import Racking
from build_tools.bench.run import real_site
from build_tools.bench.script import ScriptWeight, weigh

if TYPE_CHECKING:
    from build_tools.bench.run import Workshop

Measured = Answer | Scores | ScriptWeight | Racking | Planning
"""A line of the result that keeps its budget or does not."""


def measure_pages_of(shop: Workshop, large: Path) -> Mapping[str, list[Measured]]:
    """The pages of the real book, and the search of the large one."""
    site = real_site(shop)
    measured: dict[str, list[Measured]] = {"script": [*weigh(site)]}
    shop.say("typing into forms")
    measured["keys"] = [*measure_keys(site)]
    shop.say("searching the large book")
    measured["search"] = [*measure_search(large)]
    shop.say("pages on a simulated phone")
    measured["pages"] = [*measure_pages(site)]
    return measured
