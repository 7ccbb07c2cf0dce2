"""Scripts made shorter without changing what they do: no comments, no blanks, short names for what is their own.

The minifier runs in a process of its own: it is a library in Go, which a process that forks must not hold.
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections.abc import Sequence

MINIFY = """
import json, sys, minify
json.dump([minify.string("application/javascript", each) for each in json.load(sys.stdin)], sys.stdout)
"""
FOREIGN = re.compile(r"[^\x00-\x7f]")
REFUSED = re.compile(r"(?i:</script)|\bMath\.(?:pow|sqrt|trunc)\b")
"""The end of a script element, and calls that the minifier writes as operators of another last place."""


def shorter(*scripts: str) -> list[str]:
    r"""Each script in fewer letters, all of them plain ones, with a semicolon at its end.

    Names at the top of a script are seen by others and stay; those in a function or a block are its own. ValueError for
    a script that :data:`REFUSED` finds something in, or that is none.

    >>> shorter("(() => {\n  const long = 1;\n  // one\n  b(long + long + - -long);\n})();\n")
    ['(()=>{const e=1;b(e+e+- -e)})();\n']
    """
    for script in scripts:
        if found := REFUSED.search(script):
            raise ValueError(f"a script with {found[0]} in it")
    made = _minified(scripts)
    return [FOREIGN.sub(_escaped, each).removesuffix(";") + ";\n" for each in made]


def _minified(scripts: Sequence[str]) -> list[str]:
    command = [sys.executable, "-I", "-c", MINIFY]
    done = subprocess.run(command, input=json.dumps(scripts), capture_output=True, text=True, encoding="utf-8")
    if done.returncode != 0:
        raise ValueError(done.stderr.strip())
    return json.loads(done.stdout)  # type: ignore[no-any-return]


def _escaped(found: re.Match[str]) -> str:
    return json.dumps(found[0])[1:-1]
