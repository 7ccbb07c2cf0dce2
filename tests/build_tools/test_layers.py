"""The layers: which part imports which, by the syntax tree of every file."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from build_tools.environment import ROOT

DOORWAYS = {"build_tools/plugin.py", "build_tools/engine_pages.py", "build_tools/engine_settings.py"}
"""The only files that import the engine: its events, and its pages. The commands start it by its name."""


@dataclass(frozen=True)
class Import:
    """A module that is imported, and the line."""

    line: int
    module: str


RULES = {
    "calculators": ("build_tools", "mkdocs", "material"),
    "build_tools/book": (
        "build_tools.pages", "build_tools.plan", "build_tools.plugin", "build_tools.commands", "build_tools.bench",
        "mkdocs", "material",
    ),
    "build_tools/plan": (
        "build_tools.pages", "build_tools.browser", "build_tools.plugin", "build_tools.commands", "build_tools.bench",
        "mkdocs", "material",
    ),
    "build_tools/browser": (
        "build_tools.pages", "build_tools.plan", "build_tools.plugin", "build_tools.commands", "build_tools.bench",
        "mkdocs", "material",
    ),
    "build_tools/pages": ("build_tools.plugin", "build_tools.commands", "build_tools.bench", "mkdocs", "material"),
    "build_tools": ("mkdocs", "material", "tests"),
}  # fmt: skip
"""Folder to the modules that nothing in it imports, those below them included."""


def imports(source: str, package: str) -> Iterator[Import]:
    """Every import of a module of that package, wherever it stands; ``from a import b`` may mean the module ``a.b``."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from (Import(node.lineno, name.name) for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = ".".join(package.split(".")[: len(package.split(".")) - node.level + 1]) if node.level else ""
            base = ".".join(part for part in (above, node.module) if part)
            yield from (Import(node.lineno, f"{base}.{name.name}") for name in node.names)


def refused(source: str, package: str, banned: tuple[str, ...]) -> list[Import]:
    """The imports of banned modules."""
    return [one for one in imports(source, package) if any(f"{one.module}.".startswith(f"{name}.") for name in banned)]


@pytest.mark.parametrize("folder", RULES)
def test_no_layer_reaches_back(folder: str) -> None:
    """No file imports what stands behind it in the flow, or the engine, except the doorway."""
    files = sorted((ROOT / folder).rglob("*.py"))
    assert files
    wrong = []
    for path in files:
        file = path.relative_to(ROOT).as_posix()
        if file not in DOORWAYS:
            package = ".".join(Path(file).parts[:-1])
            found = refused(path.read_text(encoding="utf-8"), package, RULES[folder])
            wrong += [f"{file}:{one.line}: imports {one.module}" for one in found]
    assert wrong == []


@pytest.mark.parametrize("file", sorted(DOORWAYS))
def test_the_doorway_imports_the_engine(file: str) -> None:
    """The doorway is where the engine is imported, so that the list of doorways stays true."""
    assert refused((ROOT / file).read_text(encoding="utf-8"), "build_tools", ("mkdocs",))


@pytest.mark.parametrize(
    ("source", "package", "line"),
    [
        ("import mkdocs", "build_tools.book", 1),
        ("\nimport mkdocs.config as c", "build_tools.book", 2),
        ("from build_tools import pages", "build_tools.book", 1),
        ("from ..pages.page import Page", "build_tools.book.checks", None),
        ("from ...pages.page import Page", "build_tools.book.checks", 1),
        ("from .. import plugin", "build_tools.book", 1),
        ("def late():\n    from build_tools.plugin import log", "build_tools.book", 2),
        ("import mkdocs_notes\nfrom build_tools.pages_notes import x", "build_tools.book", None),
    ],
)
def test_imports_are_found_wherever_they_stand(source: str, package: str, line: int | None) -> None:
    """An import in a function, a relative one and one of a submodule count; a name that only begins alike does not."""
    found = refused(source, package, ("mkdocs", "build_tools.pages", "build_tools.plugin"))
    assert [one.line for one in found] == ([] if line is None else [line])


def test_the_solver_is_loaded_only_to_solve() -> None:
    """It takes longer to load than a build of an unchanged book: everything that shows a plan does without it."""
    source = """
import sys, build_tools.plugin, build_tools.commands.cli, build_tools.plan.cache, build_tools.pages.jobs.files
before = "ortools" in sys.modules
import build_tools.plan.planning
print(before, "ortools" in sys.modules)
"""
    run = subprocess.run([sys.executable, "-c", source], cwd=ROOT, capture_output=True, text=True, check=True)
    assert run.stdout.split() == ["False", "True"]
