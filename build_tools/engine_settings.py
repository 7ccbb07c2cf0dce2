"""What the site's settings say, as MkDocs read them."""

from __future__ import annotations

import warnings
from datetime import date
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError

from build_tools.pipeline import Options

OWNER, CREW = "owner", "crew"
"""For whom a site is made; the crew gets it without money and private notes."""


def options_of(config: MkDocsConfig) -> Options:
    """What the settings say of a site. ``extra`` may name for whom it is made (``made_for``), the day from which jobs
    are planned (``today``), and the folder for what is dear to make (``cache``; beside the settings, if left out)."""
    cache, today = config.extra.get("cache"), str(config.extra.get("today") or "")
    if cache is not None and not isinstance(cache, str):
        raise PluginError(f"extra: cache: '{cache}' is no folder: write its name")
    try:
        day = date.fromisoformat(today) if today else None
    except ValueError:
        raise PluginError(f"extra: today: '{today}' is no day: write it like 2026-11-28") from None
    made_for = config.extra.get("made_for", OWNER)
    if made_for not in (OWNER, CREW):
        raise PluginError(f"extra: made_for: '{made_for}' is neither {OWNER} nor {CREW}")
    return Options(
        cache=Path(cache) if cache else Path(config.config_file_path or "mkdocs.yml").parent / ".cache",
        site_name=config.site_name,
        description=config.site_description or "",
        site_url=_published_at(config),
        for_owner=made_for == OWNER,
        today=day,
        strict=config.strict,
    )


def _published_at(config: MkDocsConfig) -> str:
    """The ``site_url`` of the settings, ending in ``/``: a preview puts its own address in its place."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)  # the only place where the settings stand as written
        written = config.user_configs
    given = next((str(one["site_url"]) for one in reversed(written) if one.get("site_url")), "")
    return f"{given.rstrip('/')}/" if given else ""
