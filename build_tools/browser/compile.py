"""The calculators compiled to script: one file that every page shares, one for drawings, and one for each calculator.

The shared file holds the library, the shared modules as far as any calculator or the run core needs them, and the
interface ``crew`` (``script/core.js``). A calculator's file holds the modules of its trade that it needs. Modules keep
their own scope, and constants are written out as the values that they have in Python.
"""

from __future__ import annotations

import ast
import inspect
import json
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pscript import JSError, py2js

from build_tools.book.problems import Problem
from build_tools.browser.library import called, library, short_names
from build_tools.browser.lower import lowered, safe
from build_tools.browser.modules import HOST, Module, Name, module, place, reached, resolve, starts_of, used_names
from build_tools.browser.plain_subset import refusals
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
        ("shapes", "read_plan"),
        ("writing", "exactly"),
        ("writing", "write"),
    )
)
"""What ``script/core.js`` calls."""


class NotPlain(Exception):
    """Code that the page cannot run; ``problems`` says where and what to write instead."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


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
    everything = reached([*ENTRIES, *(start for each in calculators for start in starts_of(each))])
    problems = refused([*everything, *reached([LAY_OUT])])
    if problems:
        raise NotPlain(problems)
    layout = [name for name in reached([LAY_OUT]) if name[0].startswith("calculators.drawing_")]
    shared = [name for name in {*everything, *reached([LAY_OUT])} if _is_shared(name[0]) and name not in layout]
    modules = _modules_script(sorted(shared), shared=True)
    drawing = _modules_script(layout, shared=False)
    parts: dict[str, str] = {}
    for calculator in calculators:
        own = [name for name in reached(starts_of(calculator)) if not _is_shared(name[0])]
        parts[calculator.name] = _modules_script(own, shared=False)
    std = library(called("".join([modules, drawing, *parts.values()])))
    lines = [f"var {name} = {code};" for name, code in std.items()]
    listed = ", ".join(f"{name}: {name}" for name in std)
    core = CORE.read_text(encoding="utf-8").replace("/* LIBRARY */", "\n".join([*lines, f"var std = {{{listed}}};"]))
    core = core.replace("/* MODULES */", modules)
    functions = {each.name: _calculator_script(each, parts[each.name]) for each in calculators}
    return Scripts(shorter(core), functions, _own_scope(drawing, DRAW.read_text(encoding="utf-8")))


def _is_shared(module_name: str) -> bool:
    """Whether a module lies beside the trades, not in one."""
    return module_name.count(".") == 1


def refused(names: list[Name]) -> list[Problem]:
    """What of these functions is outside the plain subset."""
    problems: list[Problem] = []
    for module_name in sorted({name[0] for name in names}):
        held = module(module_name)
        functions = {name[1] for name in names if name[0] == module_name and name not in HOST} & set(held.functions)
        if functions:
            problems += refusals(held.source, held.file, functions)
    return problems


def _in_order(names: list[Name]) -> list[str]:
    """The modules of names, each after those that it imports."""
    wanted = sorted({name[0] for name in names if name not in HOST})
    done: list[str] = []

    def put(module_name: str) -> None:
        for used in sorted(name for _, names in _imports(module(module_name)).items() for name in [names[0]]):
            if used in wanted and used != module_name and used not in done:
                put(used)
        if module_name not in done:
            done.append(module_name)

    for each in wanted:
        put(each)
    return done


def _imports(held: Module) -> dict[str, Name]:
    return {name: resolve(held.name, name) for name in held.imports}


def _modules_script(names: list[Name], *, shared: bool) -> str:
    return "\n".join(
        _module_script(module(each), [name[1] for name in names if name[0] == each and name not in HOST])
        for each in _in_order(names)
    )


def _module_script(held: Module, names: list[str]) -> str:
    """A module in its own scope: what it imports, its constants, its functions."""
    functions = [name for name in names if name in held.functions]
    used = sorted({name for function in functions for name in used_names(held.functions[function])})
    lines = []
    outside = []
    for name in used:
        if name in held.imports:
            source, original = resolve(held.name, name)
            path = "host" if (source, original) in HOST else f"modules.{key(source)}"
            outside.append(f"{safe(name)} = {path}.{safe(original)}")
        elif name in held.math:
            value = "PI" if held.math[name] == "pi" else held.math[name]
            outside.append(f"{safe(name)} = Math.{value}")
    if outside:
        lines.append(f"var {', '.join(outside)};")
    for name in names:
        if name not in held.functions:
            lines.append(f"var {safe(name)} = {_constant(held, name)};")
    known = {*held.functions, *held.imports, *held.math, *names}
    lines += [_function_script(held, name, known) for name in functions]
    exported = ", ".join(f"{safe(name)}: {safe(name)}" for name in names)
    body = "\n".join(lines)
    return f"modules.{key(held.name)} = (function () {{\n{body}\nreturn {{{exported}}};\n}})();"


def _function_script(held: Module, name: str, known: set[str]) -> str:
    function = held.functions[name]

    def gives_text(called_name: str) -> bool:
        source = resolve(held.name, called_name)
        found = None if source in HOST else module(source[0]).functions.get(source[1])
        return found is not None and isinstance(found.returns, ast.Name) and found.returns.id == "str"

    try:
        script = py2js(lowered(function, known, gives_text), inline_stdlib=False, docstrings=False)
    except JSError as error:
        raise NotPlain(
            [_problem(held, function, f"'{name}' cannot be compiled: {str(error).splitlines()[-1]}")]
        ) from error
    unknown = {str(each).split(".")[0] for each in script.meta["vars_unknown"]} - {safe(each) for each in known}
    unknown -= {"py_len"}
    if unknown:
        raise NotPlain(
            [_problem(held, function, f"'{name}' uses {', '.join(sorted(unknown))}, which the page has not")]
        )
    return short_names(str(script))


def _problem(held: Module, function: ast.FunctionDef, message: str) -> Problem:
    return Problem(held.file, function.lineno, function.col_offset + 1, "error", message)


def _constant(held: Module, name: str) -> str:
    """A constant as script: figures, words, lists and dicts by words."""
    value = held.constant(name)
    if not _writable(value):
        line = next(
            (
                node.lineno
                for node in ast.walk(ast.parse(held.source))
                if isinstance(node, ast.Name) and node.id == name
            ),
            1,
        )
        message = f"'{name}' is no figure, word, list or dict by words: the page cannot have it"
        raise NotPlain([Problem(held.file, line, 1, "error", message)])
    return as_script(value)


def _writable(value: Any) -> bool:
    if isinstance(value, list | tuple):
        return all(_writable(each) for each in value)
    if isinstance(value, dict):
        return all(isinstance(key, str) and not key.isdigit() and _writable(each) for key, each in value.items())
    if isinstance(value, float):
        return value - value == 0
    if isinstance(value, int):
        return abs(value) <= 2**53
    return value is None or isinstance(value, str)


def as_script(value: Any) -> str:
    """A value as JSON that a script can hold anywhere: in plain letters, and no end of a script element in it."""
    return json.dumps(value, separators=(",", ":"), allow_nan=False).replace("</", "<\\/")


def key(module_name: str) -> str:
    """The name of a module in script.

    >>> key("calculators.plumbing.wax_ring")
    'plumbing_wax_ring'
    """
    return module_name.removeprefix("calculators.").replace(".", "_")


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


def shorter(script: str) -> str:
    """A script without its indentation, empty lines and whole-line comments, in plain letters."""
    lines = (re.sub(r" = function flx_\w+ \(", " = function (", line.strip()) for line in script.splitlines())
    kept = "\n".join(line for line in lines if line and not line.startswith("//")) + "\n"
    return re.sub(r"[^\x00-\x7f]", lambda found: f"\\u{ord(found[0]):04x}", kept)
