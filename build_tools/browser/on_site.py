"""The scripts of the work on site, with their words.

A procedure page loads ``steps`` at first. What is needed only after a tap, or for a job, comes then: ``walk``,
``record``, ``enter``, ``places``, ``before``, and ``crew``, which reads figures. The owner's page loads ``records``,
the load-out of a job ``load``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from build_tools.browser.form_script import FOLDERS, joined, of_folders, steps_and_forms

_SAID = re.compile(r"\bsay\.(\w+)")
_STATE = "state_"
"""The states of a record are looked up by their name."""


def on_site_script(name: str, words: Mapping[str, str]) -> str:
    """One of the scripts, with the words that it uses."""
    return joined(*FOLDERS[name], say=_said(name, words))


def steps_form_script(words: Mapping[str, str]) -> str:
    """The script of the steps with that of the forms, for a page with both."""
    return steps_and_forms(_said("steps", words))


def _said(name: str, words: Mapping[str, str]) -> dict[str, str]:
    """The words that a script uses."""
    script = of_folders(*FOLDERS[name])
    said = {key.removeprefix("do_"): text for key, text in words.items() if key.startswith("do_")}
    used = set(_SAID.findall(script))
    return {key: text for key, text in said.items() if key in used or (key.startswith(_STATE) and _STATE in script)}
