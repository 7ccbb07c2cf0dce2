"""The calculators compiled to script: one file that every page shares, one for drawings, and one for each calculator.

The shared file holds the library, the shared modules as far as any calculator or the run core needs them, and the
interface ``crew`` (``script/core.js``). A calculator's file holds the modules of its trade that it needs. Modules keep
their own scope, and constants are written out as the values that they have in Python.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from build_tools.browser.emit import NotPlain, emitted, named, refused
from build_tools.browser.library import called, library
from build_tools.browser.modules import Name, place, reached, starts_of
from build_tools.browser.shorten import shorter
from calculators.declaration import Calculator

CORE = Path(__file__).parent / "script" / "core.js"
DRAW = CORE.with_name("draw.js")
LAY_OUT: Name = ("calculators.drawing_layout", "lay_out")
"""What ``script/draw.js`` calls."""
ENTRIES: tuple[Name, ...] = tuple(
    (f"calculators.{name}", function)
    for name, function in (
        ("answering", "read_one"),
        ("answering", "read_rows"),
        ("answering", "split_rows"),
        ("answering", "filled"),
        ("answering", "keep_limits"),
        ("answering", "with_cautions"),
        ("answering", "shown_lines"),
        ("metric", "unit_in"),
        ("metric", "write_in"),
        ("reading", "read"),
        ("writing", "exactly"),
        ("writing", "write"),
    )
)
"""What ``script/core.js`` calls."""
PLANS: Name = ("calculators.shapes", "read_plan")
"""What it calls for an input that is a plan."""
BY_FEW = ("calculators.polygons", "calculators.shapes")
"""Shared modules that few pages need: each calculator that does brings them along."""


@dataclass(frozen=True)
class Scripts:
    """The shared script, each calculator's without its declaration, and the one that draws."""

    core: str
    functions: Mapping[str, str]
    draw: str


def compile_calculators(calculators: Iterable[Calculator]) -> Scripts:
    """Compile the on-site calculators among those given; raises NotPlain."""
    on_site = sorted((each for each in calculators if each.on_site), key=lambda each: each.name)
    key = tuple(id(each) for each in on_site)
    if key not in _COMPILED:
        _COMPILED[key] = (on_site, _compile(on_site))
    return _COMPILED[key][1]


_COMPILED: dict[tuple[int, ...], tuple[list[Calculator], Scripts]] = {}
"""What was compiled in this run, by the very calculators; a preview reads no Python anew."""


def _compile(calculators: list[Calculator]) -> Scripts:
    needs = {each.name: reached(_starts(each)) for each in calculators}
    lay_out = reached([LAY_OUT])
    everything = {*reached(ENTRIES), *lay_out, *(name for names in needs.values() for name in names)}
    problems = refused(everything)
    if problems:
        raise NotPlain(problems)
    layout = [name for name in lay_out if name[0].startswith("calculators.drawing_")]
    shared = sorted(name for name in everything if _is_shared(name[0]) and name not in layout)
    in_script = named([*shared, *sorted(everything.difference(shared))])
    scripts = emitted(everything, in_script)
    bodies = {
        each.name: _body([name for name in needs[each.name] if name not in shared], scripts, in_script, _call(each))
        for each in calculators
    }
    draw = _body(layout, scripts, in_script, DRAW.read_text(encoding="utf-8"))
    core = _body(shared, scripts, in_script, CORE.read_text(encoding="utf-8"))
    std = library(called("".join([core, draw, *bodies.values()])))
    lines = [f"var {name} = {code};" for name, code in std.items()]
    outside = set(re.findall(r"\b_[a-z]\d*\b|\$+[a-z_]+", "".join([draw, *bodies.values()])))
    given = [name for name in (*std, *(in_script[each] for each in shared if each in scripts)) if name in outside]
    core = core.replace("{GIVEN}", "{" + ", ".join(f"{name}: {name}" for name in given) + "}", 1)
    whole = 'var crew = (function () {\n"use strict";\n' + "\n".join([*lines, core]) + "\n})();\n"
    functions = {name: shorter(_own_scope(body, given)) for name, body in bodies.items()}
    return Scripts(shorter(whole), functions, shorter(_own_scope(draw, given)))


def _starts(calculator: Calculator) -> list[Name]:
    """What the page calls of a calculator, and for it."""
    inputs = [*calculator.inputs, *(column for each in calculator.inputs for column in each.columns)]
    return [*starts_of(calculator), *([PLANS] if any(each.quantity == "plan" for each in inputs) else [])]


def _is_shared(module_name: str) -> bool:
    """Whether a module is in the shared script."""
    return module_name.count(".") == 1 and module_name not in BY_FEW


def _body(names: list[Name], scripts: Mapping[Name, str], in_script: Mapping[Name, str], text: str) -> str:
    """Functions and constants, and a script that names them as `modules.writing.write`."""
    held = "\n".join(scripts[name] for name in names if name in scripts)
    return held + "\n" + CALLED.sub(lambda found: in_script[f"calculators.{found[1]}", found[2]], text)


CALLED = re.compile(r"\bmodules\.([a-z_.]+)\.([a-z_]+)\b(?!\.)")


def _call(calculator: Calculator) -> str:
    """The calls into a calculator; ``DECLARATION`` stands for the declaration."""

    def written(function: Callable[..., Any] | None) -> str:
        if function is None:
            return "null"
        module_name, name = place(function)
        return f"modules.{module_name.removeprefix('calculators.')}.{name}"

    wanted = ", ".join(f'values["{name}"]' for name in inspect.signature(calculator.function).parameters)
    call = f"function (values) {{ return {written(calculator.function)}({wanted}); }}"
    plan = "modules.shapes.read_plan" if PLANS in _starts(calculator) else "null"
    return f"crew.add(DECLARATION, {call}, {written(calculator.drawing)}, {plan});"


def _own_scope(body: str, given: list[str]) -> str:
    """A script of a page beside the shared one: what it takes from there, and what it does with it."""
    used = set(re.findall(r"\b_[a-z]\d*\b|\$+[a-z_]+", body))
    taken = "".join(f", {name} = given.{name}" for name in given if name in used)
    return f'(function () {{\n"use strict";\nvar host = crew.host, given = crew.given{taken};\n{body}\n}})();\n'
