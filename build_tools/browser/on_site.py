"""The scripts of the work on site, with their words.

A procedure page loads ``steps`` at first. What is needed only after a tap, or for a job, comes then: ``walk``,
``record``, ``enter``, ``places``, ``before``, and ``crew``, which reads figures. The owner's page loads ``records``,
the load-out of a job ``load``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from build_tools.browser.form_script import FOLDERS, joined, of_folders

_SAID = re.compile(r"\bsay\.(\w+)")
_STATE = "state_"
"""The states of a record are looked up by their name."""


def on_site_script(name: str, words: Mapping[str, str]) -> str:
    """One of the scripts, with the words that it uses."""
    script = of_folders(*FOLDERS[name])
    said = {key.removeprefix("do_"): text for key, text in words.items() if key.startswith("do_")}
    used = set(_SAID.findall(script))
    own = {key: text for key, text in said.items() if key in used or (key.startswith(_STATE) and _STATE in script)}
    return joined(*FOLDERS[name], say=own)
