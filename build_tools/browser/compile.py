"""The calculators compiled to script: one file that all pages share, one for each calculator; so for drawings.

The shared file holds the library, the shared modules as far as any calculator or the run core needs them, and the
interface ``crew`` (``script/core.js``). A calculator's file holds the modules of its trade that it needs. ``draw.js``
and a file for each drawing come when something is drawn anew: a page that answers needs neither. Modules keep their own
scope, and constants are written out as the values that they have in Python.
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
from build_tools.browser.modules import Name, place, reached
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
        ("limits", "as_given"),
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
    """The shared script, each calculator's without its declaration; the one that draws, and each drawing's."""

    core: str
    functions: Mapping[str, str]
    draw: str
    drawings: Mapping[str, str]


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
    drawn = {each.name: reached([place(each.drawing)]) for each in calculators if each.drawing is not None}
    answering = {*reached(ENTRIES), *_all(needs)}
    drawing = {*reached([LAY_OUT]), *_all(drawn)}
    everything = answering | drawing
    problems = refused(everything)
    if problems:
        raise NotPlain(problems)
    shared = sorted(name for name in answering if _is_shared(name[0]))
    drawing_only = sorted(name for name in drawing if _is_shared(name[0]) and name not in answering)
    in_script = named([*shared, *drawing_only, *sorted(everything.difference(shared, drawing_only))])
    scripts = emitted(everything, in_script)

    def body(names: Iterable[Name], text: str) -> str:
        """Functions and constants, and a script that names them as `modules.writing.write`."""
        held = "\n".join(scripts[name] for name in names if name in scripts)
        return held + "\n" + CALLED.sub(lambda found: in_script[f"calculators.{found[1]}", found[2]], text)

    bodies = {one.name: body(_without(needs[one.name], shared), _call(one)) for one in calculators}
    elsewhere = [*shared, *drawing_only]
    drawings = {
        one.name: body(_without(drawn[one.name], elsewhere), f'crew.addDrawing("{one.name}", {_written(one.drawing)});')
        for one in calculators
        if one.name in drawn
    }
    draw = body(drawing_only, DRAW.read_text(encoding="utf-8"))
    core = body(shared, CORE.read_text(encoding="utf-8"))
    others = [draw, *bodies.values(), *drawings.values()]
    std = library(called("".join([core, *others])))
    lines = [f"var {name} = {code};" for name, code in std.items()]
    given = _taken([*std, *_names(shared, in_script, scripts)], others)
    also = _taken(_names(drawing_only, in_script, scripts), drawings.values())
    core = core.replace("{GIVEN}", "{" + _as_items(given) + "}", 1)
    draw = draw.replace("{GIVEN}", "{" + _as_items(also) + "}", 1)
    whole = 'var crew = (function () {\n"use strict";\n' + "\n".join([*lines, core]) + "\n})();\n"
    return Scripts(
        shorter(whole),
        {name: shorter(_own_scope(text, given)) for name, text in bodies.items()},
        shorter(_own_scope(draw, given)),
        {name: shorter(_own_scope(text, [*given, *also])) for name, text in drawings.items()},
    )


def _all(needs: Mapping[str, list[Name]]) -> set[Name]:
    return {name for names in needs.values() for name in names}


def _without(names: list[Name], others: Iterable[Name]) -> list[Name]:
    left_out = set(others)
    return [name for name in names if name not in left_out]


def _names(names: list[Name], in_script: Mapping[Name, str], scripts: Mapping[Name, str]) -> list[str]:
    """What functions and constants are called in the script."""
    return [in_script[name] for name in names if name in scripts]


def _taken(names: Iterable[str], bodies: Iterable[str]) -> list[str]:
    """The names of one script that others use."""
    used = set(USED.findall("".join(bodies)))
    return [name for name in names if name in used]


def _as_items(names: list[str]) -> str:
    return ", ".join(f"{name}: {name}" for name in names)


def _starts(calculator: Calculator) -> list[Name]:
    """What the page calls of a calculator to answer."""
    inputs = [*calculator.inputs, *(column for each in calculator.inputs for column in each.columns)]
    return [place(calculator.function), *([PLANS] if any(each.quantity == "plan" for each in inputs) else [])]


def _is_shared(module_name: str) -> bool:
    """Whether a module is in the shared script."""
    return module_name.count(".") == 1 and module_name not in BY_FEW


CALLED = re.compile(r"\bmodules\.([a-z_.]+)\.([a-z_]+)\b(?!\.)")


USED = re.compile(r"\b_[a-z]\d*\b|\$+[a-z_]+")
"""The names that the compiler gives."""


def _call(calculator: Calculator) -> str:
    """The call into a calculator; ``DECLARATION`` stands for the declaration."""
    wanted = ", ".join(f'values["{name}"]' for name in inspect.signature(calculator.function).parameters)
    call = f"function (values) {{ return {_written(calculator.function)}({wanted}); }}"
    plan = "modules.shapes.read_plan" if PLANS in _starts(calculator) else "null"
    return f"crew.add(DECLARATION, {call}, {plan});"


def _written(function: Callable[..., Any] | None) -> str:
    assert function is not None
    module_name, name = place(function)
    return f"modules.{module_name.removeprefix('calculators.')}.{name}"


def _own_scope(body: str, given: list[str]) -> str:
    """A script of a page beside the shared one: what it takes from there, and what it does with it."""
    used = set(USED.findall(body))
    taken = ", ".join(name for name in given if name in used)
    return f'(function () {{\n"use strict";\nvar host = crew.host, {{{taken}}} = crew.given;\n{body}\n}})();\n'
