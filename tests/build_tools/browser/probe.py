"""A made-up module compiled and run in a script engine."""

from __future__ import annotations

import importlib
import json
from itertools import count
from pathlib import Path
from typing import Any

import pytest

from build_tools.browser.emit import emitted, named
from build_tools.browser.library import called, library
from build_tools.browser.modules import reached
from tests.script_engine import new_engine

NUMBERS = count()


class Probe:
    """The function ``main`` of a source, in both worlds."""

    def __init__(self, source: str, folder: Path, patch: pytest.MonkeyPatch) -> None:
        self.name = f"probe_{next(NUMBERS)}"
        (folder / f"{self.name}.py").write_text(source, encoding="utf-8")
        patch.syspath_prepend(folder)
        self.module = importlib.import_module(self.name)

    def in_python(self, *arguments: Any) -> Any:
        """What Python gives, as JSON has it."""
        return json.loads(json.dumps(self.module.main(*arguments)))

    def in_script(self, *arguments: Any) -> Any:
        """What the compiled function gives."""
        names = reached([(self.name, "main")])
        short = named(names)
        body = "\n".join(emitted(names, short).values())
        std = "\n".join(f"var {name} = {code};" for name, code in library(called(body)).items())
        engine = new_engine()
        engine.eval(f'"use strict"; {std}\n{body}')
        given = json.dumps(list(arguments))
        found = engine.eval(f"JSON.stringify({short[self.name, 'main']}.apply(null, {given}))")
        return json.loads(str(found))
