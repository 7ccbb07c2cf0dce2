"""The functions of calculators keep to the subset of Python that compiles to script."""

from __future__ import annotations

import pytest

from build_tools.browser.compiler.bundle import ENTRIES, LAY_OUT, starts
from build_tools.browser.compiler.program import compile_names
from build_tools.browser.compiler.sources import place
from calculators.registry import CALCULATORS

ON_SITE = [each for each in CALCULATORS.values() if each.on_site]
STARTS = {each.name: [*starts(each), *([place(each.drawing)] if each.drawing else [])] for each in ON_SITE}
STARTS["every page"] = [*ENTRIES, LAY_OUT]


@pytest.mark.parametrize("what", STARTS)
def test_what_the_page_runs_keeps_to_the_plain_subset(what: str) -> None:
    found = compile_names(STARTS[what]).problems
    assert not found, "\n".join(str(problem) for problem in found)
