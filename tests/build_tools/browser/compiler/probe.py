"""A made-up module compiled, made short and run in a script engine."""

from __future__ import annotations

import importlib
import json
from itertools import count
from pathlib import Path
from typing import Any

import pytest

from build_tools.browser.compiler.program import Program, compile_names
from build_tools.browser.compiler.sources import script_name
from build_tools.browser.shorten import shorter
from tests.script_engine import new_engine

NUMBERS = count()


class Probe:
    """The function ``main`` of a source, in both worlds."""

    def __init__(self, source: str, folder: Path, patch: pytest.MonkeyPatch) -> None:
        self.name = f"probe_{next(NUMBERS)}"
        (folder / f"{self.name}.py").write_text(source, encoding="utf-8")
        patch.syspath_prepend(folder)
        self.module = importlib.import_module(self.name)

    @property
    def program(self) -> Program:
        """What it compiles to."""
        return compile_names([(self.name, "main")])

    @property
    def problems(self) -> list[str]:
        """What of it the page cannot run, as ``line: message``."""
        return [f"{problem.line}: {problem.message}" for problem in self.program.problems]

    def in_python(self, *arguments: Any) -> Any:
        """What Python gives, as JSON has it."""
        return json.loads(json.dumps(self.module.main(*arguments)))

    def in_script(self, *arguments: Any) -> Any:
        """What the compiled function gives, as a page has it: short."""
        program = self.program
        assert not program.problems, self.problems
        main = script_name((self.name, "main"))
        parts = ["var main = (() => {", '"use strict";', program.code(program.written), f"return {main};", "})();"]
        engine = new_engine()
        engine.eval(shorter("\n".join(parts))[0])
        found = engine.eval(f"JSON.stringify(main(...{json.dumps(list(arguments))}))")
        return json.loads(str(found))
