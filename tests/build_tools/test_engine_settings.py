"""The site's settings as MkDocs read them, and what is said of those that mean nothing."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError

from build_tools.engine_settings import options_of


def config(**extra: Any) -> MkDocsConfig:
    """The settings of a site with these under ``extra``."""
    made = MkDocsConfig("mkdocs.yml")
    made.load_dict({"site_name": "Ours", "extra": extra})
    made.site_description, made.strict = None, False
    return made


def test_settings_become_options() -> None:
    options = options_of(config(made_for="crew", today="2026-11-28", cache="kept"))
    assert (options.for_owner, options.today, options.cache) == (False, date(2026, 11, 28), Path("kept"))
    assert options_of(config()).for_owner


@pytest.mark.parametrize(
    ("extra", "why"),
    [
        ({"today": "soon"}, "extra: today: 'soon' is no day: write it like 2026-11-28"),
        ({"cache": 5}, "extra: cache: '5' is no folder: write its name"),
        ({"made_for": "bob"}, "extra: made_for: 'bob' is neither owner nor crew"),
    ],
)
def test_a_setting_that_means_nothing_is_named(extra: dict[str, Any], why: str) -> None:
    with pytest.raises(PluginError) as stopped:
        options_of(config(**extra))
    assert str(stopped.value) == why
