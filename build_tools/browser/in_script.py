"""Data and scripts where a script element holds them: nothing in them begins or ends an element.

A browser looks in the text of a script element for ``</script``, and for ``<!--`` and ``<script``, after which it no
longer sees the end of the element. So the one place where text enters a script writes no ``<`` as it is.
"""

from __future__ import annotations

import json
import re
from typing import Any

_MARKS = re.compile("<(?=!--|/script)", re.IGNORECASE)


def data_in_script(data: Any) -> str:
    r"""The data as JSON that may stand in a data block, in a script of a page, or in a file of its own.

    >>> print(data_in_script({"a": "</script><!--<script>"}))
    {"a":"\u003c/script>\u003c!--\u003cscript>"}
    """
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    return text.replace("<", r"\u003c")


def script_in_page(script: str) -> str:
    r"""A script as the text of an element of a page. What begins a comment or ends the element stands in texts alone.

    >>> print(script_in_page("say('</SCRIPT><!--' + (a<b))"))
    say('\x3c/SCRIPT>\x3c!--' + (a<b))
    """
    return _MARKS.sub(r"\\x3c", script)
