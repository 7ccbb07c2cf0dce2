"""Calculators import nothing but Python's own small modules and themselves."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import calculators

ALLOWED = {
    "__future__", "bisect", "calculators", "collections", "dataclasses", "difflib", "functools", "importlib",
    "itertools", "math", "pkgutil", "typing",
}  # fmt: skip
"""What calculators import by name; these bring in more of the standard library."""

FRESH = """
import json, sys
before = set(sys.modules)
import calculators.registry, calculators.run
import calculators
print(json.dumps(sorted({name.partition(".")[0] for name in set(sys.modules) - before})))
"""


def test_importing_every_calculator_brings_in_only_the_standard_library() -> None:
    run = subprocess.run(
        [sys.executable, "-I", "-c", f"import sys; sys.path.insert(0, {str(_root())!r})\n{FRESH}"],
        capture_output=True,
        text=True,
        check=True,
    )
    imported = set(json.loads(run.stdout))
    assert "calculators" in imported
    assert not imported - {"calculators"} - set(sys.stdlib_module_names)


def test_each_module_names_only_what_is_allowed() -> None:
    """The short list itself, by the import lines of every module."""
    named = set()
    for path in (_root() / "calculators").rglob("*.py"):
        for line in path.read_text(encoding="utf-8").splitlines():
            words = line.split()
            if len(words) > 1 and words[0] in ("import", "from") and not line.startswith(" "):
                named.add(words[1].partition(".")[0])
    assert named <= ALLOWED


def _root() -> Path:
    return Path(calculators.__file__).parent.parent
