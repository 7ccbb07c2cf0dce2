"""The fixed words of the pages, by language: everything on a page that the book itself does not say.

A template takes them as ``t``: ``{{ t.why }}``, and with a figure ``{{ t.step_of.format(n=3, of=14) }}``.
"""

from __future__ import annotations

from build_tools.pages.words.jobs import JOBS
from build_tools.pages.words.on_site import ON_SITE
from build_tools.pages.words.plan import PLAN
from build_tools.pages.words.procedures import PROCEDURES
from build_tools.pages.words.site import SITE

WORDS: dict[str, dict[str, str]] = {"en": {**SITE, **PROCEDURES, **JOBS, **PLAN, **ON_SITE}}
"""Language to words, keyed by name."""


def words(language: str = "en") -> dict[str, str]:
    """The fixed words in that language, and in English where it lacks one.

    >>> words()["why"]
    'Why'
    """
    return {**WORDS["en"], **WORDS.get(language, {})}
