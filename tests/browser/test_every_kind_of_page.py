"""Each kind of page in a real browser: it fits the screen, says nothing in the console, and stays at home."""

from __future__ import annotations

import pytest

from tests.browser.window import LAPTOP, PHONE, TABLET, Window

KINDS = [
    "index.html",
    "plumbing/index.html",
    "plumbing/toilet-set.html",
    "doors/lockset-install.html",
    "flooring/strip-floor-racking.html",
    "concrete/approach-forming.html",
    "calculators/index.html",
    "calculators/lock-schedule.html",
    "calculators/wax-ring.html",
    "values.html",
    "terms.html",
    "tools.html",
    "materials.html",
    "sources.html",
    "inspections.html",
    "crew.html",
    "records.html",
    "jobs/garden-studio/plan.html",
    "jobs/garden-studio/what-if.html",
    "jobs/garden-studio/load.html",
    "404.html",
]
"""One page of each kind, and each procedure, since what stands on them differs."""


@pytest.mark.parametrize("url", KINDS)
def test_a_page_is_sound(url: str, window: Window) -> None:
    """At the width of a phone, a tablet and a laptop nothing scrolls sideways; no error, no foreign address."""
    window.open(url)
    out = {}
    for width in (PHONE, TABLET, LAPTOP):
        window.width(width)
        if window.sideways() > 0:
            out[width] = (window.sideways(), window.widest())
    assert out == {}
    assert window.console() == []
    asked = window.requests()
    assert window.address + url in asked
    assert [one for one in asked if not one.startswith(window.address)] == []
