"""The scripts of the site: address to text. Compiling takes a second, so what was compiled is kept on disk."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable
from dataclasses import asdict
from importlib.metadata import version
from pathlib import Path
from typing import Any

import calculators as package
from build_tools.book.calls import settle
from build_tools.book.checks.context import Context
from build_tools.book.diagnostics import Diagnostic
from build_tools.book.files import write_whole
from build_tools.browser.compiler.bundle import NotPlain, Scripts, compile_calculators
from build_tools.browser.declarations import declaration
from build_tools.browser.in_script import data_in_script
from build_tools.browser.shorten import shorter
from calculators.declaration import Calculator

HERE = Path(__file__).parent


def make_scripts(context: Context, kept: Path) -> dict[str, str]:
    """The scripts of calculators, the shared ones first; ``kept`` holds what is dear to make."""
    return context.memo.named("scripts", context.fingerprint, lambda: _made(context, kept))


def script_problems(context: Context, kept: Path) -> list[Diagnostic]:
    """What of the calculators the page cannot run, by file and line."""
    try:
        context.memo.named("compiled", tuple(context.calculators), lambda: compiled(context.calculators.values(), kept))
    except NotPlain as stopped:
        return stopped.problems
    return []


def _made(context: Context, kept: Path) -> dict[str, str]:
    scripts = compiled(context.calculators.values(), kept)
    made = {"assets/script/crew.js": scripts.core, "assets/script/draw.js": scripts.draw}
    whole = []
    for name, functions in scripts.functions.items():
        declared = declaration(context.calculators[name], standards_of(context, context.calculators[name]))
        whole.append(functions.replace("DECLARATION", data_in_script(declared), 1))
    for name, short in zip(scripts.functions, shorter(*whole), strict=True):
        made[f"assets/script/calculators/{name}.js"] = short
    return made


def standards_of(context: Context, calculator: Calculator) -> dict[str, Any]:
    """The value of the crew standard of each input that starts at one."""
    settled = settle(context.book, calculator, {}).settled
    return {name: input.value for name, input in settled.items() if input.by == "standard"}


def compiled(calculators: Iterable[Calculator], kept: Path) -> Scripts:
    """The compiled scripts, from disk where neither calculators nor compiler changed since."""
    chosen = sorted((each for each in calculators if each.on_site), key=lambda each: each.name)
    folder = kept / "scripts"
    file = folder / f"{_mark([each.name for each in chosen])}.json"
    if file.is_file():
        held = json.loads(file.read_text(encoding="utf-8"))
        return Scripts(**held)
    made = compile_calculators(chosen)
    for older in folder.glob("*.json"):
        older.unlink(missing_ok=True)
    write_whole(file, json.dumps(asdict(made)))
    return made


def _mark(names: list[str]) -> str:
    """Changes with any source that the scripts are made from."""
    paths = [*Path(package.__path__[0]).rglob("*.py"), *HERE.rglob("*.py"), *HERE.glob("script/*.js")]
    mark = hashlib.sha256(f"{version('minify-go')} {names}".encode())
    for path in sorted(paths):
        mark.update(path.read_bytes())
    return mark.hexdigest()[:32]
