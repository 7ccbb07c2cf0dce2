"""The calculators compiled to script: one file that every page shares, one for drawings, and one for each calculator.

The shared file holds the library, the shared modules as far as any calculator or the run core needs them, and the
interface ``crew`` (``script/core.js``). A calculator's file holds the modules of its trade that it needs. Modules keep
their own scope, and constants are written out as the values that they have in Python.
"""

from __future__ import annotations

import inspect
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from build_tools.browser.emit import NotPlain, key, modules_script, refused
from build_tools.browser.library import called, library
from build_tools.browser.lower import safe
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
    needs = _needs(calculators)
    lay_out = reached([LAY_OUT])
    everything = sorted({*reached(ENTRIES), *lay_out, *(name for names in needs.values() for name in names)})
    problems = refused(everything)
    if problems:
        raise NotPlain(problems)
    layout = [name for name in lay_out if name[0].startswith("calculators.drawing_")]
    shared = [name for name in everything if _is_shared(name[0]) and name not in layout]
    modules, drawing = modules_script(shared), modules_script(layout)
    parts: dict[str, str] = {}
    for each in calculators:
        parts[each.name] = modules_script([name for name in needs[each.name] if name not in shared])
    std = library(called("".join([modules, drawing, *parts.values()])))
    lines = [f"var {name} = {code};" for name, code in std.items()]
    listed = ", ".join(f"{name}: {name}" for name in std)
    core = CORE.read_text(encoding="utf-8").replace("/* LIBRARY */", "\n".join([*lines, f"var std = {{{listed}}};"]))
    core = core.replace("/* MODULES */", modules)
    functions = {each.name: _calculator_script(each, parts[each.name]) for each in calculators}
    return Scripts(shorter(core), functions, _own_scope(drawing, DRAW.read_text(encoding="utf-8")))


def _needs(calculators: list[Calculator]) -> dict[str, list[Name]]:
    """What each calculator needs. A module that two of them bring along is the same in both."""
    first = {each.name: reached(_starts(each)) for each in calculators}
    everywhere = {name for names in first.values() for name in names if not _is_shared(name[0])}
    found: dict[str, list[Name]] = {}
    for calculator, names in first.items():
        before: list[Name] = []
        while names != before:
            before = names
            held = {name[0] for name in names}
            names = reached([*names, *(name for name in everywhere if name[0] in held)])
        found[calculator] = names
    return found


def _starts(calculator: Calculator) -> list[Name]:
    """What the page calls of a calculator, and for it."""
    inputs = [*calculator.inputs, *(column for each in calculator.inputs for column in each.columns)]
    return [*starts_of(calculator), *([PLANS] if any(each.quantity == "plan" for each in inputs) else [])]


def _is_shared(module_name: str) -> bool:
    """Whether a module is in the shared script."""
    return module_name.count(".") == 1 and module_name not in BY_FEW


def _calculator_script(calculator: Calculator, modules: str) -> str:
    """A calculator's modules and the calls into it; ``DECLARATION`` stands for the declaration."""
    module_name, function = place(calculator.function)
    wanted = ", ".join(f'values["{name}"]' for name in inspect.signature(calculator.function).parameters)
    call = f"function (values) {{ return modules.{key(module_name)}.{safe(function)}({wanted}); }}"
    drawing = "null"
    if calculator.drawing is not None:
        drawing = f"modules.{key(place(calculator.drawing)[0])}.{safe(place(calculator.drawing)[1])}"
    return _own_scope(modules, f"crew.add(DECLARATION, {call}, {drawing});")


def _own_scope(modules: str, body: str) -> str:
    """A script of a page beside the shared one: what it takes from there, its modules, and what it does with them."""
    std = sorted(called(modules))
    library_names = f"var {', '.join(f'{name} = std.{name}' for name in std)};\n" if std else ""
    names = "var std = crew.std, modules = crew.modules, host = crew.host;"
    return shorter(f'(function () {{\n"use strict";\n{names}\n{library_names}{modules}\n{body}\n}})();\n')
